import type { FindingsText } from "../../messages/messages";
import { shown } from "../../quantities/shown";
import { FINDINGS_COLUMNS, FINDINGS_SHEET, FINDINGS_TABLE } from "../../sheets/ours/findingsTable";
import type { Papers, PlannedSheet } from "../../sheets/plan/plannedSheet";
import type { Report } from "../check";
import { byWeight } from "./byWeight";
import type { Finding } from "./finding";

/** The findings of a check as a sheet of the workbook, heaviest first. */
export const findingsSheet = (
  { findings }: Pick<Report, "findings">,
  { sheet }: Pick<FindingsText, "sheet">,
  papers?: Papers,
): PlannedSheet => ({
  papers,
  sheet: FINDINGS_SHEET,
  table: FINDINGS_TABLE,
  title: sheet.title,
  purpose: sheet.purpose,
  cautions: [sheet.caution],
  columns: FINDINGS_COLUMNS,
  rows: byWeight(findings).map((finding) => rowOf(finding, sheet)),
});

const rowOf = (finding: Finding, text: FindingsText["sheet"]) => {
  const { weight, rule, sheet, address, message, concession } = finding;
  const { row = null, column = null, found = null, expected = null, source = null } = finding;
  return {
    weight,
    rule,
    sheet,
    address,
    row: row && shown(row),
    column: column && shown(column),
    message: shown(message),
    found: typeof found === "string" ? shown(found) : found,
    expected,
    source,
    concession: concession
      ? shown(text.concession(concession.reason, concession.name, concession.date))
      : null,
  };
};
