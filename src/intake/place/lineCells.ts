import { serialDay } from "../../quantities/dates";
import { type CellValue, type Column, isBlank } from "../../records/kind";
import { isSameReading } from "../cells/isSameReading";
import { hasCell, type RecordRows } from "../rows/recordRows";
import type { PlacedCell } from "./placement";
import type { Settled } from "./resolveRepeats";

/** The cells that a line has for its record, with what these hold. */
export const cellsOf = <T extends RecordRows>(
  { table, row, cells, line, when, day }: Settled<T>,
  file: string,
): PlacedCell<T>[] => {
  const taken = when ?? day;
  const source = taken === undefined ? { file, line } : { file, line, when: taken };
  return cells.map(([column, value]) => ({
    table,
    row,
    column,
    old: table.rows[row]?.[column] ?? null,
    value,
    source,
  }));
};

export const columnOf = ({ table, column }: PlacedCell<RecordRows>): Column | undefined =>
  table.kind.columns.find(({ id }) => id === column);

export const isReading = (cell: PlacedCell<RecordRows>) => columnOf(cell)?.need === "reading";

/** Whether a cell holds already what a line has for it. */
export const isSame = ({ old, value, table, column }: PlacedCell<RecordRows>) =>
  isSameReading(old, value, table.kind, column);

/** A value in a message: a day where the column holds days. */
export const shownIn = (value: CellValue | undefined, accepts: Column["accepts"]): string =>
  accepts?.type === "date" && typeof value === "number"
    ? serialDay(value)
    : String(value ?? "").slice(0, 40);

/** The origin column's new text. It keeps what it held, unless readings were written over. */
export const originCell = <T extends RecordRows>(
  { table, row, line, lines, when }: Settled<T>,
  file: string,
  replaced: boolean,
): PlacedCell<T>[] => {
  const exists =
    table.kind.columns.some(({ id }) => id === "origin") && hasCell(table, row, "origin");
  const old = table.rows[row]?.origin ?? null;
  const told = lines.length <= 8 ? lines.join(", ") : `${lines.slice(0, 8).join(", ")} …`;
  const text = `${plainName(file)} line ${told}${when === undefined ? "" : ` at ${clock(when)}`}`;
  if (!exists || (!isBlank(old) && String(old).split("; ").includes(text))) return [];
  const value = isBlank(old) || replaced ? text : `${old}; ${text}`;
  return [{ table, row, column: "origin", old, value, source: { file, line } }];
};

/** The time of day of a serial number, as 09:14. */
const clock = (when: number): string => {
  const minutes = Math.round((when % 1) * 1440) % 1440;
  const two = (part: number) => String(part).padStart(2, "0");
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
};

/** A file's name as a cell may hold it: one line that no spreadsheet takes for a formula. */
export const plainName = (file: string): string =>
  file
    .replace(/[\p{Cc}\p{Cf}]+/gu, " ")
    .replace(/^[\s=+\-@|＝＋－＠]+/, "")
    .slice(0, 120) || "export";
