import { quoted } from "../../quantities/quoted";
import { keyIds, rowKey } from "../../records/kind";
import { a1 } from "../../sheets/address";
import type { RecordRows } from "../rows/recordRows";
import { columnOf, isReading, shownIn } from "./lineCells";
import type { PlacedCell } from "./placement";

/** Why values of a line are not placed: their table has no cell for them. */
export const noCell = (cells: readonly PlacedCell<RecordRows>[], isWholeLine: boolean): string => {
  const [{ table, row }] = cells as [PlacedCell<RecordRows>];
  const { kind, rows } = table;
  const named = cells.map((cell) => {
    const column = columnOf(cell);
    return `${quoted(column?.header ?? cell.column)} (${shownIn(cell.value, column?.accepts)})`;
  });
  const rest = isWholeLine
    ? "and nothing of the line is placed"
    : "and the rest of the line stands";
  return `the sheet ${quoted(table.table?.sheet ?? kind.sheet)} has no cell for ${named.join(", ")} of ${rowKey(rows[row] ?? {}, keyIds(kind))}, ${rest}; add a column for ${cells.length === 1 ? "it" : "them"} there.`;
};

/** What is to be known of a reading that goes as text into a cell of somebody's own layout which formulas there take. */
export const textUnderFormula = (cell: PlacedCell<RecordRows>): string | undefined => {
  const { table, row, column, value } = cell;
  const { ownLayout, sheet = "" } = table.table ?? {};
  const position = table.at?.get(column);
  if (!ownLayout || position === undefined || !isReading(cell)) return undefined;
  const written = ownLayout.written(row, position, value);
  const there = ownLayout.holds(row, position);
  const [first, ...others] = ownLayout.takenBy?.(row, position) ?? [];
  if (typeof written !== "string" || !there || !first) return undefined;
  const also = others.map((taking) => a1(taking.row, taking.column));
  return `${quoted(written)} goes into ${a1(there.row, there.column)} of the sheet ${quoted(sheet)} as text, and the formula at ${a1(first.row, first.column)} (${`=${first.formula}`.slice(0, 80)})${also.length > 0 ? `, as those at ${also.join(", ")},` : ""} takes that cell: with text, arithmetic gives #VALUE!, a comparison takes it for more than any number, so that it can say "pass", and sums and averages leave it out. Judge this row by hand or by the check, and not by ${also.length > 0 ? "these cells" : "that cell"}.`;
};
