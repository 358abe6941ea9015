import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { keyIds, rowKey } from "../../records/kind";
import { a1 } from "../../sheets/cells/address";
import type { RecordRows } from "../rows/recordRows";
import { columnOf, isReading, shownIn } from "./lineCells";
import type { PlacedCell } from "./placement";

/** Why values of a line are not placed: their table has no cell for them. */
export const noCell = (
  cells: readonly PlacedCell<RecordRows>[],
  isWholeLine: boolean,
): Said<Told> => {
  const [{ table, row }] = cells as [PlacedCell<RecordRows>];
  const { kind, rows } = table;
  const record = rowKey(rows[row] ?? {}, keyIds(kind));
  return ({ intake: { place } }) => {
    const values = cells.map((cell) => {
      const column = columnOf(cell);
      return place.valueOf(
        quoted(column?.header ?? cell.column),
        shownIn(cell.value, column?.accepts),
      );
    });
    return place.noCell(quoted(table.table?.sheet ?? kind.sheet), values, record, isWholeLine);
  };
};

/** What is to be known of a reading that goes as text into a cell of somebody's own layout which formulas there take. */
export const textUnderFormula = (cell: PlacedCell<RecordRows>): Said<Told> | undefined => {
  const { table, row, column, value } = cell;
  const { ownLayout, sheet = "" } = table.table ?? {};
  const position = table.at?.get(column);
  if (!ownLayout || position === undefined || !isReading(cell)) return undefined;
  const written = ownLayout.written(row, position, value);
  const there = ownLayout.holds(row, position);
  const [first, ...others] = ownLayout.takenBy?.(row, position) ?? [];
  if (typeof written !== "string" || !there || !first) return undefined;
  const also = others.map((taking) => a1(taking.row, taking.column));
  return ({ intake }) =>
    intake.place.textUnderFormula(
      quoted(written),
      a1(there.row, there.column),
      quoted(sheet),
      a1(first.row, first.column),
      `=${first.formula}`.slice(0, 80),
      also,
    );
};
