import type { JudgedTable } from "../../check/context";
import { cellValue } from "../../intake/cells/cellValue";
import { inRowUnit } from "../../intake/cells/inRowUnit";
import type { PlacedCell } from "../../intake/place/placement";
import type { Lineup } from "../../lineup/lineup";
import type { Told } from "../../messages/told";
import { serialDay } from "../../quantities/dates";
import { type Column, isBlank, isNeeded } from "../../records/kind";
import type { RecordTable } from "../../sheets/recordTable";

/** What is typed for a row, by column id. */
export type Typed = Readonly<Record<string, string>>;

/** The entries of a row that are still to be filled: what it is judged by, its conditions, who, when and with what. */
export function entriesToFill(
  { kind, at, judged }: JudgedTable,
  row: number,
  lineup: Lineup,
): Column[] {
  const cells = judged[row] ?? {};
  return kind.columns
    .filter(
      (column) =>
        column.role === "entry" &&
        column.need !== undefined &&
        at.has(column.id) &&
        isBlank(cells[column.id]) &&
        isNeeded(column, cells, lineup),
    )
    .map((column) => inRowUnit(column, cells));
}

/**
 * What is typed for a row as cells to be written, and for each entry that cannot be read why. Where one
 * cannot be read, none is to be written.
 */
export function typedCells(
  table: JudgedTable,
  row: number,
  columns: readonly Column[],
  typed: Typed,
  decimal: "." | ",",
  told: Told,
): { cells: PlacedCell<RecordTable>[]; wrong: Readonly<Record<string, string>> } {
  const cells: PlacedCell<RecordTable>[] = [];
  const wrong: Record<string, string> = {};
  for (const column of columns) {
    const text = typed[column.id]?.trim() ?? "";
    if (text === "") continue;
    const { unit } = column;
    const read = cellValue(text, column, { decimal, ...(unit === undefined ? {} : { unit }) });
    if (!read.ok) wrong[column.id] = read.say(told);
    else
      cells.push({
        table,
        row,
        column: column.id,
        old: null,
        value: read.value,
        source: { file: "", line: row + 1 },
      });
  }
  return { cells, wrong };
}

/** Of two rows of one test the later has the conditions of the earlier, its day, tester and instrument, until others are typed. */
export function carriedOver(
  table: JudgedTable,
  from: number | undefined,
  columns: readonly Column[],
): Typed {
  const before = from === undefined ? undefined : table.judged[from];
  return Object.fromEntries(
    columns.flatMap(({ id, need, accepts }) => {
      const value = before?.[id];
      if (need === "reading" || value === undefined || isBlank(value)) return [];
      const isDay = accepts?.type === "date" && typeof value === "number";
      return [[id, isDay ? serialDay(Math.floor(value)) : String(value)]];
    }),
  );
}

/** The next row down the table, and round again, that lacks an entry; undefined where none does. */
export function nextToType(
  table: JudgedTable,
  row: number,
  lineup: Lineup,
  step = 1,
): number | undefined {
  const count = table.rows.length;
  for (let tried = 1; tried < count; tried++) {
    const next = (row + step * tried + count * tried) % count;
    if (!table.aside.has(next) && entriesToFill(table, next, lineup).length > 0) return next;
  }
  return undefined;
}
