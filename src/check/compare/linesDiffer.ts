import { type CellValue, type Column, isBlank, type Row, rowKey } from "../../records/kind";
import { cellAddress } from "../../sheets/cells/address";
import { COVER_ITEMS, COVER_TABLE } from "../../sheets/ours/coverSheet";
import type { PlannedSheet } from "../../sheets/plan/plannedSheet";
import { asRecordTable } from "../../sheets/recordTable";
import type { TableSnapshot } from "../../sheets/snapshot";

/** One cell of a sheet, or a line of it, that shows another thing than was planned for it. */
export interface Difference {
  readonly address: string;
  /** What names the line. */
  readonly line: string;
  readonly header: string;
  readonly found: CellValue;
  readonly wanted: CellValue;
}

interface Line {
  readonly index: number;
  readonly row: Row;
}

/**
 * Where a table shows another thing than was planned for it. Lines are known by their key cells, in any
 * order; of lines of the same keys the first is held against the first. What is blank shows nothing.
 */
export function linesDiffer(planned: PlannedSheet, table: TableSnapshot): Difference[] {
  const { columns } = planned;
  const keys = columns.filter(({ role }) => role === "key").map(({ id }) => id);
  const { at, rows } = asRecordTable({ columns }, table);
  if (isAsPlanned(columns, rows, planned.rows, at)) return [];
  const [shown, wanted] = [linesOf(keys, rows), linesOf(keys, planned.rows)];
  const name = ({ row }: Line) => rowKey(row, keys);
  const address = (index: number, id = keys[0] ?? "") =>
    cellAddress(table, index, Math.max(0, at.get(id) ?? 0));
  const whole = columns.find(({ role }) => role === "given");
  const changed = [...wanted].flatMap(([key, line]): Difference[] => {
    const there = shown.get(key);
    return there
      ? cellsDiffer(columns, there.row, line.row, at).map(({ id, header }) => ({
          address: address(there.index, id),
          line: name(line),
          header,
          found: there.row[id] ?? null,
          wanted: line.row[id] ?? null,
        }))
      : [
          {
            address: address(Math.max(0, rows.length - 1)),
            line: name(line),
            header: whole?.header ?? "",
            found: null,
            wanted: line.row[whole?.id ?? ""] ?? null,
          },
        ];
  });
  const added = [...shown]
    .filter(([key, { row }]) => !wanted.has(key) && isFact(planned.table, row))
    .map(([, line]) => ({
      address: address(line.index),
      line: name(line),
      header: whole?.header ?? "",
      found: line.row[whole?.id ?? ""] ?? null,
      wanted: null,
    }));
  return [...changed, ...added];
}

/** Whether every line stands where it was planned and shows what it shall, as in a sheet that nobody touched. */
const isAsPlanned = (
  columns: readonly Column[],
  shown: readonly Row[],
  wanted: readonly Row[],
  at: ReadonlyMap<string, number>,
): boolean =>
  shown.length === wanted.length &&
  columns.every(
    ({ id, role }) =>
      (role !== "key" && !(role === "given" && at.has(id))) ||
      shown.every((row, line) => isAlike(row[id], wanted[line]?.[id])),
  );

/** Lines by their keys and, where several have the same, their number. */
function linesOf(keys: readonly string[], rows: readonly Row[]): ReadonlyMap<string, Line> {
  const lines = new Map<string, Line>();
  for (const [index, row] of rows.entries()) {
    if (keys.every((id) => isBlank(row[id]))) continue;
    const key = rowKey(row, keys);
    let again = 0;
    while (lines.has(`${key}\u0000${again}`)) again++;
    lines.set(`${key}\u0000${again}`, { index, row });
  }
  return lines;
}

const cellsDiffer = (
  columns: readonly Column[],
  shown: Row,
  wanted: Row,
  at: ReadonlyMap<string, number>,
): Column[] =>
  columns.filter(
    ({ id, role }) => role === "given" && at.has(id) && !isAlike(shown[id], wanted[id]),
  );

/** Another program makes a number of a class such as 0.5, and a text of a number. */
const isAlike = (one: CellValue = null, other: CellValue = null): boolean =>
  one === other || isBlank(one) || isBlank(other)
    ? one === other || (isBlank(one) && isBlank(other))
    : String(one).trim() === String(other).trim() ||
      (typeof one !== "boolean" &&
        Math.abs(Number(one) - Number(other)) <= 1e-9 * Math.abs(Number(other)));

const FACTS: ReadonlySet<string> = new Set(COVER_ITEMS.map(([item]) => item));

/** Whether a line that was not planned tells something of the lineup: on the cover anybody may note more. */
const isFact = (table: string, row: Row): boolean =>
  table === COVER_TABLE ? FACTS.has(String(row.item)) && !isBlank(row.value) : true;
