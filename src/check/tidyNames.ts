import { cellsOf } from "../records/cellsOf";
import { type CellValue, keyIds } from "../records/kind";
import type { RecordTable } from "../sheets/recordTable";

/** What nobody sees in a name: spaces at its ends, several in a row, hard spaces and those of no width. */
const UNSEEN = /^\s|\s$|\s\s|[\u00a0\u00ad\u200b-\u200f\u2007\u202f\u2060\ufeff]/;
const NO_WIDTH = /[\u00ad\u200b-\u200f\u2060\ufeff]/g;

/** A record table whose names are without the spaces that nobody sees, so that no row escapes a rule by one. */
export function tidyNames(table: RecordTable): RecordTable {
  const ids = keyIds(table.kind).filter((id) => cellsOf(table.rows, id).some(isUntidy));
  if (ids.length === 0) return table;
  const rows = table.rows.map((row) =>
    ids.some((id) => isUntidy(row[id]))
      ? { ...row, ...Object.fromEntries(ids.map((id) => [id, tidy(row[id] ?? null)])) }
      : row,
  );
  return { ...table, rows };
}

const isUntidy = (cell: CellValue | undefined): boolean =>
  typeof cell === "string" && UNSEEN.test(cell);

const tidy = (cell: CellValue): CellValue =>
  typeof cell === "string" ? cell.replace(NO_WIDTH, "").replace(/\s+/g, " ").trim() : cell;
