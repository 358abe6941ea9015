import { keyIds, rowKey } from "../../records/kind";
import { isSameReading } from "../cells/isSameReading";
import type { RecordRows } from "../rows/recordRows";
import type { Arrival, Say } from "./arrival";

/** What the lines for one row come to: their cells together, and the lines that gave them. */
export interface Settled<T extends RecordRows> extends Arrival<T> {
  readonly lines: readonly number[];
  /** Earlier lines for the same row that say something else. */
  readonly earlier: readonly Repeated<T>[];
}

/** A line, and those that say the same; of these it is the latest. */
export interface Repeated<T extends RecordRows> extends Arrival<T> {
  readonly lines: readonly number[];
}

/**
 * Brings the lines for one row together. Lines that give a column different values are in conflict:
 * the latest is taken where each has a date and time and one is the latest, else none.
 *
 * @param say is told of each line that is not taken, and why
 */
export const resolveRepeats = <T extends RecordRows>(
  arrivals: readonly Repeated<T>[],
  say: Say,
): Settled<T> | undefined => {
  const [first] = arrivals;
  if (first === undefined) return undefined;
  if (agree(arrivals)) {
    const cells = [...new Map(arrivals.flatMap((arrival) => arrival.cells))];
    return { ...latestOf(arrivals), cells, lines: linesOf(arrivals), earlier: [] };
  }

  const lines = linesOf(arrivals);
  const { kind, rows } = first.table;
  const name = rowKey(rows[first.row] ?? {}, keyIds(kind));
  const latest = retestOf(arrivals) ?? latestOf(arrivals);
  const open =
    !latest.retest &&
    arrivals.some(
      (arrival) =>
        arrival.when === undefined || (arrival !== latest && arrival.when === latest.when),
    );
  if (open) {
    for (const line of lines)
      say(line, ({ intake: { place } }) => place.contradicting(place.lines(lines), name));
    return undefined;
  }
  const earlier = arrivals.filter((arrival) => arrival !== latest);
  for (const line of linesOf(earlier))
    say(line, ({ intake }) => intake.place.later(latest.line, name));
  return { ...latest, earlier };
};

const linesOf = (arrivals: readonly Repeated<RecordRows>[]) =>
  arrivals.flatMap(({ lines }) => lines).sort((one, other) => one - other);

/** The one line that the file says was measured again, where all others are the test before. */
const retestOf = <T extends RecordRows>(arrivals: readonly Repeated<T>[]) => {
  const [only, ...others] = arrivals.filter(({ retest }) => retest);
  return others.length === 0 ? only : undefined;
};

const latestOf = <T extends RecordRows>(arrivals: readonly Repeated<T>[]): Repeated<T> =>
  arrivals.reduce((one, other) => ((other.when ?? 0) > (one.when ?? 0) ? other : one));

/** Whether lines give each column one value. */
export const agree = <T extends RecordRows>(arrivals: readonly Repeated<T>[]): boolean => {
  const [first, ...others] = arrivals;
  const sofar = new Map(first?.cells);
  for (const { cells, table } of others)
    for (const [id, value] of cells) {
      const held = sofar.get(id);
      if (held !== undefined && !isSameReading(held, value, table.kind, id)) return false;
      sofar.set(id, value);
    }
  return true;
};
