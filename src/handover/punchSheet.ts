import type { Finding } from "../check/finding";
import type { Messages } from "../messages/messages";
import type { Column, Row } from "../records/kind";
import type { Papers, PlannedSheet } from "../sheets/plannedSheet";

type Text = Messages["handover"]["punchSheet"];

const WIDTHS: Readonly<Record<keyof Text["columns"], number>> = {
  weight: 8,
  panel: 10,
  sheet: 14,
  address: 6,
  message: 60,
  owner: 14,
  due: 11,
  state: 10,
  note: 30,
  files: 20,
};

const FILLED: readonly string[] = ["owner", "due", "state", "note", "files"];

/** What is to be closed out, one line each; notes of the check are no work and stay out. */
export const punchSheet = (
  findings: readonly Finding[],
  text: Text,
  papers?: Papers,
): PlannedSheet => ({
  papers,
  sheet: text.title,
  table: "GearPunchList",
  title: text.title,
  purpose: text.purpose,
  cautions: [],
  columns: (Object.keys(WIDTHS) as (keyof typeof WIDTHS)[]).map(
    (id): Column => ({
      id,
      header: text.columns[id],
      role: FILLED.includes(id) ? "entry" : "note",
      width: WIDTHS[id],
      ...(id === "state"
        ? { accepts: { type: "list", values: [text.open, "Closed", text.accepted] } }
        : id === "due"
          ? { accepts: { type: "date" }, format: "yyyy-mm-dd" }
          : {}),
    }),
  ),
  rows: findings
    .filter(({ weight }) => weight !== "note")
    .map(
      ({ weight, panel, sheet, address, message, concession }): Row => ({
        weight,
        panel: panel ?? null,
        sheet,
        address,
        message,
        state: concession ? text.accepted : text.open,
        note: concession
          ? text.acceptedBy(concession.reason, concession.name, concession.date)
          : null,
      }),
    ),
});
