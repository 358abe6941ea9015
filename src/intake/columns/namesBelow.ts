import { KINDS } from "../../records/kinds";
import type { TextRow } from "../text/delimited";
import { columnFor } from "../words/columnFor";
import type { ExportColumn } from "../words/titles";

/** Fields whose name people write once, for the lines below it too. */
const NAMES: ReadonlySet<string> = new Set([
  "object",
  "circuit",
  "section",
  "part",
  "stage",
  "operation",
]);

const namesIn = (columns: readonly ExportColumn[]) =>
  columns.filter(({ field, says }) => !says && NAMES.has(field ?? ""));

/**
 * Makes the reader of lines in which a name holds for the blank cells below it, as far as the lines
 * follow each other without a blank one, a sum or a note between, and no name to its left is another.
 * Undefined where no column is `below`.
 *
 * @example namesHeld(columns)?.({ line: 3, cells: ["", "L2", "32"] }).cells // ["=H01", "L2", "32"]
 */
export const namesHeld = (
  columns: readonly ExportColumn[],
): (<T extends TextRow>(row: T) => T) | undefined => {
  const names = namesIn(columns);
  if (!names.some(({ below }) => below)) return undefined;
  const held = new Map<number, string>();
  let last = -1;
  return (row) => {
    if (row.line !== last + 1) held.clear();
    last = row.line;
    const cells = [...row.cells];
    for (const { index, below } of names)
      cells[index] = holdName(held, index, cells[index] ?? "", below ?? false);
    return { ...row, cells };
  };
};

/** The name of a cell: its own, or the one held for it; a new name ends those held to its right. */
const holdName = (
  held: Map<number, string>,
  index: number,
  text: string,
  below: boolean,
): string => {
  const name = text === "" && below ? (held.get(index) ?? "") : text;
  if (name === "") {
    held.delete(index);
    return name;
  }
  if (name !== held.get(index))
    for (const right of held.keys()) if (right > index) held.delete(right);
  held.set(index, name);
  return name;
};

/**
 * The columns of a block whose names are written once: filled on the first line of each run, blank below
 * it, where at least one of these lines has a reading, and never the same name on two lines in a row.
 *
 * @param rows the block's lines of readings
 */
export const namesBelow = (
  columns: readonly ExportColumn[],
  rows: readonly TextRow[],
): readonly ExportColumn[] =>
  namesIn(columns).reduce<readonly ExportColumn[]>((sofar, name) => {
    const trial = sofar.map((column) =>
      column.index === name.index ? { ...column, below: true as const } : column,
    );
    return isOnce(trial, name.index, rows) ? trial : sofar;
  }, columns);

const isOnce = (
  columns: readonly ExportColumn[],
  index: number,
  rows: readonly TextRow[],
): boolean => {
  const hold = namesHeld(columns);
  const left = namesIn(columns).filter((name) => name.index < index);
  const readings = columns.filter(isReading);
  let [carried, last] = [false, undefined as TextRow | undefined];
  for (const row of rows) {
    const now = hold?.(row) ?? row;
    const above = last;
    last = now;
    const name = row.cells[index] ?? "";
    if (name === "") {
      if (now.cells[index] === "") return false;
      carried ||= readings.some((column) => (row.cells[column.index] ?? "") !== "");
    } else if (
      above?.line === row.line - 1 &&
      above.cells[index] === name &&
      left.every((column) => above.cells[column.index] === now.cells[column.index])
    )
      return false;
  }
  return carried;
};

const isReading = ({ field, says }: ExportColumn): boolean =>
  says !== undefined ||
  (field !== undefined && KINDS.some((kind) => columnFor(kind, field)?.need === "reading"));
