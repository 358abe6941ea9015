import { parseCellRef, type Sheet, type TableDefinition, type Workbook } from "hucre/xlsx";
import type { Area } from "../sheets/area";
import { plain } from "./cellValues";
import { type CellGrid, gridOf } from "./grid";
import { type StoredFormulas, storedFormulas } from "./readFormulas";

/**
 * What a file holds of one sheet: plain data, nothing of the file library's own objects, so that a long
 * workbook can be read part by part, each by whichever thread is free.
 */
export interface StoredSheet {
  readonly name: string;
  readonly hidden: boolean;
  readonly cells: CellGrid;
  readonly formulas: StoredFormulas;
  /** By `row,column`, from 0. */
  readonly notes: ReadonlyMap<string, string>;
  readonly hiddenRows: readonly number[];
  readonly merges: readonly Area[];
  readonly tables: readonly StoredTable[];
}

export interface StoredTable {
  readonly name: string;
  /** Sheet row and column of the first header cell, from 0. */
  readonly top: number;
  readonly left: number;
  readonly headers: readonly string[];
  readonly rowCount: number;
}

/** What is kept of a sheet as the file library read it. */
export function storedSheet(sheet: Sheet, dateSystem: Workbook["dateSystem"]): StoredSheet {
  const { name, hidden = false, veryHidden = false, merges = [], tables = [] } = sheet;
  return {
    name,
    hidden: hidden || veryHidden,
    cells: gridOf(sheet.rows, (value) => plain(value, dateSystem)),
    formulas: storedFormulas(sheet),
    notes: notesOf(sheet),
    hiddenRows: [...(sheet.rowDefs ?? [])].flatMap(([row, { hidden }]) => (hidden ? [row] : [])),
    merges: merges.map(({ startRow, endRow, startCol, endCol }) => ({
      top: startRow,
      left: startCol,
      bottom: endRow,
      right: endCol,
    })),
    tables: tables.flatMap((table) => (table.range ? storedTable(table, table.range) : [])),
  };
}

function storedTable(
  { name, displayName = name, columns, showTotalRow }: TableDefinition,
  range: string,
): StoredTable {
  const { top, left, bottom } = corners(range);
  return {
    name: displayName,
    top,
    left,
    headers: columns.map(({ name }) => unescapedName(name)),
    rowCount: (showTotalRow ? bottom - 1 : bottom) - top,
  };
}

const notesOf = ({ cells }: Sheet): ReadonlyMap<string, string> => {
  const notes = new Map<string, string>();
  for (const [at, { comment }] of cells ?? []) if (comment) notes.set(at, comment.text);
  return notes;
};

export function corners(range: string): Area {
  const [first = "A1", second = first] = range.split(":");
  const start = parseCellRef(first);
  const end = parseCellRef(second);
  return { top: start.row, left: start.col, bottom: end.row, right: end.col };
}

/** A header over several lines: a table's definition writes the line's end as its number. */
const unescapedName = (name: string) =>
  name.replace(/_x([0-9A-Fa-f]{4})_/g, (_text, code) => String.fromCharCode(parseInt(code, 16)));
