import { excelCode } from "../read/errorWords";
import { askShut, refuseShut } from "../refuseShut";
import {
  type Aim,
  type Held,
  heldIn,
  holdsWanted,
  isAsRead,
  isSeen,
  nameSeen,
  type Open,
  type Run,
  type Sight,
  see,
} from "./aim";
import { packed, type Watched } from "./chunks";
import { type Back, putBack } from "./putBack";

/** What became of aims. */
export interface Hits<A extends Aim> {
  readonly written: A[];
  /** Their cells hold what is wanted already. */
  readonly same: A[];
  /** Their cells hold something else than was read, or take nothing: they are as they were found. */
  readonly changed: A[];
  /** Not where they were: another row or another column stands there, as it was found. */
  readonly moved: A[];
}

export interface AimOptions extends Watched {
  /** True where the cells were read in the batch before: they are then not looked at first. */
  readonly fresh?: boolean;
}

/**
 * Writes cells that hold what was read of them, and of which titles and names say that they are the right
 * ones. They are looked at first, through ranges that Excel then keeps and moves with their cells; the
 * batch that writes reads once more what it writes over. What slipped in between is put back.
 *
 * @throws {BookError} where a cell to be written is locked on a protected sheet: nothing of its batch is
 * changed then
 * @throws {NotPutBack} where what was written over could not be put back
 */
export async function writeAims<A extends Aim>(
  context: Excel.RequestContext,
  runs: readonly Run<A>[],
  { fresh = false, progress, signal, most }: AimOptions,
): Promise<Hits<A>> {
  const hits: Hits<A> = { written: [], same: [], changed: [], moved: [] };
  const total = runs.reduce((sum, { aims }) => sum + aims.length, 0);
  let done = 0;
  let kept: Open<A>[] = [];
  for (const batch of packed(runs, most)) {
    signal?.throwIfAborted();
    // Those of the batch before go with this one, those of the last with the client's own release.
    for (const { target, named } of kept) for (const range of [target, ...named]) range.untrack();
    const shared = new Map<string, Excel.Range>();
    const open = batch.map((run): Open<A> => ({ run, ...run.ranges(context, shared) }));
    kept = open;
    const ready = fresh ? allOf(open) : await lookedAt(context, open, hits);
    signal?.throwIfAborted();
    if (ready.length > 0) await writtenTo(context, ready, hits);
    done += batch.reduce((sum, { aims }) => sum + aims.length, 0);
    progress?.(done, total);
  }
  return hits;
}

/** The aims of a run that may be written, by their place in it. */
interface Ready<A extends Aim> {
  readonly open: Open<A>;
  readonly aims: ReadonlyMap<number, A>;
}

const allOf = <A extends Aim>(open: readonly Open<A>[]): Ready<A>[] =>
  open.map((one) => ({ open: one, aims: new Map(one.run.aims.entries()) }));

/** Reads the cells again and gives those that may be written. */
async function lookedAt<A extends Aim>(
  context: Excel.RequestContext,
  open: readonly Open<A>[],
  hits: Hits<A>,
): Promise<Ready<A>[]> {
  const sights = see(open);
  const asked = open.map((one, at) => ({
    one,
    sight: sights[at] as Sight,
    shut: askShut(context, one),
  }));
  await context.sync();
  refuseShut(asked.map(({ shut }) => shut));
  return asked.flatMap(({ one, sight }) => {
    const aims = new Map<number, A>();
    for (const [index, aim] of one.run.aims.entries()) {
      const now = heldIn(one, index, sight);
      if (nameSeen(one, index, sight) !== aim.name) hits.moved.push(aim);
      else if (holdsWanted(aim, now)) hits.same.push(aim);
      else if (isAsRead(aim, now)) aims.set(index, aim);
      else hits.changed.push(aim);
    }
    return aims.size > 0 ? [{ open: one, aims }] : [];
  });
}

/** Excel's answers where cells have moved so that a kept range fits no more, or is gone. */
const GONE: ReadonlySet<string | undefined> = new Set([
  "InvalidArgument",
  "InvalidReference",
  "ItemNotFound",
]);

/** Rows while they are written: what stood there right before, and right after. */
interface Written<A extends Aim> extends Ready<A> {
  readonly before: Sight;
  readonly after: Excel.Range;
}

/** Writes cells, in a batch that reads first what it is about to write over. */
async function writtenTo<A extends Aim>(
  context: Excel.RequestContext,
  ready: readonly Ready<A>[],
  hits: Hits<A>,
): Promise<void> {
  const sights = see(ready.map(({ open }) => open));
  for (const { open, aims } of ready) give(open, aims);
  const asked = ready.map((one, at): Written<A> => {
    const after = one.open.target.getResizedRange(0, 0).untrack();
    after.load("values,formulas");
    return { ...one, before: sights[at] as Sight, after };
  });
  let failed: unknown;
  try {
    await context.sync();
  } catch (error) {
    failed = error;
  }
  const back = asked.flatMap((one) => judged(one, failed !== undefined, hits));
  if (back.length > 0) await putBack(context, back, failed);
  if (failed !== undefined && !GONE.has(excelCode(failed))) throw failed;
}

/** Sorts the aims of a run by what became of them, and gives what is to be put back. */
function judged<A extends Aim>(
  { open, aims, before, after }: Written<A>,
  hasFailed: boolean,
  hits: Hits<A>,
): Back[] {
  // Excel refuses to write into a range that has grown or shrunk.
  if (!isSeen(before) || before.cells.values.length !== open.run.aims.length) {
    hits.moved.push(...aims.values());
    return [];
  }
  return [...aims].flatMap(([index, aim]): Back[] => {
    const found = heldIn(open, index, before);
    const name = nameSeen(open, index, before);
    const isThere = name === aim.name;
    if (isThere && isAsRead(aim, found)) {
      const hasTaken =
        !hasFailed &&
        (holdsWanted(aim, found) ||
          !isAlike(found, heldIn(open, index, { ...before, cells: after })));
      (hasTaken ? hits.written : hasFailed ? hits.moved : hits.changed).push(aim);
      return [];
    }
    (isThere ? hits.changed : hits.moved).push(aim);
    const { rowIndex, columnIndex } = before.cells;
    return [{ open, name, given: aim.input, found, row: rowIndex + index, column: columnIndex }];
  });
}

/** A cell that another is joined to keeps what it holds whatever is given to it. */
const isAlike = (one: readonly Held[], other: readonly Held[]): boolean =>
  one.every(
    ({ value, formula }, at) => value === other[at]?.value && formula === other[at]?.formula,
  );

/** Queues what is given to the rows of a run; the others stay as they are. */
function give({ target, run }: Open, aims: ReadonlyMap<number, Aim>): void {
  const rows = run.aims.map(({ input }, index) => aims.get(index)?.input ?? input.map(() => null));
  const first = rows[0]?.[0] ?? null;
  const isEven = first !== null && rows.every((row) => row.every((input) => input === first));
  // Excel takes one value for all cells of a range in place of a grid of them.
  target.formulas = (isEven ? first : rows) as unknown as string[][];
}
