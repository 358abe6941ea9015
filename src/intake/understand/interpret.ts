import type { Unit } from "../../quantities/units";
import { unitSize } from "../../quantities/units";
import { tellsOutcome } from "../rows/tellsOutcome";
import type { Fact } from "../table/facts";
import type { Written } from "../table/written";
import { positionReader, readPositions } from "../words/readPosition";
import { readStage } from "../words/readStage";
import { sensesOf } from "../words/senses";
import { type Assignment, assignColumns, partsAcross, type Said } from "./assignColumns";
import { blockFacts, headingSays, heldFacts, statedFacts, testSays } from "./blockFacts";
import { byElapsed, byPoint, byPole, byTicks, type Chosen, elapsedColumn } from "./chosenColumns";
import type { SeenColumn } from "./columnScore";
import { SAID_BY_FILE } from "./columnSenses";
import { headedPlaces } from "./headedPlaces";
import { hasMeasuredPoints, hasOperations } from "./kindShape";
import { kindsNamed } from "./kindWords";
import type { Knowledge, KnownKind } from "./knowledge";
import { type Naming, namingRoles } from "./namingRoles";
import { placesNamed } from "./places";
import type { Role } from "./plainRoles";
import type { Stated } from "./titleSense";

/** A block of an export, as it is looked at for each record kind. */
export interface SeenBlock {
  readonly columns: readonly SeenColumn[];
  /** Columns of which the user has said what they are. */
  readonly said: readonly Said[];
  /** By column, what it is whatever the test. */
  readonly plain: readonly (Role | undefined)[];
  /** The first lines of readings. */
  readonly rows: readonly (readonly string[])[];
  readonly headings: readonly string[];
  /** Texts below it that speak of all its readings. */
  readonly notes: readonly string[];
  /** Headings of the whole file. */
  readonly above: readonly string[];
  readonly facts: readonly Fact[];
  /** What is said for all lines. */
  readonly constants: readonly Written[];
  readonly file: string;
}

/** A block read as records of one kind, and how much speaks for it. */
export interface Interpretation extends Assignment {
  readonly known: KnownKind;
  readonly naming: readonly Naming[];
  readonly facts: readonly Written[];
  /** The share of lines that name records of the kind; undefined where no line names any. */
  readonly placed: number | undefined;
  /** Columns that hold the cells of several columns of the records. */
  readonly chosen: readonly Chosen[];
  /** The column that tells the time at which each line was read. */
  readonly elapsed?: number;
  /** Columns with numbers that it has no use for. */
  readonly unused: readonly SeenColumn[];
  /** Whether words of the file, its headings and facts speak of the kind. */
  readonly named: number;
  readonly score: number;
}

/** Reads a block as records of a kind; undefined where it has no reading of it. */
export const interpret = (
  block: SeenBlock,
  known: KnownKind,
  knows: Knowledge,
): Interpretation | undefined => {
  const heading = headingSays([...block.headings, ...block.notes]);
  const across = partsAcross(block.columns, known);
  const columns = block.columns.map((seen) => withHeading(seen, heading, across.has(seen.index)));
  const open = columns.filter(({ index }) => block.plain[index] === undefined);
  const naming = namingRoles(open, known, knows);
  const names = new Set(naming.map(({ index }) => index));
  const measured = open.filter(({ index }) => !names.has(index));
  const position = naming.find(({ field }) => field === "position");
  const poleOf = poleReader(columns);
  const { assigned: found, contested } = assignColumns(
    measured,
    known,
    // With a pole on each line, one column holds the times of all of them.
    (seen) => poleOf(seen) ?? (position && seen.title.position === undefined ? "L1" : undefined),
    block.said,
  );
  const named = namedBy(block, known);
  const assigned = withUnitBySize(found, known, named > 0);
  const elapsed = elapsedColumn(measured, known);
  const chosen = [
    ...byTicks(assigned),
    ...(elapsed ? byElapsed(assigned, elapsed, known) : []),
    ...(hasOperations(known.kind) && position
      ? byPole(assigned, position, columns[position.index]?.cells.texts ?? [])
      : []),
    ...(hasMeasuredPoints(known.kind) ? byPoint(assigned, naming, known, columns) : []),
  ];
  // A panel on each line and panels across as well: the one or the other is something else.
  const isTwice =
    naming.some(({ field, known }) => field === "object" && known > 0) &&
    assigned.some(({ says }) => says.object !== undefined);
  if (isTwice) return undefined;
  const taken = new Set([
    ...assigned.map(({ seen }) => seen.index),
    ...contested.flatMap(({ seen, other }) => [seen.index, other.index]),
  ]);
  const said = factsFor(block, known, knows, assigned, heading.stated);
  // What was applied may stand over the lines, with what was measured on each of them.
  const outcomes = new Set(known.kind.columns.filter(tellsOutcome).map(({ id }) => id));
  const isTold =
    [...assigned, ...contested].some(({ column }) => tellsOutcome(column)) ||
    (assigned.some(({ column }) => column.unit !== undefined) &&
      said.some(({ field }) => outcomes.has(field)));
  if (!isTold) return undefined;
  const facts = [...said, ...placesOver(block, known, knows, { naming, facts: said, assigned })];
  const placed = placedShare(block, known, { naming, facts, assigned }, knows.objectOf);
  const unused = measured.filter(
    (seen) => !taken.has(seen.index) && seen !== elapsed?.seen && isMeasured(seen),
  );
  return {
    ...{ known, naming, assigned, contested, chosen, facts, placed, unused, named },
    ...(elapsed && { elapsed: elapsed.seen.index }),
    score:
      scoreOf([...assigned, ...contested], placed, unused.length, named) +
      NAMED * naming.filter((one) => one.known > 0).length +
      (known.byStage && isStaged(block) ? STAGED : 0) +
      timedBy(elapsed?.seen) -
      (position ? strangeness(columns[position.index]?.cells.texts ?? [], known) : 0),
  };
};

/** Units that numbers without one can only have, by their size: a pole takes no 0.05 ms and no 50 s (common practice). */
const BY_SIZE: Readonly<
  Record<string, { readonly unit: Unit; readonly between: readonly [number, number] }>
> = {
  timing: { unit: "ms", between: [8, 400] },
};

/** Readings whose unit nothing tells but the size of all of them, where the words around the table speak of their kind. */
const withUnitBySize = (
  found: Assignment["assigned"],
  { kind }: KnownKind,
  isNamed: boolean,
): Assignment["assigned"] => {
  const by = BY_SIZE[kind.id];
  if (by === undefined || !isNamed) return found;
  const isOpen = ({ seen, column }: Assignment["assigned"][number]) =>
    seen.unit === undefined && column.unit === by.unit && column.need === "reading";
  const open = found.filter(isOpen);
  const values = open.flatMap(({ seen }) => seen.cells.values);
  const [least, most] = by.between;
  const areOfSize =
    values.length >= LEAST_VALUES &&
    open.every(({ seen }) => seen.cells.numeric === 1) &&
    values.every((value) => value >= least && value <= most);
  return areOfSize
    ? found.map((one) =>
        isOpen(one) ? { ...one, seen: { ...one.seen, unit: by.unit, told: by.unit } } : one,
      )
    : found;
};
const LEAST_VALUES = 3;

/** For each column whose names the records of the kind know. */
const NAMED = 0.5;

/** What a column of times speaks for a kind where it goes through several of a test, which only a curve does. */
const timedBy = (seen: SeenColumn | undefined): number =>
  new Set(seen?.cells.texts).size > 2 ? TIMED : 0;
const TIMED = 2;

/** Whether a heading tells a stage, which only some kinds know. */
const isStaged = ({ headings }: SeenBlock): boolean =>
  headings.some((text) => readStage(text) !== undefined);
const STAGED = 1;

/** What phases on each line speak against a kind that has no rows by phase, or by others: `L1` for `L1-E`. */
const strangeness = (texts: readonly string[], known: KnownKind): number => {
  const { byPhase, points, kind, positions } = known;
  if (!byPhase) return points.size > 0 || hasOperations(kind) ? 0 : 2;
  const isOther = readPositions(texts).every((text) => !positions.has(text));
  return isOther && !hasOperations(kind) ? OTHER_PHASES : 0;
};
const OTHER_PHASES = 0.75;

const isMeasured = ({ cells, title }: SeenColumn): boolean =>
  cells.numeric >= 0.5 && ![...title.senses].some((sense) => SAID_BY_FILE.has(sense));

const WEIGHTS = { reading: 1, condition: 0.5, trail: 0.3 } as const;

const scoreOf = (
  assigned: Assignment["assigned"],
  placed: number | undefined,
  unused: number,
  named: number,
): number => {
  // A reading of several phases across is one reading.
  const byColumn = new Map(
    assigned.map(({ column, score }) => [
      column.id,
      Math.min(score, 3) * (WEIGHTS[column.need ?? "trail"] ?? 0.3),
    ]),
  );
  const columns = [...byColumn.values()].reduce((sum, one) => sum + one, 0);
  return Math.min(columns, 9) + 6 * (placed ?? 0.3) + named - 1.5 * Math.min(unused, 4);
};

/** How much the words around the readings speak of a kind: headings most, then facts, then the file's name. */
const namedBy = ({ headings, above, facts, file }: SeenBlock, { kind }: KnownKind): number => {
  const of = (text: string) => kindsNamed(text).get(kind.id) ?? 0;
  // What stands over the whole file counts with what stands nearer, where that says little of the test.
  const isTold = headings.some((text) => [...kindsNamed(text).values()].some((count) => count > 1));
  const heads = isTold ? headings : [...headings, [...above, ...headings].join(" ; ")];
  const test = facts.flatMap(({ key, value }) =>
    /test|prüf|essai|ensa|اختبار/iu.test(key) ? of(value) : 0,
  );
  const most = (counts: readonly number[]) => Math.max(0, ...counts);
  return 2 * most(heads.map(of)) + 3 * most(test) + 1.2 * of(file.replace(/\.[a-z]+$/i, ""));
};

/** A column with what a heading says of readings: their unit, and the time they were taken at. */
const withHeading = (
  seen: SeenColumn,
  { units, seconds }: ReturnType<typeof headingSays>,
  isPart: boolean,
): SeenColumn => {
  const { title, cells, unit } = seen;
  const quantities = new Map(units.map((one) => [unitSize(one).quantity, one]));
  const isBare = unit === undefined && cells.numeric >= 0.5;
  const own: Unit | undefined =
    isBare && units.length === 1 && quantities.size === 1 ? units[0] : undefined;
  const isResistance =
    (own ?? unit) !== undefined && unitSize((own ?? unit) as Unit).quantity === "resistance";
  return {
    ...seen,
    ...(own && (isPart || fitsHeading(seen, own)) && { unit: own, told: own }),
    ...(isResistance &&
      title.seconds === undefined &&
      seconds !== undefined && { title: { ...title, seconds } }),
  };
};

/** A heading's unit is for columns that speak of its quantity or of nothing but a place. */
const fitsHeading = ({ title: { senses } }: SeenColumn, unit: Unit): boolean => {
  const { quantity } = unitSize(unit);
  const others = [
    "resistance",
    "voltage",
    "current",
    "temperature",
    "pressure",
    "torque",
    "held",
    "time",
  ] as const;
  const named = others.filter((one) => senses.has(one));
  return named.length === 0 || named.some((one) => one === quantity);
};

/** Reads which pole a title names, by the letters of all titles beside it. */
const poleReader = (columns: readonly SeenColumn[]) => {
  const read = positionReader(columns.flatMap(({ title }) => title.position ?? []));
  return ({ title: { position } }: SeenColumn): string | undefined => {
    const found = position === undefined ? undefined : read(position);
    return found?.ok ? found.value : undefined;
  };
};

/** What the name of the test of the lines says that it was made with. */
const ofTest = ({ key, value }: Fact): Stated[] =>
  sensesOf(key).senses.has("test") ? testSays(value) : [];

const factsFor = (
  block: SeenBlock,
  known: KnownKind,
  knows: Knowledge,
  assigned: Assignment["assigned"],
  headed: ReturnType<typeof headingSays>["stated"],
): Written[] => {
  const inTitles = assigned.flatMap(({ seen }) => seen.title.stated);
  const found = [
    ...statedFacts(headed, known, block.headings.at(-1) ?? ""),
    ...statedFacts(block.facts.flatMap(ofTest), known, "test"),
    ...statedFacts(inTitles, known, "title"),
    ...heldFacts(block.headings, known).filter(
      ({ field }) => !assigned.some(({ column }) => column.id === field),
    ),
    ...blockFacts(block.facts, known, knows),
    ...block.constants,
  ];
  return [...new Map(found.map((one) => [one.field, one])).values()];
};

/** Where the lines belong by the words over the table, as far as neither they nor its titles nor facts say it. */
const placesOver = (
  { headings, above, file }: SeenBlock,
  known: KnownKind,
  { objectOf }: Knowledge,
  {
    naming,
    facts,
    assigned,
  }: { naming: readonly Naming[]; facts: readonly Written[]; assigned: Assignment["assigned"] },
): Written[] => {
  const told = new Set([
    ...naming.map(({ field }) => field as string),
    ...facts.map(({ field }) => field),
    ...assigned.flatMap(({ says }) => Object.keys(says)),
  ]);
  const name = file.replace(/\.\w{1,5}$/, "").replace(/_/g, " ");
  const found = headedPlaces([name, ...above, ...headings], known, objectOf);
  return found.filter(({ field }) => !told.has(field));
};

/** The share of lines that name records of the kind. */
const placedShare = (
  { rows }: SeenBlock,
  { places, direct }: KnownKind,
  { naming, facts, assigned }: Pick<Interpretation, "naming" | "facts" | "assigned">,
  objectOf: Knowledge["objectOf"],
): number | undefined => {
  const across = [...new Set(assigned.flatMap(({ says }) => says.object ?? says.part ?? []))];
  const indices = naming.flatMap(({ field, index }) => (PLACES.has(field) ? index : []));
  // What a line names itself comes before what stands above all lines.
  const fixed = facts.flatMap(({ field, text }) =>
    PLACES.has(field) && !naming.some((one) => one.field === field) ? text : [],
  );
  const lines = rows.map((cells) => [...fixed, ...indices.flatMap((index) => cells[index] || [])]);
  const named = lines.filter((names) => names.length > 0);
  if (named.length === 0 && across.length === 0) return undefined;
  const isAmong = (all: KnownKind["places"], names: readonly string[], find = placesNamed) => {
    let left = all;
    for (const name of names) left = find(left, name);
    return left.length > 0;
  };
  // A panel may be called by its name, and not by its designation.
  const called = (all: KnownKind["places"], name: string) => {
    const named = placesNamed(all, name);
    const own = named.length === 0 ? objectOf(name) : undefined;
    return own === undefined ? named : all.filter(({ object }) => object === own);
  };
  const known = (names: readonly string[]) =>
    isAmong(direct, names) ? 1 : isAmong(places, names, called) ? BESIDE : 0;
  const all =
    across.length === 0
      ? named
      : (named.length > 0 ? named : [[]]).flatMap((names) =>
          across.map((object) => [object, ...names]),
        );
  return all.reduce((sum, names) => sum + known(names), 0) / all.length;
};

/** What a name counts that is only of something else in the panel. */
const BESIDE = 0.8;

const PLACES: ReadonlySet<string> = new Set(["object", "part", "subpart"]);
