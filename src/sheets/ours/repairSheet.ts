import type { Column, Row } from "../../records/kind";
import { WORKS } from "../../records/repairs";
import type { PlannedSheet } from "../plan/plannedSheet";
import { asRecordTable } from "../recordTable";
import { type Snapshot, type TableSnapshot, tablesOf } from "../snapshot";
import { textColumn } from "./textColumn";

export const REPAIR_TABLE = "GearRepairs";

const day = (id: string, header: string, help: string): Column => ({
  id,
  header,
  role: "entry",
  width: 12,
  format: "yyyy-mm-dd",
  accepts: { type: "date" },
  help,
});

export const REPAIR_COLUMNS: readonly Column[] = [
  textColumn("sheet", "Sheet", 16, "The sheet of the record that failed."),
  textColumn("row", "Row", 34, "What names the record's row: its keys, as the finding gives them."),
  textColumn("found", "As found", 30, "The failed reading, its limit and its result."),
  day("tested", "Tested", "Day of the failed test."),
  textColumn("cause", "Cause", 34, "Why it failed."),
  {
    id: "work",
    header: "Work on",
    role: "entry",
    width: 18,
    accepts: { type: "list", values: WORKS },
    help: "What was worked on: by it the check knows which tests have to be made again.",
  },
  textColumn(
    "panel",
    "Panel",
    10,
    "The panel that was worked on, where the record is of a bus section.",
  ),
  textColumn("done", "What was done", 40, "The repair itself, and parts that were replaced."),
  textColumn("by", "Repaired by", 18, "Who made the repair."),
  day("date", "Date", "Day of the repair; tests made before it are void where it reaches them."),
];

/** Repairs of what failed a test. It fills as work goes on, from the pane, the command line or by hand. */
export const repairSheet = (): PlannedSheet => ({
  sheet: "Repairs",
  table: REPAIR_TABLE,
  title: "Failure, repair, retest",
  purpose:
    "A record that failed and was repaired: one row, with the cause, what was worked on, by whom and when. The failed reading stays in the history of readings; the record itself holds the retest.",
  cautions: [
    "A repair is made by people licensed for it, under the site's permit system and the manufacturer's instructions; what was tested before it is void where the repair reaches it.",
  ],
  columns: REPAIR_COLUMNS,
  rows: [],
});

export const repairTable = (snapshot: Snapshot): TableSnapshot | undefined =>
  tablesOf(snapshot).find(({ name }) => name === REPAIR_TABLE);

/** A repair as the workbook has it, with its row in the table. */
export interface StoredRepair {
  readonly index: number;
  readonly row: Row;
}

/** The repairs that a workbook tells of, in their order. */
export const repairsOf = (snapshot: Snapshot): readonly StoredRepair[] => {
  const table = repairTable(snapshot);
  return table
    ? asRecordTable({ columns: REPAIR_COLUMNS }, table).rows.flatMap((row, index) =>
        REPAIR_COLUMNS.some(({ id }) => String(row[id] ?? "").trim() !== "")
          ? [{ index, row }]
          : [],
      )
    : [];
};
