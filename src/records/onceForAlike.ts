import type { CellValue, Row } from "./kind";

/** What follows from what was read of a row so far: an answer, or by the next cell that is read what follows from it. */
interface Step<T> {
  readonly answer: T | undefined;
  readonly reads: string | undefined;
  readonly by: Map<CellValue | undefined, Step<T>>;
}

/** Rows that may each have an answer of their own before it is asked whether remembering pays. */
const TRIED = 64;

/**
 * A function of a row that is worked out once for all rows that are alike in every cell that it reads, as a
 * limit is for all phases and panels of one rating. Where nearly every row has an answer of its own, as a
 * reading's has, nothing is remembered.
 *
 * @param answer reads single cells of the row, and nothing else that changes
 */
export function onceForAlike<T>(answer: (row: Row) => T): (row: Row) => T {
  let first: Step<T> | undefined;
  let [asked, worked] = [0, 0];
  let isRemembered = true;
  return (row) => {
    if (!isRemembered) return answer(row);
    asked += 1;
    let step = first;
    while (step?.reads !== undefined) step = step.by.get(row[step.reads]);
    if (step) return step.answer as T;
    worked += 1;
    const watched = watcher();
    const found = answer(watched.over(row));
    if (watched.asWhole() || (worked > TRIED && worked * 2 > asked)) isRemembered = false;
    first = isRemembered ? withAnswer(first, [...watched.reads], row, found) : undefined;
    return found;
  };
}

/** Looks over the shoulder of whoever reads a row. */
export interface Watcher {
  /** The row as it is handed to the reader, which is done with it before the next one is asked for. */
  readonly over: (row: Row) => Row;
  /** The cells that were read of the rows so far. */
  readonly reads: ReadonlySet<string>;
  /** Whether one of them was read as a whole. */
  readonly asWhole: () => boolean;
}

export function watcher(): Watcher {
  const reads = new Set<string>();
  let isWhole = false;
  let row: Row = {};
  const watched = new Proxy({} as Row, {
    get: (_target, id) => {
      reads.add(id as string);
      return row[id as string];
    },
    has: (_target, id) => {
      isWhole = true;
      return id in row;
    },
    ownKeys: () => {
      isWhole = true;
      return Reflect.ownKeys(row);
    },
    getOwnPropertyDescriptor: (_target, id) =>
      id in row ? { value: row[id as string], enumerable: true, configurable: true } : undefined,
  });
  return {
    over: (next) => {
      row = next;
      return watched;
    },
    reads,
    asWhole: () => isWhole,
  };
}

/** The steps with one more way to an answer: through the cells that were read, in their order. */
function withAnswer<T>(
  first: Step<T> | undefined,
  reads: readonly string[],
  row: Row,
  answer: T,
): Step<T> {
  let step: Step<T> = { answer, reads: undefined, by: new Map() };
  for (const id of reads.toReversed())
    step = { answer: undefined, reads: id, by: new Map([[row[id], step]]) };
  if (first === undefined) return step;
  let [known, added] = [first, step];
  while (known.reads !== undefined) {
    const cell = row[known.reads];
    const [next, further] = [known.by.get(cell), added.by.get(cell)];
    if (further === undefined) break;
    if (next === undefined) {
      known.by.set(cell, further);
      break;
    }
    [known, added] = [next, further];
  }
  return first;
}
