import type { Row } from "../../src/records/kind";
import { PUNCH_COLUMNS, punchTable } from "../../src/sheets/ours/punchSheet";
import { asRecordTable } from "../../src/sheets/recordTable";
import type { Snapshot } from "../../src/sheets/snapshot";

/** What stands on the punch list of a workbook, in its order. */
export const punchOf = (snapshot: Snapshot): Row[] => {
  const table = punchTable(snapshot);
  if (!table) return [];
  return asRecordTable({ columns: PUNCH_COLUMNS }, table).rows.filter((row) =>
    PUNCH_COLUMNS.some(({ id }) => (row[id] ?? "") !== ""),
  );
};
