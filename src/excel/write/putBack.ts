import type { CellValue } from "../../records/kind";
import { BookError } from "../../sheets/bookError";
import { a1 } from "../../sheets/cells/address";
import { isSameStored } from "../../sheets/cells/cell";
import { asInput } from "../read/cellValues";
import { enteredFormula } from "../read/storedFormula";
import { type Held, heldIn, type Input, isSeen, nameSeen, type Open, type Sight, see } from "./aim";

/** What a row was found to hold when it was written over, and by what. */
export interface Back {
  readonly open: Open;
  /** What told of the row. */
  readonly name: string;
  /** What was written over it; null where a cell was left alone. */
  readonly given: readonly Input[];
  readonly found: readonly Held[];
  /** Sheet row and column of its first cell, from 0. */
  readonly row: number;
  readonly column: number;
}

/** A value that was written over and could not be put back. */
export interface LostValue {
  readonly sheet: string;
  readonly address: string;
  /** Null where it was blank. */
  readonly value: CellValue;
}

/** What cells held was written over and could not be put back: it says which cells, and what. */
export class NotPutBack extends BookError {
  override name = "NotPutBack";
  constructor(
    readonly lost: readonly LostValue[],
    options?: ErrorOptions,
  ) {
    super(
      ({ excel }) =>
        excel.notPutBack(
          lost.map(({ sheet, address, value }) =>
            excel.held(sheet, address, value === null ? undefined : JSON.stringify(value)),
          ),
        ),
      options,
    );
  }
}

/** Milliseconds to wait before each try: that a cell is being typed in, or the connection is lost, passes. */
const PAUSES = [0, 100, 400, 1500] as const;

/**
 * Puts back what was written over, within the ranges that Excel keeps. Each try looks where the rows are
 * now, and reads what it writes over itself, so that what slips in between is put back in its turn.
 *
 * @param cause what the writing failed with, if it did
 * @throws {NotPutBack} where it cannot be done
 */
export async function putBack(
  context: Excel.RequestContext,
  backs: readonly Back[],
  cause: unknown,
): Promise<void> {
  let left = backs;
  const overtaken: Back[] = [];
  let failed = cause;
  for (const pause of PAUSES) {
    if (pause > 0) await new Promise((passed) => setTimeout(passed, pause));
    try {
      const after = await tried(context, left);
      left = after.left;
      overtaken.push(...after.overtaken);
    } catch (error) {
      failed = error;
    }
    if (left.length === 0) break;
  }
  const lost = [...left.flatMap(valuesOf), ...overtaken.flatMap(valuesOf).filter(isFilled)];
  if (lost.length > 0) throw new NotPutBack(lost, { cause: failed });
}

const isFilled = ({ value }: LostValue): boolean => value !== null;

/** What a try comes to. */
interface Tried {
  /** What is still to be put back. */
  readonly left: Back[];
  /** Whose cells hold something else by now, which stays: who put it there may not have seen what stood there first. */
  readonly overtaken: Back[];
}

async function tried(context: Excel.RequestContext, backs: readonly Back[]): Promise<Tried> {
  const looked = await seen(context, backs);
  const queued = backs.map((back) => ({ back, at: rowNow(back, looked.get(back.open) as Sight) }));
  const sights = sightsOf(backs);
  for (const { back, at } of queued)
    if (at !== undefined)
      back.open.target
        .getCell(at, 0)
        .untrack()
        .getResizedRange(0, back.given.length - 1)
        .untrack().formulas = [backInput(back)] as string[][];
  await context.sync();
  const tries = queued.map(({ back, at }): Tried => {
    if (at !== undefined) return slippedIn(back, at, sights.get(back.open) as Sight);
    const sight = looked.get(back.open) as Sight;
    return {
      left: isAstray(back, sight) ? [back] : [],
      overtaken: isOvertaken(back, sight) ? [back] : [],
    };
  });
  return {
    left: tries.flatMap(({ left }) => left),
    overtaken: tries.flatMap(({ overtaken }) => overtaken),
  };
}

const sightsOf = (backs: readonly Back[]): Map<Open, Sight> => {
  const opens = [...new Set(backs.map(({ open }) => open))];
  const sights = see(opens);
  return new Map(opens.map((open, at) => [open, sights[at] as Sight]));
};

async function seen(context: Excel.RequestContext, backs: readonly Back[]) {
  const sights = sightsOf(backs);
  await context.sync();
  return sights;
}

/** Where in its range a row stands that holds what was given to it. */
function rowNow({ open, name, given }: Back, sight: Sight): number | undefined {
  const at = sight.cells.values.findIndex(
    (_, index) =>
      nameSeen(open, index, sight) === name && isGiven(given, heldIn(open, index, sight)),
  );
  return at < 0 ? undefined : at;
}

/** What the rows of a record are seen to hold. */
const heldUnder = ({ open, name }: Back, sight: Sight): Held[][] =>
  sight.cells.values.flatMap((_, at) =>
    nameSeen(open, at, sight) === name ? [heldIn(open, at, sight)] : [],
  );

/** Whether no row of its record is seen, so that it has to be looked for again. */
const isAstray = (back: Back, sight: Sight): boolean => heldUnder(back, sight).length === 0;

/** Whether the rows of its record hold neither what was written over them nor what they held first. */
const isOvertaken = (back: Back, sight: Sight): boolean => {
  const held = heldUnder(back, sight);
  return held.length > 0 && !held.some((now) => isGiven(backInput(back), now));
};

/** What was written over in putting back, where that was not what it should have been. */
function slippedIn(back: Back, at: number, sight: Sight): Tried {
  if (!isSeen(sight)) return { left: [back], overtaken: [] };
  const { open } = back;
  const name = nameSeen(open, at, sight);
  const found = heldIn(open, at, sight);
  const isThere = name === back.name;
  if (isThere && isGiven(back.given, found)) return { left: [], overtaken: [] };
  const { rowIndex, columnIndex } = sight.cells;
  const over = { ...{ open, name, found }, row: rowIndex + at, column: columnIndex };
  const slipped = { ...over, given: backInput(back) };
  return isThere
    ? { left: [slipped], overtaken: isGiven(backInput(back), found) ? [] : [back] }
    : { left: [back, slipped], overtaken: [] };
}

/** What to give to cells so that they hold again what they were found to. */
const backInput = ({ found, given }: Pick<Back, "found" | "given">): Input[] =>
  found.map((held, at) => (given[at] === null ? null : inputOf(held)));

const inputOf = ({ value, formula }: Held): string | number | boolean =>
  formula === undefined ? asInput(value ?? null) : enteredFormula(formula);

/** Whether cells hold what was given to them. */
const isGiven = (given: readonly Input[], now: readonly Held[]): boolean =>
  given.every(
    (input, at) => input === null || isSameStored(inputOf(now[at] ?? { value: null }), input),
  );

/** What is lost of a row, by cell. */
const valuesOf = ({ open, found, given, row, column }: Back): LostValue[] =>
  found.flatMap((held, at): LostValue[] => {
    const { value = null, formula } = held;
    const text = formula === undefined ? value : enteredFormula(formula);
    return given[at] === null
      ? []
      : [{ sheet: open.run.sheet, address: a1(row, column + at), value: text }];
  });
