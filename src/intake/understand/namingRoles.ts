import { plainWords } from "../words/plainWords";
import { pointKeys } from "../words/pointKey";
import { areSchemeLetters } from "../words/readPosition";
import { readStage } from "../words/readStage";
import { type Sense, sensesOf } from "../words/senses";
import type { SeenColumn } from "./columnScore";
import { hasOperations } from "./kindShape";
import { kindNamed } from "./kindWords";
import type { Knowledge, KnownKind } from "./knowledge";
import { placesNamed } from "./places";
import { isPosition } from "./titleSense";

/** Fields that say which record a line is for. */
export type NamingField =
  | "object"
  | "part"
  | "subpart"
  | "position"
  | "stage"
  | "operation"
  | "test";

/** A column that names something, and how many of its names the records know, from 0 to 1. */
export interface Naming {
  readonly index: number;
  readonly field: NamingField;
  readonly known: number;
}

/** Titles under which names are looked for, whatever the cells are. */
const TITLED: readonly (readonly [NamingField, readonly Sense[]])[] = [
  ["object", ["panel", "section"]],
  [
    "part",
    ["part", "breaker", "cable", "joint", "core", "circuit", "ct", "vt", "relay", "element"],
  ],
  ["object", ["place"]],
];
const FEW = 0.6;

/** Which columns of a table name records of a kind, and what of them. */
export const namingRoles = (
  columns: readonly SeenColumn[],
  known: KnownKind,
  { kinds, objectOf }: Knowledge,
): Naming[] => {
  const ids = new Set(kinds.map(({ kind }) => kind.id));
  const naming = columns.flatMap((seen) => {
    const role = roleOf(seen, known, ids, objectOf);
    return role ? [role] : [];
  });
  return withTitled(underPanels(oneEach(naming), columns, objectOf), columns);
};

const share = (texts: readonly string[], is: (text: string) => boolean): number =>
  texts.length === 0 ? 0 : texts.filter(is).length / texts.length;

const roleOf = (
  seen: SeenColumn,
  known: KnownKind,
  ids: ReadonlySet<string>,
  objectOf: Knowledge["objectOf"],
): Naming | undefined => {
  const texts = [...new Set(seen.cells.texts)];
  if (texts.length === 0) return undefined;
  const about = {
    seen,
    known,
    texts,
    isNumbers: texts.every((text) => /^[-+<>]?[\d.,\s]+$/.test(text)),
  };
  const found =
    pointIn(about) ??
    phaseIn(about) ??
    (isUnnamed(about) ? undefined : nameIn(about, ids, objectOf));
  return found && { index: seen.index, ...found };
};

/** A column that is looked at, and its different texts. */
interface About {
  readonly seen: SeenColumn;
  readonly known: KnownKind;
  readonly texts: readonly string[];
  readonly isNumbers: boolean;
}
type Found = Omit<Naming, "index">;

const foundAs = (field: NamingField, known: number, least = FEW): Found | undefined =>
  known >= least ? { field, known } : undefined;

const pointIn = ({
  seen: { title },
  known: { points },
  texts,
  isNumbers,
}: About): Found | undefined => {
  if (points.size === 0) return undefined;
  const isPoints =
    !isNumbers ||
    title.senses.has("multiple") ||
    /%|point|punkt|ponto|punto/iu.test(wordsIn(title.words));
  return isPoints
    ? foundAs(
        "position",
        share(texts, (text) => pointKeys(text).some((key) => points.has(key))),
      )
    : undefined;
};

const wordsIn = (words: SeenColumn["title"]["words"]) => words.map(({ text }) => text).join(" ");

const phaseIn = ({ seen: { title }, known, texts }: About): Found | undefined =>
  isElsewhere(texts, known) ? undefined : foundAs("position", positionShare(texts, title.senses));

/** Numbers are no names, but under the title of something that is numbered. */
const NUMBERED: readonly Sense[] = [
  "panel",
  "section",
  "element",
  "core",
  "relay",
  "part",
  "joint",
  "breaker",
  "cable",
];
const isUnnamed = (about: About): boolean =>
  about.isNumbers &&
  !NUMBERED.some((sense) => about.seen.title.senses.has(sense)) &&
  !areElements(about);

/** Whether the stages of a relay are meant, by the device numbers of its elements: `51` and `50`, and no 1 and 2. */
const areElements = ({ seen: { title }, known: { places }, texts }: About): boolean =>
  title.senses.has("stage") &&
  texts.every(
    (text) =>
      /^\d{2}$/.test(text) &&
      places.some(({ part }) => part !== text && plainWords(part).split(" ").includes(text)),
  );

const nameIn = (
  { seen: { title }, known, texts }: About,
  ids: ReadonlySet<string>,
  objectOf: Knowledge["objectOf"],
): Found | undefined => {
  const stages = known.byStage ? share(texts, (text) => readStage(text) !== undefined) : 0;
  const operations = hasOperations(known.kind) ? share(texts, isOperation) : 0;
  const places = share(texts, (text) => placesNamed(known.places, text).length > 0);
  const tests = title.senses.has("test")
    ? share(texts, (text) => kindNamed(text, ids) !== undefined)
    : 0;
  return (
    foundAs("stage", stages, 0.8) ??
    foundAs("operation", operations, 0.8) ??
    foundAs(isObjects(texts, known) ? "object" : "part", places) ??
    foundAs(
      "object",
      share(texts, (text) => isCalled(text, known, objectOf)),
    ) ??
    foundAs("test", tests, 0.8)
  );
};

/** Whether a text is what the lineup calls a panel that the records are of: `Feeder pumps` for +J03. */
const isCalled = (
  text: string,
  { places }: KnownKind,
  objectOf: Knowledge["objectOf"],
): boolean => {
  const own = objectOf(text);
  return own !== undefined && places.some(({ object }) => object === own);
};

/** Texts that are all parts or panels of the records are no phases, though they may look like some. */
const isElsewhere = (texts: readonly string[], { places }: KnownKind): boolean =>
  texts.every((text) =>
    places.some(
      ({ object, part }) =>
        plainWords(part) === plainWords(text) || plainWords(object) === plainWords(text),
    ),
  );

const positionShare = (texts: readonly string[], senses: ReadonlySet<Sense>): number => {
  const letters = texts.map((text) => text.toUpperCase());
  if (texts.length > 2 && areSchemeLetters(letters))
    return share(letters, (letter) => letter.length === 1 || isPosition(letter));
  const titled = senses.has("phase");
  if (titled && texts.every((text) => /^[A-Z]$|^[123]$/i.test(text)))
    return texts.length > 0 ? 1 : 0;
  return share(texts, isPosition);
};

const isOperation = (text: string): boolean => {
  const { senses } = sensesOf(text);
  return senses.has("closing") !== (senses.has("opening") || senses.has("tripping"));
};

/** Whether each text alone names one panel or section: as its own name, or by what is its alone. */
const isObjects = (texts: readonly string[], { places }: KnownKind): boolean => {
  const known = texts.filter((text) => placesNamed(places, text).length > 0);
  const single = known.filter(
    (text) => new Set(placesNamed(places, text).map(({ object }) => object)).size === 1,
  );
  return known.length > 0 && single.length / known.length >= 0.8;
};

/** Of several columns that name panels the best known is it; the others name parts of them. */
const oneEach = (naming: readonly Naming[]): Naming[] => {
  const best = (field: NamingField) =>
    naming.filter((one) => one.field === field).sort((one, other) => other.known - one.known);
  const [object, ...others] = best("object");
  const parts = [
    ...others.map((one) => ({ ...one, field: "part" as const })),
    ...best("part"),
  ].sort((one, other) => one.index - other.index);
  const rest = (["position", "stage", "operation", "test"] as const).flatMap((field) =>
    best(field).slice(0, 1),
  );
  return [
    ...(object ? [object] : []),
    ...parts
      .slice(0, 2)
      .map((one, at) => ({ ...one, field: at === 0 ? ("part" as const) : ("subpart" as const) })),
    ...rest,
  ];
};

/**
 * A name that is one panel's only because no other has such a part says nothing beside the name of a panel
 * that the records do not know: `Q0` of a panel of another lineup.
 */
const underPanels = (
  naming: readonly Naming[],
  columns: readonly SeenColumn[],
  objectOf: Knowledge["objectOf"],
): readonly Naming[] => {
  const object = naming.find(({ field }) => field === "object");
  const own = columns.find(({ index }) => index === object?.index);
  if (own === undefined || isOfPanels(own) || own.cells.texts.every(objectOf)) return naming;
  const titled = columns.find(
    (one) => isOfPanels(one) && !naming.some(({ index }) => index === one.index),
  );
  if (titled === undefined) return naming;
  const field = naming.some((one) => one.field === "part")
    ? ("subpart" as const)
    : ("part" as const);
  return [
    { index: titled.index, field: "object", known: 0 },
    ...naming.map((one) => (one === object ? { ...one, field } : one)),
  ];
};

/** Whether a column is of panels by its title, and holds names. */
const isOfPanels = ({ title: { senses }, cells }: SeenColumn): boolean =>
  (senses.has("panel") || senses.has("section")) &&
  !senses.has("serial") &&
  cells.texts.length > 0 &&
  cells.numeric < 0.5;

/** Adds the columns that by their titles name panels or parts, though the records know none of the names. */
const withTitled = (naming: readonly Naming[], columns: readonly SeenColumn[]): Naming[] => {
  const all = [...naming];
  for (const [field, titles] of TITLED) {
    if (all.some((one) => one.field === field)) continue;
    const titled = columns.find(
      ({ index, title, cells }) =>
        !all.some((one) => one.index === index) &&
        cells.texts.length > 0 &&
        cells.numeric < 0.5 &&
        !title.senses.has("serial") &&
        titles.some((sense) => title.senses.has(sense)),
    );
    if (titled) all.push({ index: titled.index, field, known: 0 });
  }
  return all;
};
