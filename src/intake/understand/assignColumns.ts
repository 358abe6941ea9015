import { unitSize } from "../../quantities/units";
import type { Column, RecordKind } from "../../records/kind";
import { areTicks, listWord } from "../cells/listWord";
import { tellsOutcome } from "../rows/tellsOutcome";
import { plainWords } from "../words/plainWords";
import { type Sense, sensesOf } from "../words/senses";
import type { Says } from "../words/titles";
import { columnScore, type SeenColumn, SURE } from "./columnScore";
import { hasOperations } from "./kindShape";
import type { KnownKind } from "./knowledge";
import { placesNamed } from "./places";
import { type PointAcross, pointsAcross } from "./pointsAcross";

/** A column of an export with the record column that it fills, and how well the two go together. */
export interface Assigned {
  readonly seen: SeenColumn;
  readonly column: Column;
  readonly score: number;
  readonly says: Says;
  /** Set where another column of the export is the same on other lines. */
  readonly byTurns?: true;
}

/** A column of the records that each of two columns of an export could be. */
export interface Contested extends Assigned {
  readonly other: SeenColumn;
}

/** What comes of bringing the columns of a table and those of a kind together. */
export interface Assignment {
  readonly assigned: readonly Assigned[];
  /** Columns of which each could be what the other is: none of them is taken. */
  readonly contested: readonly Contested[];
}

/** A column of an export, and the field that the user has said it is. */
export interface Said {
  readonly seen: SeenColumn;
  readonly field: string;
}
const SAID_SCORE = 9;

/** Scores nearer to each other than this do not decide. */
const TIE = 0.45;

/** The columns of a kind that exports fill. */
export const entriesOf = ({ columns }: RecordKind): readonly Column[] =>
  columns.filter(({ role, id }) => role === "entry" || (role === "note" && id === "remarks"));

/** What the title of a column says of the records that its cells are for, as far as the kind tells records by it. */
const saysOf = (
  seen: SeenColumn,
  known: KnownKind,
  column: Column,
  { parts, points }: Across,
): Says => {
  const { title } = seen;
  const { byPhase, byStage, kind } = known;
  if (column.need === "trail" && column.unit === undefined) return {};
  const { stage, operation, object } = title;
  const across = points.get(seen.index);
  const position = across?.point ?? title.position;
  const part = parts.get(seen.index);
  return {
    ...(object !== undefined && { object }),
    ...(part !== undefined && column === mainReading(kind) && { part }),
    ...(across?.element !== undefined && { subpart: across.element }),
    ...((byPhase || known.points.size > 0) && position !== undefined && { position }),
    ...(byStage && stage !== undefined && { stage }),
    ...(hasOperations(kind) && operation !== undefined && { operation }),
  };
};

/**
 * Brings columns of a table and of a record kind together, those first that go together best. What two
 * columns could be alike, neither is; what only its unit speaks for is taken where nothing else is left for it.
 *
 * @param poleOf the pole of a breaker, L1 to L3, that a column's title names
 * @param said columns of which the user has said what they are
 */
export const assignColumns = (
  columns: readonly SeenColumn[],
  known: KnownKind,
  poleOf: (seen: SeenColumn) => string | undefined,
  said: readonly Said[],
): Assignment => {
  const across = {
    parts: partsAcross(columns, known),
    points: pointsAcross(columns, known),
  };
  const given = said.flatMap(({ seen, field }): Assigned[] => {
    const column = entriesOf(known.kind).find(({ id }) => id === field);
    return column
      ? [{ seen, column, score: SAID_SCORE, says: saysOf(seen, known, column, across) }]
      : [];
  });
  const pairs = columns
    .flatMap((seen) => pairsOf(seen, known, poleOf, across))
    .sort((one, other) => other.score - one.score);
  const taking: Taking = {
    assigned: [...given],
    contested: [],
    taken: new Map(given.map((one) => [keyOf(one), one])),
  };
  const done = new Set<number>();
  const takeFrom = (some: readonly Assigned[]) => {
    for (const pair of some) {
      const isOpen = pair.score >= SURE || !isDoubtful(pair, some, taking.taken);
      if (!done.has(pair.seen.index) && isOpen && take(pair, taking)) done.add(pair.seen.index);
    }
  };
  // A column that these lines leave blank takes nothing from one that they fill.
  takeFrom(pairs.filter(({ seen }) => isFilled(seen)));
  takeFrom(pairs.filter((pair) => !isFilled(pair.seen) && !taking.taken.has(keyOf(pair))));
  const { assigned, contested } = taking;
  const out = new Set(contested.flatMap(({ seen, other }) => [seen.index, other.index]));
  return { assigned: assigned.filter(({ seen }) => !out.has(seen.index)), contested };
};

const isFilled = ({ cells }: SeenColumn): boolean => cells.texts.length > 0;

/** What is taken so far. */
interface Taking {
  readonly assigned: Assigned[];
  readonly contested: Contested[];
  readonly taken: Map<string, Assigned>;
}

/** Takes a column, or settles what it is beside the one that was taken before; false where it stays open. */
const take = (pair: Assigned, { assigned, contested, taken }: Taking): boolean => {
  const key = keyOf(pair);
  const other = taken.get(key);
  const outcome = outcomeOf(pair, other);
  if (outcome === "none") return false;
  if (other && outcome === "contested") contested.push({ ...other, other: pair.seen });
  const { add, keep } = OUTCOMES[outcome](pair, other);
  const stays = [keep, add].filter((one) => one !== undefined);
  const at = other ? assigned.indexOf(other) : assigned.length;
  assigned.splice(at, 1, ...stays);
  if (stays[0]) taken.set(key, stays[0]);
  return true;
};

type Outcome = "taken" | "instead" | "less" | "turns" | "contested";

/** What becomes of a column for which another is taken already, or none yet. */
const outcomeOf = (pair: Assigned, other: Assigned | undefined): Outcome | "none" => {
  if (other === undefined) return "taken";
  if (other.score < SAID_SCORE && pair.score >= SURE && isMoreMeasured(pair, other))
    return "instead";
  if (isMoreMeasured(other, pair)) return "less";
  if (areByTurns(pair, other)) return "turns";
  const isNear = other.score - pair.score < TIE && pair.score >= SURE;
  return isNear && !isAlike(pair, other) ? "contested" : "none";
};

/** What is then taken besides, and what stays of the one that was taken before. */
const OUTCOMES: Readonly<
  Record<
    Outcome,
    (pair: Assigned, other: Assigned | undefined) => { add?: Assigned; keep?: Assigned | undefined }
  >
> = {
  taken: (pair) => ({ add: pair }),
  instead: (pair) => ({ add: pair }),
  less: (_, other) => ({ keep: other }),
  contested: (_, other) => ({ keep: other }),
  turns: (pair, other) => ({
    add: { ...pair, byTurns: true },
    keep: other && { ...other, byTurns: true },
  }),
};

const keyOf = ({ column, says }: Assigned): string => JSON.stringify([column.id, says]);

/** Whether of two columns the one says that it was measured, and the other what was applied for it. */
const isMoreMeasured = ({ seen: one, column }: Assigned, { seen: other }: Assigned): boolean => {
  const says = (seen: SeenColumn, sense: Sense) => seen.title.senses.has(sense);
  return (
    tellsOutcome(column) &&
    (says(one, "measured") || says(one, "reading")) &&
    says(other, "applied") &&
    !says(other, "measured")
  );
};

/**
 * Whether of two columns each line fills one, in a unit that only one of them has: where the records name
 * the unit of each row, both are the reading, as amperes at the pick-up and seconds at its multiples.
 */
const areByTurns = (one: Assigned, other: Assigned): boolean => {
  const [unit, second] = [one.seen.unit, other.seen.unit];
  if (one.column.unitIn === undefined || unit === undefined || second === undefined) return false;
  const lines = new Set(one.seen.cells.lines);
  return (
    other.byTurns === undefined &&
    unitSize(unit).quantity !== unitSize(second).quantity &&
    other.score >= SURE &&
    one.score >= SURE &&
    lines.size > 0 &&
    other.seen.cells.lines.length > 0 &&
    !other.seen.cells.lines.some((line) => lines.has(line))
  );
};

const isAlike = (one: Assigned, other: Assigned): boolean =>
  one.seen.cells.texts.join("\n") === other.seen.cells.texts.join("\n");

/** What only a unit speaks for: doubtful where it could be several columns that are still free, or none is. */
const isDoubtful = (
  pair: Assigned,
  pairs: readonly Assigned[],
  taken: ReadonlyMap<string, Assigned>,
): boolean =>
  pairs.some(
    (other) =>
      other.seen === pair.seen &&
      other.column !== pair.column &&
      !taken.has(keyOf(other)) &&
      pair.score - other.score < 0.2,
  ) ||
  pairs.some(
    (other) =>
      other.seen !== pair.seen &&
      other.score < SURE &&
      keyOf(other) === keyOf(pair) &&
      Math.abs(other.score - pair.score) < 0.2 &&
      !isAlike(other, pair),
  );

const pairsOf = (
  seen: SeenColumn,
  known: KnownKind,
  poleOf: (seen: SeenColumn) => string | undefined,
  across: Across,
): Assigned[] =>
  entriesOf(known.kind).flatMap((column): Assigned[] => {
    if (POLE.test(column.id) && poleOf(seen) !== column.id.toUpperCase()) return [];
    const score =
      acrossScore(seen, known, column, across) ?? columnScore(seen, known.kind.id, column);
    if (score === undefined) return [];
    // Of columns that a unit alone speaks for, the reading is the likeliest.
    const bonus = score < SURE && column.need === "reading" ? 0.3 : 0;
    return [{ seen, column, score: score + bonus, says: saysOf(seen, known, column, across) }];
  });

const POLE = /^l[123]$/;

/** What titles name by column: parts of a panel where several do, and points of a test. */
interface Across {
  readonly parts: ReadonlyMap<number, string>;
  readonly points: ReadonlyMap<number, PointAcross>;
}

/** The columns whose titles name parts, as circuits lie across a table; one such title may be anything. */
export const partsAcross = (
  columns: readonly SeenColumn[],
  { places, kind }: KnownKind,
): Across["parts"] => {
  if (hasOperations(kind)) return new Map();
  const found = columns.flatMap((seen): [number, string][] => {
    const part = isRead(seen.cells, kind) ? partTitled(seen.title, places, kind) : undefined;
    return part === undefined ? [] : [[seen.index, part]];
  });
  return new Set(found.map(([, part]) => part)).size > 1 ? new Map(found) : new Map();
};

/** Whether cells hold readings of a kind: numbers, or its answers. */
const isRead = ({ numeric, texts }: SeenColumn["cells"], kind: RecordKind): boolean => {
  const accepts = mainReading(kind)?.accepts;
  if (accepts?.type !== "list") return numeric >= 0.5;
  const known = texts.filter((text) => listWord(text, accepts) !== undefined).length;
  return areTicks(texts) || (known > 0 && known >= 0.6 * texts.length);
};

/** The part that a title names: word by word, by words of its own, beside what was read of it, or one in each panel. */
const partTitled = (
  { text, unknown }: SeenColumn["title"],
  places: KnownKind["places"],
  kind: RecordKind,
): string | undefined => {
  if (text === "") return undefined;
  const written = partWritten(places, text);
  // Of items of a list, each a sentence, a word or two may be anybody's.
  if (written !== undefined || mainReading(kind)?.accepts?.type === "list") return written;
  if (unknown > 1) return partBeside(places, text);
  const part = partNamed(places, text) ?? partBeside(places, text);
  if (part !== undefined) return part;
  // One in each panel, called after it: "CB frame".
  const named = placesNamed(places, text);
  const objects = new Set(named.map(({ object }) => object));
  return named.length > 1 && objects.size === named.length ? text : undefined;
};

/** The part that is called so word by word. */
const partWritten = (places: KnownKind["places"], text: string): string | undefined => {
  const plain = plainWords(text);
  return places.find(({ part }) => part !== "" && plainWords(part) === plain)?.part;
};

/** The one part that a text names, in whichever panels. */
const partNamed = (places: KnownKind["places"], text: string): string | undefined => {
  const parts = new Set(placesNamed(places, text).map(({ part }) => part));
  return parts.size === 1 ? [...parts][0] : undefined;
};

/** The same beside words that say what was read of it, in one language or two: `Drop door / Caída puerta`. */
const partBeside = (places: KnownKind["places"], title: string): string | undefined => {
  const found = title.split(" / ").flatMap((text) => {
    const words = text.split(" ");
    const others = words.filter(
      (word) => ![...sensesOf(word).senses].some((sense) => READ.has(sense)),
    );
    const isBeside = others.length > 0 && others.length < words.length;
    return isBeside ? (partNamed(places, others.join(" ")) ?? []) : [];
  });
  return new Set(found).size === 1 ? found[0] : undefined;
};

/** What is read of a part. */
const READ: ReadonlySet<Sense> = new Set<Sense>([
  ...(["resistance", "insulation", "drop", "voltage", "reading", "measured"] as const),
  ...(["torque", "applied"] as const),
]);

/** A column whose title says no more than where something was read has the reading of its kind. */
const acrossScore = (
  seen: SeenColumn,
  known: KnownKind,
  column: Column,
  across: Across,
): number | undefined => {
  const { kind, byPhase } = known;
  if (column !== mainReading(kind)) return undefined;
  const { position, object, words, unknown } = seen.title;
  const read = {
    ...seen,
    title: { ...seen.title, unknown: 0, senses: READING, words: READING_WORDS },
  };
  if (across.parts.has(seen.index) || across.points.get(seen.index)?.isAll)
    return columnScore(read, kind.id, column);
  const isAcross = object !== undefined || (byPhase && position !== undefined);
  return isAcross && unknown === 0 && words.length === 0
    ? columnScore(read, kind.id, column)
    : undefined;
};

const READING = new Set(["reading" as const]);
const READING_WORDS = [{ text: "", senses: ["reading" as const] }];

/** The one reading that a kind is for. */
export const mainReading = ({ columns }: RecordKind): Column | undefined => {
  const readings = columns.filter(({ role, need }) => role === "entry" && need === "reading");
  return (
    readings.find(({ id }) => id === "reading" || id === "state") ??
    (readings.length === 1 ? readings[0] : undefined)
  );
};
