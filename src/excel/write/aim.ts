import type { CellValue } from "../../records/kind";
import { isSameStored } from "../../sheets/cells/cell";
import { asCell, asFormula } from "../read/cellValues";
import { storedFormula } from "../read/storedFormula";

export type Input = string | number | boolean | null;

/** What a cell holds: its value, or the formula, in the form that a file has it, that gives it. */
export interface Held {
  /** Not told where only the formula counts. */
  readonly value?: CellValue;
  readonly formula?: string;
}

/** Cells of one row to be written together. */
export interface Aim {
  /** What tells that they are the right ones: titles and names, as they were read (`nameOf` of its run). */
  readonly name: string;
  /** What each held when it was read; not told where it may hold anything, as a cell of a row that we have just added. */
  readonly old: readonly (Held | undefined)[];
  /** What each is to hold; not told of a formula, and of a cell that is left alone. */
  readonly wanted: readonly (CellValue | undefined)[];
  /** What is given to Excel for each; null leaves a cell alone. */
  readonly input: readonly Input[];
}

/** Aims in rows below each other. */
export interface Run<A extends Aim = Aim> {
  readonly aims: readonly A[];
  /** About what looking and writing add to a request or an answer. */
  readonly bytes: number;
  readonly sheet: string;
  /** Name of the table that the cells are in; blank where they are in none. */
  readonly table: string;
  /** The cells to be written, and those that tell what they are: runs of one batch may share these. */
  readonly ranges: (context: Excel.RequestContext, shared: Map<string, Excel.Range>) => Ranges;
  /** What tells of a row, from the values that stand in the ranges which tell it. */
  readonly nameOf: (index: number, named: readonly Cells[]) => string;
}

export type Cells = readonly (readonly unknown[])[];

export interface Ranges {
  readonly target: Excel.Range;
  readonly named: readonly Excel.Range[];
}

/** A run whose ranges Excel keeps, and moves with their cells. */
export interface Open<A extends Aim = Aim> extends Ranges {
  readonly run: Run<A>;
}

/** What stands in a run's ranges at one point of one batch. */
export interface Sight {
  readonly cells: Excel.Range;
  readonly named: readonly Excel.Range[];
}

/** Asks for what stands in the ranges of runs, at this point of the batch. */
export function see(runs: readonly Ranges[]): Sight[] {
  // Ranges of their own, so that it can be told whether this was answered.
  const again = (range: Excel.Range, wanted: string) => {
    const seen = range.getResizedRange(0, 0).untrack();
    seen.load(wanted);
    return seen;
  };
  const known = new Map<Excel.Range, Excel.Range>();
  const once = (range: Excel.Range) => {
    const seen = known.get(range) ?? again(range, "values");
    known.set(range, seen);
    return seen;
  };
  return runs.map(({ target, named }) => ({
    cells: again(target, "values,formulas,rowIndex,columnIndex"),
    named: named.map(once),
  }));
}

/** Whether what was asked for has been answered: a batch may fail before or after it. */
export function isSeen({ cells, named }: Sight): boolean {
  try {
    return [cells, ...named].every(({ values }) => values !== undefined);
  } catch {
    return false;
  }
}

/** What tells of a row as it is seen. */
export const nameSeen = ({ run }: Open, index: number, { named }: Sight): string =>
  run.nameOf(
    index,
    named.map(({ values }) => values),
  );

/** What each cell of a row is seen to hold. */
export const heldIn = ({ run }: Open, index: number, { cells }: Sight): Held[] =>
  (cells.values[index] ?? []).map((value, at) => {
    const formula = asFormula(cells.formulas[index]?.[at], value);
    return {
      value: asCell(value),
      ...(formula === undefined ? {} : { formula: storedFormula(formula, run.table) }),
    };
  });

/** Whether cells hold what was read of them, those apart that are left alone. */
export const isAsRead = ({ old, input }: Pick<Aim, "old" | "input">, now: readonly Held[]) =>
  old.every(
    (held, at) =>
      held === undefined ||
      input[at] === null ||
      (now[at]?.formula === held.formula &&
        (held.value === undefined || isSameStored(now[at]?.value ?? null, held.value))),
  );

/** Whether cells hold what is wanted of them. */
export const holdsWanted = ({ wanted, input }: Aim, now: readonly Held[]): boolean =>
  wanted.every(
    (value, at) =>
      input[at] === null || (value !== undefined && isSameStored(now[at]?.value ?? null, value)),
  );
