import fc from "fast-check";
import { expect } from "vitest";
import { isBlank } from "../../../src/records/kind";
import { BookError } from "../../../src/sheets/bookError";
import type { StandInBook } from "../../../src/standin/book";
import type { Fault, StandInHost } from "../../../src/standin/host";
import { type Undoable, undoPoint } from "../../../src/standin/userActs";
import { type Act, act, perform } from "./acts";
import { bring, type File, type Pane, read, run, STEP_NAMES, type Step } from "./steps";
import { RECORDS, readingOf, recordOf, standings, tokenIn } from "./tokens";
import { FREE_SERIAL, hostOf } from "./world";

/** What happens while a step is at work. */
export interface Disturbance {
  readonly acts: readonly { readonly batch: number; readonly act: Act }[];
  readonly fault: (Fault & { readonly times: number }) | undefined;
}

const CODES = [
  "GeneralException",
  "InvalidOperationInCellEditMode",
  "ItemNotFound",
  "InvalidReference",
  "InvalidArgument",
  "AccessDenied",
  "ConnectionFailure",
];

/** As many batches as most steps take. */
const batch = fc.integer({ min: 1, max: 8 });

// Without the bias for small numbers: the first batches are not more telling than the others.
const disturbance: fc.Arbitrary<Disturbance> = fc.noBias(
  fc.record({
    acts: fc.array(fc.record({ batch, act }), { maxLength: 3, size: "max" }),
    fault: fc.option(
      fc.record({
        batch,
        when: fc.constantFrom("before" as const, "midway" as const, "after" as const),
        share: fc.integer({ min: 0, max: 9 }).map((tenths) => tenths / 10),
        code: fc.constantFrom(...CODES),
        times: fc.constantFrom(1, 1, 1, 2, 6),
      }),
      { nil: undefined, freq: 3 },
    ),
  }),
);

/** What is known of a run of several steps. */
export interface Known {
  serial: number;
  files: number;
  /** How many steps were left apart, since something was done right before a batch whose answer was lost. */
  unknowable: number;
  steps: number;
  acts: number;
  faults: number;
}

const serialOf = (known: Known) => () => {
  known.serial += 1;
  return known.serial;
};

/** An export with a reading of its own for each record of a mask. */
export function fileFor(known: Known, mask: number): File {
  known.files += 1;
  const serial = serialOf(known)();
  const records = RECORDS.flatMap((_, record) => ((mask >> record) & 1 ? [record] : []));
  return {
    name: `${known.files}.csv`,
    readings: new Map(records.map((record) => [record, readingOf(record, serial)])),
  };
}

const tokensOf = (book: StandInBook) => new Set(standings(book).map(({ token }) => token));
const onRecords = (book: StandInBook) =>
  new Set(standings(book).flatMap(({ token, isHistory }) => (isHistory ? [] : [token])));
const inHistory = (book: StandInBook) =>
  new Set(standings(book).flatMap(({ token, isHistory }) => (isHistory ? [token] : [])));
const wrongIn = (book: StandInBook) =>
  new Map(
    standings(book).flatMap(({ token, place, cell, isRight }) =>
      isRight ? [] : [[token, { place, cell }] as const],
    ),
  );

/** What may be gone, and what may stand wrong, since somebody did it on purpose. */
interface Watched {
  readonly expected: Set<number>;
  readonly excused: Set<number>;
  /** Whether it was in the history before the step began, and is not what the step takes out of it. */
  readonly isKept: (token: number) => boolean;
  /** Whether somebody did something right before a batch whose answer was lost: nobody learns what it met. */
  isBlind: boolean;
}

/** Does an act, and takes note of what readings it brings and takes away. */
async function noted(book: StandInBook, watched: Watched, work: () => Promise<void> | void) {
  const [before, stood, stored] = [tokensOf(book), onRecords(book), inHistory(book)];
  await work();
  const [after, stands] = [tokensOf(book), onRecords(book)];
  // What somebody types over is gone on purpose, though the history may have had it for a while.
  for (const token of stood)
    if (!stands.has(token) && !watched.isKept(token)) watched.expected.delete(token);
  // Whoever takes the history away takes away what was put there a moment before, too.
  const keeps = inHistory(book);
  for (const token of before)
    if (!after.has(token) || (stored.has(token) && !keeps.has(token)))
      watched.expected.delete(token);
  for (const token of after) if (!before.has(token)) watched.expected.add(token);
  for (const token of wrongIn(book).keys()) watched.excused.add(token);
}

/** Lets acts and faults come before the batches of the pane's own work. */
function disturb(
  pane: Pane,
  known: Known,
  { acts, fault }: Disturbance,
  watched: Watched,
): () => void {
  const { host } = pane;
  let own = 0;
  let point: Undoable | undefined;
  const isUndone = acts.some(({ act: { what } }) => what === "undoes");
  const between = async (): Promise<void> => {
    own += 1;
    const fails = fault && own >= fault.batch && own < fault.batch + fault.times;
    host.between = undefined;
    host.fault = undefined;
    for (const one of acts.filter(({ batch }) => batch === own)) {
      known.acts += 1;
      const other = () => otherPane(host, known);
      await noted(host.book, watched, () =>
        perform({ book: host.book, serial: serialOf(known), point, other }, one.act),
      );
      if (fails && fault.when === "after") watched.isBlind = true;
    }
    host.between = between;
    const number = host.batches.length + 1;
    host.fault = fails ? { ...fault, batch: number } : undefined;
    if (fails) known.faults += 1;
    if (isUndone) point = undoPoint(host.book);
  };
  host.between = between;
  return () => {
    host.between = undefined;
    host.fault = undefined;
  };
}

/** Another pane at the same workbook brings a file of its own in. */
const otherPane = async (host: StandInHost, known: Known): Promise<void> => {
  await failing(() => bring({ host }, fileFor(known, 0b101101), true));
};

/** @throws what is no message of ours */
async function failing(work: () => Promise<unknown> | undefined): Promise<Error | undefined> {
  try {
    await work();
    return undefined;
  } catch (error) {
    if (!(error instanceof BookError)) throw error;
    return error;
  }
}

/** The readings that an error tells of. */
const toldBy = (error: Error | undefined): number[] =>
  [...(error?.message.matchAll(/held (\d+(?:\.\d+)?)/g) ?? [])].flatMap(
    ([, text]) => tokenIn(Number(text)) ?? [],
  );

/** Whether an error tells of a cell that it should hold again what it held. */
const isTold = (error: Error | undefined, cell: string): boolean =>
  error?.message.includes(`${cell} was blank`) === true ||
  error?.message.includes(`${cell} held `) === true;

/** Does a step while it is disturbed, and looks for readings that are gone or on a wrong row. */
export async function disturbed(
  pane: Pane,
  known: Known,
  step: Step,
  disturbance: Disturbance,
): Promise<Error | undefined> {
  const { book } = pane.host;
  const kept = inHistory(book);
  const watched: Watched = {
    expected: tokensOf(book),
    excused: new Set(wrongIn(book).keys()),
    isBlind: false,
    isKept: (token) => kept.has(token) && !pane.undone?.some(({ old }) => tokenIn(old) === token),
  };
  pane.host.reset();
  const calm = disturb(pane, known, disturbance, watched);
  known.steps += 1;
  const error = await failing(() => run(pane, step)).finally(calm);
  const now = tokensOf(book);
  const undone = new Set(pane.undone?.flatMap(({ value }) => tokenIn(value) ?? []));
  pane.undone = undefined;
  const told = new Set(toldBy(error));
  if (watched.isBlind) {
    known.unknowable += 1;
    return error;
  }
  const lost = [...watched.expected].filter(
    (token) => !now.has(token) && !told.has(token) && !undone.has(token),
  );
  expect(lost.map(named), `lost by "${step.what}"; ${error?.message ?? "no error"}`).toEqual([]);
  const wrong = [...wrongIn(book)].filter(
    ([token, { cell }]) => !watched.excused.has(token) && !isTold(error, cell),
  );
  expect(
    wrong.map(([token, { place }]) => `${named(token)} at ${place}`),
    `wrong by "${step.what}"`,
  ).toEqual([]);
  return error;
}

const named = (token: number): string => {
  const { panel, pole } = RECORDS[recordOf(token)] ?? {};
  return `${token / 1000} of ${panel} ${pole}`;
};

/** Takes every protection off, as one does who was told of it. */
function unprotect({ book }: StandInHost): void {
  book.structureProtected = false;
  for (const sheet of book.sheets) sheet.protected = false;
}

/** What only the user can put right, and is told to. */
const SAID = /by which its rows are known|is the only sheet of the workbook/;

/** The same once more with nobody in the way: it comes to its end, and to what was meant. */
export async function again(pane: Pane, known: Known, step: Step): Promise<void> {
  unprotect(pane.host);
  if (step.what === "undo the build") return;
  const error = await disturbed(pane, known, step, { acts: [], fault: undefined });
  if (error && SAID.test(error.message)) return;
  expect(error?.message, `"${step.what}" again`).toBeUndefined();
  if (step.what === "bring in" && step.file && step.replace) await expectBrought(pane, step.file);
  if (step.what === "build") await expectBuilt(pane, step.panels ?? 2);
}

async function expectBrought(pane: Pane, { readings }: File): Promise<void> {
  const { tables } = await read(pane);
  for (const { kind, rows, at, table } of tables) {
    if (kind.id !== "contact" || !at.has("reading")) continue;
    for (const [record, reading] of readings) {
      const { panel, part, pole } = RECORDS[record] as (typeof RECORDS)[number];
      const found = rows.flatMap((row, index) =>
        row.object === panel && row.part === part && row.pole === pole ? [index] : [],
      );
      const [row] = found;
      if (found.length !== 1 || row === undefined) continue;
      if (table.ownLayout && !table.ownLayout.holds(row, at.get("reading") ?? -1)) continue;
      expect(rows[row]?.reading, `brought in again: ${panel} ${pole}`).toBe(reading);
    }
  }
}

async function expectBuilt(pane: Pane, panels: number): Promise<void> {
  const { tables } = await read(pane);
  const table = tables.find(({ kind, table }) => kind.id === "contact" && !table.ownLayout);
  for (const { panel, part, pole } of RECORDS.slice(0, panels * 3)) {
    const rows =
      table?.rows.filter((row) => row.object === panel && row.part === part && row.pole === pole) ??
      [];
    expect(rows.length, `rows of ${panel} ${pole}`).toBeGreaterThan(0);
    if (table?.at.has("maximum")) for (const row of rows) expect(isBlank(row.maximum)).toBe(false);
  }
}

/** One step of a sequence, disturbed, and done once more where it was. */
class StepCommand implements fc.AsyncCommand<Known, Pane> {
  constructor(
    readonly given: {
      readonly what: string;
      readonly mask: number;
      readonly replace: boolean;
      readonly panels: number;
      readonly limit: number;
      readonly again: boolean;
    },
    readonly disturbance: Disturbance,
  ) {}
  check = () => true;
  async run(known: Known, pane: Pane): Promise<void> {
    const { mask, again: isRepeated, ...given } = this.given;
    const step: Step = { ...given, file: fileFor(known, mask) };
    const error = await disturbed(pane, known, step, this.disturbance);
    if (isRepeated || error) await again(pane, known, step);
  }
  toString = () => JSON.stringify({ ...this.given, ...this.disturbance });
}

/** Sequences of steps out of those named. */
export const sequences = (steps: readonly string[], maxCommands: number) =>
  fc.commands(
    [
      fc
        .tuple(
          fc.record({
            what: fc.constantFrom(...steps),
            mask: fc.integer({ min: 1, max: 511 }),
            replace: fc.boolean(),
            panels: fc.constantFrom(2, 3),
            limit: fc.constantFrom(50, 47),
            again: fc.boolean(),
          }),
          disturbance,
        )
        .map(([given, while_]) => new StepCommand(given, while_)),
    ],
    { maxCommands, size: "max" },
  );

/** Runs sequences on copies of a workbook, and says what they came to. */
export async function runSequences(
  start: StandInBook,
  steps: readonly string[],
  {
    runs,
    seed,
    most = 3,
  }: { readonly runs: number; readonly seed?: number; readonly most?: number },
): Promise<Known> {
  const total: Known = { serial: 0, files: 0, unknowable: 0, steps: 0, acts: 0, faults: 0 };
  await fc.assert(
    fc.asyncProperty(sequences(steps, most), async (commands) => {
      const known: Known = { ...total, serial: FREE_SERIAL, files: 0 };
      const pane: Pane = { host: hostOf(start) };
      await fc.asyncModelRun(() => ({ model: known, real: pane }), commands);
      Object.assign(total, known);
    }),
    { numRuns: runs, ...(seed === undefined ? {} : { seed }), endOnFailure: false },
  );
  return total;
}

export { STEP_NAMES };
