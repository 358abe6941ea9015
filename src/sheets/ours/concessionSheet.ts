import type { Column } from "../../records/kind";
import type { PlannedSheet } from "../plan/plannedSheet";
import { textColumn } from "./textColumn";

export const CONCESSION_SHEET = "Concessions";
export const CONCESSION_TABLE = "GearConcessions";

export const CONCESSION_COLUMNS: readonly Column[] = [
  textColumn("rule", "Rule", 24, "As the finding names it."),
  textColumn("sheet", "Sheet", 16, "The sheet of the finding."),
  textColumn("row", "Row", 40, "What names the record's row: its keys, as the finding gives them."),
  textColumn("column", "Column", 20, "Header of the finding's cell."),
  textColumn("found", "Found", 16, "The value that is accepted; another value asks again."),
  textColumn("reason", "Reason", 48, "Why it is accepted, and the document that says so."),
  textColumn("name", "Name", 20, "Who accepts it."),
  {
    id: "date",
    header: "Date",
    role: "entry",
    width: 12,
    format: "yyyy-mm-dd",
    accepts: { type: "date" },
  },
];

/** Findings that somebody accepted; the check lists them with their reason and counts them as open no longer. */
export const concessionSheet = (): PlannedSheet => ({
  sheet: CONCESSION_SHEET,
  table: CONCESSION_TABLE,
  title: "Concessions",
  purpose:
    "A finding of the check that is accepted as it is: one row, with the reason, a name and a date. It stays listed, and is open again where the value changes.",
  cautions: [
    "A concession accepts a record. It never says that equipment is safe to energize, and it takes the authority of the person who may grant it under the project's contract.",
  ],
  columns: CONCESSION_COLUMNS,
  rows: [],
});
