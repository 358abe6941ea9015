import { keyIds, rowKey } from "../records/kind";
import type { Arrival } from "./arrivals";
import { isSameCell } from "./isSameCell";
import type { RecordRows } from "./rowFinder";

/** What the lines for one row come to: their cells together, and the lines that gave them. */
export interface Settled<T extends RecordRows> extends Arrival<T> {
  readonly lines: readonly number[];
}

/**
 * Brings the lines for one row together. Lines that give a column different values are in conflict:
 * the latest is taken where each has its own date and time, else none.
 *
 * @param say is told of each line that is not taken, and why
 */
export const settle = <T extends RecordRows>(
  arrivals: readonly Arrival<T>[],
  say: (line: number, reason: string) => void,
): Settled<T> | undefined => {
  const [first] = arrivals;
  if (first === undefined) return undefined;
  if (agree(arrivals)) {
    const cells = new Map(arrivals.flatMap((arrival) => [...arrival.cells]));
    return { ...first, cells, lines: arrivals.map(({ line }) => line) };
  }

  const lines = arrivals.map(({ line }) => line);
  const { kind, rows } = first.table;
  const name = rowKey(rows[first.row] ?? {}, keyIds(kind));
  const times = new Set(arrivals.map(({ when }) => when));
  if (times.has(undefined) || times.size < arrivals.length) {
    for (const line of lines)
      say(
        line,
        `lines ${lines.join(" and ")} give different values for ${name}; none of them is taken, since no date and time tell which is later. Right would be one line.`,
      );
    return undefined;
  }
  const latest = arrivals.reduce((one, other) =>
    (other.when ?? 0) > (one.when ?? 0) ? other : one,
  );
  for (const { line } of arrivals)
    if (line !== latest.line)
      say(
        line,
        `line ${latest.line} gives other values for ${name} and is later; line ${latest.line} is taken.`,
      );
  return { ...latest, lines: [latest.line] };
};

const agree = <T extends RecordRows>(arrivals: readonly Arrival<T>[]): boolean => {
  const [first, ...others] = arrivals;
  const sofar = new Map(first?.cells);
  for (const { cells, table } of others)
    for (const [id, value] of cells) {
      const before = sofar.get(id);
      if (before !== undefined && !isSameCell(before, value, table.kind, id)) return false;
      sofar.set(id, value);
    }
  return true;
};
