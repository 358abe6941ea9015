import type { Column, Row } from "../../records/kind";
import type { Papers, PlannedSheet } from "../plan/plannedSheet";
import { type Snapshot, type TableSnapshot, tablesOf } from "../snapshot";
import { textColumn } from "./textColumn";

export const PUNCH_SHEET = "Punch list";
export const PUNCH_TABLE = "GearPunchList";

/** How an item of the punch list stands. */
export const PUNCH_STATES = { open: "Open", closed: "Closed", accepted: "Accepted" } as const;

/** What the last check says of an item that came of a finding: it is still found, or gone. */
export const PUNCH_CHECK = { found: "Found", gone: "Gone" } as const;

const listed = (
  id: string,
  header: string,
  width: number,
  values: readonly string[],
  help: string,
): Column => ({ id, header, role: "entry", width, accepts: { type: "list", values }, help });

const day = (id: string, header: string, help: string): Column => ({
  id,
  header,
  role: "entry",
  width: 11,
  format: "yyyy-mm-dd",
  accepts: { type: "date" },
  help,
});

const ours = (id: string, header: string, width: number, help: string): Column => ({
  id,
  header,
  role: "note",
  width,
  help,
});

export const PUNCH_COLUMNS: readonly Column[] = [
  ours("number", "No.", 6, "Given once and never again, by which people speak of the item."),
  textColumn("panel", "Panel", 10, "The panel or bus section."),
  textColumn("what", "What", 54, "What is wrong or lacking."),
  listed(
    "weight",
    "Severity",
    8,
    ["stop", "query", "note"],
    "stop: keeps the hand-over from being final; query: somebody has to answer; note: worth knowing.",
  ),
  textColumn("owner", "Owner", 16, "Who sees to it."),
  day("due", "Due", "By when."),
  listed(
    "state",
    "State",
    10,
    Object.values(PUNCH_STATES),
    "An item whose finding is gone is closed by the check; one that is found again is opened.",
  ),
  textColumn("note", "Closing note", 30, "How it was closed, by whom."),
  textColumn(
    "files",
    "Photos, files",
    22,
    "Names of files beside the workbook, with semicolons between them.",
  ),
  day("raised", "Raised", "Day on which it came onto the list."),
  day("closed", "Closed", "Day on which it was closed."),
  ours("accepted", "Accepted", 26, "Why a finding was accepted, by whom and when."),
  ours("check", "Check", 8, "Of a finding: whether the last check still found it. Blank by hand."),
  ours("rule", "Rule", 16, "The rule that found it. Blank by hand."),
  ours("sheet", "Sheet", 13, "Where it was found."),
  ours("address", "Cell", 7, "Where it was found."),
  ours("row", "Row", 22, "What names the record's row."),
  ours("column", "Column", 14, "Header of the cell."),
];

/** The punch list of a workbook, with what stands on it. */
export const punchSheet = (rows: readonly Row[] = [], papers?: Papers): PlannedSheet => ({
  papers,
  sheet: PUNCH_SHEET,
  table: PUNCH_TABLE,
  title: "Punch list",
  purpose:
    "What is wrong or lacking, one line each, from the check's findings and by hand. Give it an owner and a due date, and close it with a note; what you typed stays when the list is brought up to date.",
  cautions: [],
  columns: PUNCH_COLUMNS,
  rows,
});

export const punchTable = (snapshot: Snapshot): TableSnapshot | undefined =>
  tablesOf(snapshot).find(({ name }) => name === PUNCH_TABLE);
