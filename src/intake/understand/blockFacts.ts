import { readUnit, unitCalled } from "../../quantities/reading/readUnit";
import { splitReading } from "../../quantities/reading/splitReading";
import { type Unit, unitSize } from "../../quantities/units";
import type { Column } from "../../records/kind";
import { listWord } from "../cells/listWord";
import { besideNumber } from "../cells/splitComment";
import type { Fact } from "../table/facts";
import type { Written } from "../table/written";
import { operationIn } from "../words/operationIn";
import { anyWord } from "../words/phrases";
import { plainWords } from "../words/plainWords";
import { readStage } from "../words/readStage";
import { type Sense, sensesOf } from "../words/senses";
import { withoutWave } from "../words/wave";
import { entriesOf } from "./assignColumns";
import { columnScore, type SeenColumn, SURE } from "./columnScore";
import { hasOperations } from "./kindShape";
import { kindsNamed } from "./kindWords";
import type { Knowledge, KnownKind } from "./knowledge";
import { placesNamed } from "./places";
import { isBesideTest, type TextMeasure, textFacts } from "./textFacts";
import { columnTexts } from "./textsOf";
import {
  isPosition,
  measuresIn,
  ofTheTest,
  type Stated,
  type TitleSense,
  titleSense,
} from "./titleSense";

const ALONE = { letters: new Set<string>(), ends: "", objectOf: () => undefined };

/** What the key of a fact says; of one that is no more than a unit in words, what that is of: `Amps DC`. */
const keySense = (key: string): TitleSense => {
  const title = titleSense(key, ALONE);
  if (title.senses.size > 0 || title.unit === undefined || key.length < LEAST_WORD) return title;
  const { senses, words, unknown } = sensesOf(withoutWave(key));
  return unknown === 0 ? { ...title, senses, words } : title;
};
const LEAST_WORD = 4;

/** A fact as a column of one cell. */
const seenFact = ({ key, value }: Fact): SeenColumn => {
  const title = keySense(key);
  const cells = columnTexts([value]);
  return { index: -1, title, cells, unit: title.unit ?? cells.unit };
};

/** Words of a fact's key that say that its value is the name of what was tested. */
const NAMING: readonly Sense[] = [
  ...(["panel", "section", "breaker", "circuit", "place", "part", "cable"] as const),
  ...(["ct", "vt", "relay", "core", "joint", "element", "phase"] as const),
];

/** Words of a key whose value, where it is a day, is the day of the test. */
const DATED: readonly Sense[] = ["date", "by", "test"];

/** A key of nothing but these names a panel or section, also one that the records do not know. */
const PANEL: ReadonlySet<Sense> = new Set<Sense>(["panel", "section", "number"]);

const written = (field: string, { key, value }: Fact, unit?: Unit): Written => ({
  field,
  title: key,
  text: value,
  ...(unit && { unit }),
});

/**
 * What the facts above a table say for every line of it, in the columns of a kind. The last that is said
 * of something counts.
 */
export const blockFacts = (
  facts: readonly Fact[],
  known: KnownKind,
  knows: Knowledge,
): Written[] => {
  const found = new Map<string, Written>();
  for (const fact of facts) {
    const one = factWritten(fact, known, knows);
    if (one) found.set(one.field, one);
  }
  for (const one of freeFacts(facts, known, knows))
    if (!found.has(one.field)) found.set(one.field, one);
  const by = found.has("by") ? undefined : facts.flatMap(byInSentence)[0];
  return [...found.values(), ...(by ? [by] : [])];
};

/** What lines say in free words. Of what two texts could be, neither is. */
const freeFacts = (
  facts: readonly Fact[],
  known: KnownKind,
  { instruments }: Knowledge,
): Written[] => {
  const said = new Map<string, Map<string, Written>>();
  const add = (field: string | undefined, title: string, text: string) => {
    if (field === undefined) return;
    const texts = said.get(field) ?? new Map<string, Written>();
    said.set(field, texts.set(text, { field, title, text }));
  };
  for (const { key, value } of facts) {
    const found = textFacts(`${key} ${value}`, instruments.keys());
    for (const text of found.dates) add("date", key, text);
    for (const text of found.people) add("by", key, text);
    for (const text of found.instruments)
      add("instrument", key, instruments.get(text.toLowerCase()) ?? text);
    for (const measure of found.measures) add(fieldMeasured(measure, known), key, measure.text);
  }
  return [...said.values()].flatMap((texts) => (texts.size === 1 ? [...texts.values()] : []));
};

/** The column of a kind for a value that stands in free words: by the words beside it, a temperature also alone. */
const fieldMeasured = (
  { about, text, unit }: TextMeasure,
  { kind }: KnownKind,
): string | undefined => {
  const conditions = entriesOf(kind).filter(({ need }) => need !== "reading");
  const title = titleSense(about, ALONE);
  if (title.unknown > 0) return undefined;
  const seen: SeenColumn = { index: -1, title, cells: columnTexts([text]), unit, told: unit };
  if (title.senses.size === 0) {
    const id = aloneIn(unit, text);
    return conditions.find((column) => column.id === id)?.id;
  }
  const [best] = conditions
    .flatMap((column) => {
      const score = columnScore(seen, kind.id, column);
      return score !== undefined && score >= SURE ? [{ column, score }] : [];
    })
    .sort((one, other) => other.score - one.score);
  return best?.column.id;
};

/** Steps of insulation testers, in volts (common practice, no source). */
const TEST_VOLTS: ReadonlySet<number> = new Set([250, 500, 1000, 2500, 5000, 10_000]);

/** What a value alone is of: a temperature, or a step of an insulation tester in volts, as no system's voltage is told. */
const aloneIn = (unit: Unit, text: string): string | undefined => {
  if (unitSize(unit).quantity === "temperature") return "temperature";
  return unit === "V" && TEST_VOLTS.has(Number.parseFloat(text)) ? "testVoltage" : undefined;
};

/** Who tested, in a sentence: `Tested 15-Jul-2026 by M. Oakes, set RT-7`. */
const byInSentence = ({ key, value }: Fact): Written[] => {
  const [, name] = BY.exec(`${key} ${value}`.slice(0, 300)) ?? [];
  return name === undefined ? [] : [{ field: "by", title: key, text: name.trim() }];
};
const BY = new RegExp(
  `\\p{L}.*\\s${anyWord(({ by }) => by)}\\s+((?:\\p{Lu}\\.\\s?)*\\p{Lu}[\\p{L}'-]+(?:\\s\\p{Lu}[\\p{L}'-]+)*)`,
  "u",
);

const factWritten = (fact: Fact, known: KnownKind, knows: Knowledge): Written | undefined => {
  const { instruments } = knows;
  const { value } = fact;
  if (value === "") return undefined;
  if (instruments.has(value.trim().toLowerCase()))
    return isBesideTest(fact.key) ? undefined : written("instrument", fact);
  const seen = seenFact(fact);
  const field = plainField(fact, seen);
  if (field !== undefined) return written(field, fact);
  const key = keyTold(value, seen);
  if (key !== undefined) return hasKey(known)[key] ? written(key, fact) : undefined;
  return namingFact(fact, seen, known) ?? entryFact(fact, seen, known, knows);
};

type ToldKey = "stage" | "operation" | "position";

/** Which of the records' keys besides panel and part a fact says. */
const keyTold = (value: string, { title: { senses } }: SeenColumn): ToldKey | undefined => {
  if (senses.has("stage") && readStage(value) !== undefined) return "stage";
  if (senses.has("operation") && operationIn(value) !== undefined) return "operation";
  const isPhase = isPosition(value) || LETTER.test(value);
  return senses.has("phase") && isPhase ? "position" : undefined;
};

const hasKey = ({ kind, byStage, byPhase }: KnownKind): Readonly<Record<ToldKey, boolean>> => ({
  stage: byStage,
  operation: hasOperations(kind),
  position: byPhase,
});

const LETTER = /^[ABCRSTYUVW]$/;

/** What a fact is of whatever the test: its day, that it was made again, or which test it is. */
const plainField = (
  { key, value }: Fact,
  { title: { senses }, cells }: SeenColumn,
): string | undefined => {
  if (cells.dates === 1 && DATED.some((sense) => senses.has(sense))) return "date";
  if (senses.has("retest")) return "retest";
  const isOther = ["voltage", "current", "date", "by", "instrument", "held"].some((sense) =>
    senses.has(sense as Sense),
  );
  // A heading that names its test, with more beside it, is no label: "CT saturation test, M1, CT-A".
  const isLabel = senses.has("test") && !isOther && kindsNamed(key).size === 0;
  return isLabel && kindsNamed(value).size > 0 ? "test" : undefined;
};

const namingFact = (
  fact: Fact,
  { title: { senses }, cells }: SeenColumn,
  known: KnownKind,
): Written | undefined => {
  const isNaming = NAMING.some((sense) => senses.has(sense));
  const isPanel = senses.size > 0 && [...senses].every((sense) => PANEL.has(sense));
  // A name may begin as a number does: the core 1S1-1S2.
  const isPart = known.places.some(({ part }) => plainWords(part) === plainWords(fact.value));
  if (!isNaming || (cells.numeric === 1 && !isPanel && !isPart)) return undefined;
  if (senses.has("instrument") || senses.has("serial")) return undefined;
  const places = placesNamed(known.places, fact.value);
  if (places.length === 0) return isPanel ? written("object", fact) : undefined;
  const objects = new Set(places.map(({ object }) => object));
  return objects.size === 1 ? written("object", fact) : written("part", fact);
};

/** A name without the words that say that it tested: `operator M. Oakes`. */
const withoutBy = (name: string): string => {
  const words = name.split(" ");
  const from = words.findIndex((word) => !sensesOf(word).senses.has("by"));
  // A crew goes by its number alone nowhere.
  return from > 0 && !/^\d/.test(words[from] ?? "") ? words.slice(from).join(" ") : name;
};

/** A crew by its number: `Crew 2 (night shift)`. */
const CREW = /^\p{L}{3,} \d{1,2}(?: \([^()\d]*\))?$/u;

/** Whether a value can be what a column takes: a name has no figures but a crew's number, and an answer is a word of its list. */
const canBe = (value: string, column: Column): boolean => {
  const { id, accepts } = column;
  if (id === "by") return !/\d/.test(value) || CREW.test(value.trim());
  if (id === "instrument") return !/[;|]/.test(value);
  if (accepts?.type === "list") return listWord(value, accepts) !== undefined;
  const isNumber = accepts?.type === "number" || accepts?.type === "reading";
  return !isNumber || isMeasure(value, column);
};

/** Whether a value is one number with nothing but a unit of the column's quantity, and a remark in brackets: not `36 kV for 60 s`. */
const isMeasure = (value: string, column: Column): boolean => {
  const parts = splitReading(besideNumber(value)?.number ?? value);
  if (!parts || parts.number === "") return parts?.over === true;
  if (parts.unit === "") return true;
  const unit = unitCalled(withoutWave(parts.unit));
  if (unit === undefined) return false;
  return column.unit === undefined || unitSize(unit).quantity === unitSize(column.unit).quantity;
};

/** What of a fact's value belongs in a column: the name without its word, the instrument without its serial number. */
const ownValue = (value: string, column: string, instruments: Knowledge["instruments"]): string => {
  if (column === "by") return withoutBy(value);
  const listed = column === "instrument" ? textFacts(value, instruments.keys()).instruments : [];
  const ids = new Set(listed.map((id) => instruments.get(id.toLowerCase()) ?? id));
  return ids.size === 1 ? ([...ids][0] ?? value) : value;
};

const entryFact = (
  fact: Fact,
  seen: SeenColumn,
  known: KnownKind,
  { instruments }: Knowledge,
): Written | undefined => {
  const [best] = entriesOf(known.kind)
    .filter((column) => canBe(fact.value, column))
    .flatMap((column) => {
      const score = columnScore(seen, known.kind.id, column);
      return score !== undefined && score >= SURE ? [{ column, score }] : [];
    })
    .sort((one, other) => other.score - one.score);
  const own = best ? { ...fact, value: ownValue(fact.value, best.column.id, instruments) } : fact;
  return best && written(best.column.id, own, seen.title.unit);
};

/** A value that a title or heading states, in the kind's column for it; none that is itself what was read. */
export const statedFacts = (
  stated: readonly Stated[],
  { kind }: KnownKind,
  title: string,
): Written[] =>
  entriesOf(kind).flatMap((column): Written[] => {
    if (!["testVoltage", "testCurrent", "controlV"].includes(column.id)) return [];
    const quantity = column.unit && unitSize(column.unit).quantity;
    const texts = new Set(
      stated.filter(({ unit }) => unitSize(unit).quantity === quantity).map(({ text }) => text),
    );
    const [text] = texts;
    return texts.size === 1 && text !== undefined ? [{ field: column.id, title, text }] : [];
  });

/** What parts the name of a test from what it was made with. */
const WITH = /[,;()]|\s[–—-]\s|\s@\s?/;
/** Contact resistances are measured with no more (practice); a larger current is a rating. */
const MOST_AMPERES = 600;

/** What the name of a test says that it was made with: `IR before HV, 5 kV 1 min`, `Contact resistance, 100 A`. */
export const testSays = (name: string): Stated[] => {
  const [test = "", ...parts] = name.slice(0, 200).split(WITH);
  if (kindsNamed(test).size === 0) return [];
  return parts.flatMap((part) => {
    const { rest, said } = measuresIn(part);
    const isAlone = sensesOf(rest.replace(DIRECT, " ")).words.length === 0;
    return isAlone ? said.stated.filter(isOfTest) : [];
  });
};
const DIRECT = new RegExp(
  anyWord(({ direct }) => direct),
  "gi",
);

/** A step of an insulation tester, or a current of a tester of contacts; others may be ratings. */
const isOfTest = ({ text, unit }: Stated): boolean => {
  const value = Number.parseFloat(text.replace(",", ".")) * 10 ** unitSize(unit).exponent;
  return unitSize(unit).quantity === "voltage"
    ? TEST_VOLTS.has(Math.round(value))
    : value <= MOST_AMPERES;
};

/** A voltage and right after it how long: `50 kV / 1 min`, `42 kV AC for 60 s`. */
const HELD =
  /(?<![\p{L}\p{N}.,])(\d+(?:[.,]\d+)?)\s*kV(?:\s*(?:AC|DC|r\.?m\.?s\.?|eff\.?|50 Hz|60 Hz))?[\s,;/–-]*(?:for\s|für\s|während\s|pendant\s|durante\s|por\s)?\s*(\d+(?:[.,]\d+)?)\s*(s|sec(?:onde?s?)?|sek(?:unden?)?|segundos?|min|minutes?|Minuten?|minutos?)(?![\p{L}\p{N}])/giu;

/** The voltage that a heading says was held, and its time, where it tells one of them: what a withstand test applies to all. */
export const heldFacts = (headings: readonly string[], { kind }: KnownKind): Written[] => {
  const found = headings.flatMap((heading) =>
    [...heading.slice(0, 300).matchAll(HELD)].map(([, kV, time, unit]) => ({
      voltage: `${kV} kV`,
      time: `${time} ${/^m/i.test(unit ?? "") ? "min" : "s"}`,
    })),
  );
  const [first] = found;
  const entries = entriesOf(kind).map(({ id }) => id);
  const held = ["duration", "minutes"].find((id) => entries.includes(id));
  return first !== undefined &&
    held !== undefined &&
    entries.includes("applied") &&
    found.every(({ voltage, time }) => voltage === first.voltage && time === first.time)
    ? [
        { field: "applied", title: "title", text: first.voltage },
        { field: held, title: "title", text: first.time },
      ]
    : [];
};

/** A current alone in brackets after nothing but the name of a test: `Contact resistance (200 A)`. */
const IN_BRACKETS =
  /^([^()[\]]{3,80})[([]\s*(?:@\s*)?(\d+(?:[.,]\d+)?)\s*([\p{L}µμ]{1,3})\s*(?:DC|CC)?\s*[)\]]$/u;

const currentOfTest = (heading: string): Stated[] => {
  const [, before = "", number = "", written = ""] =
    IN_BRACKETS.exec(heading.slice(0, 200).trim()) ?? [];
  const unit = readUnit(written);
  if (!unit.ok || unitSize(unit.value).quantity !== "current") return [];
  const { senses, words } = sensesOf(before);
  const isOfTest = kindsNamed(before).size > 0 && !OF_GEAR.some((sense) => senses.has(sense));
  const areKnown = words.every(({ senses: own, text }) => own.length > 0 || /^\p{N}/u.test(text));
  return isOfTest && areKnown ? [{ text: `${number} ${unit.value}`, unit: unit.value }] : [];
};
/** What has a current by its rating. */
const OF_GEAR = ["panel", "section", "breaker", "ct", "circuit", "place"] as const;

/** What a heading says of the readings below: values with their units, the time they were read at, and their unit. */
export const headingSays = (headings: readonly string[]) => {
  const found = headings.map((heading) => measuresIn(ofTheTest(heading.slice(0, 300))).said);
  const seconds = new Set(found.flatMap(({ seconds }) => seconds ?? []));
  return {
    stated: [...found.flatMap(({ stated }) => stated), ...headings.flatMap(currentOfTest)],
    seconds: seconds.size === 1 ? [...seconds][0] : undefined,
    units: headings.flatMap(unitsNamed),
  };
};

const NAMED = /(?:[([]\s*|\b(?:in|en|em)\s+)([\p{L}µΩ°%·]{1,14})(?=[\s,.;)\]]|$)/giu;

const unitsNamed = (heading: string): Unit[] => [
  ...new Set(
    [NAMED, OHMS, VALUES]
      .flatMap((pattern) => [...heading.slice(0, 200).matchAll(pattern)])
      .flatMap(({ 1: text = "" }) => {
        const read = readUnit(text);
        return read.ok && text.length > 1 ? [read.value] : [];
      }),
  ),
];
/** A unit after a word for all that was read: `all values ft-lb`, `Werte: kΩ`. */
const VALUES =
  /(?<!\p{L})(?:values?|readings|results|figures|Werte|Messwerte|valeurs|mesures|valores|lecturas|leituras)\s*(?:are\s+)?(?:in\s+|en\s+|em\s+)?[:=]?\s*(?!in\b)([\p{L}µΩΩ°%·-]{1,14})(?=[\s,.;)\]]|$)/giu;
/** Whether a text says in what unit all readings are: `All readings in micro-ohms`. */
export const speaksOfAll = (text: string): boolean =>
  [...text.slice(0, 200).matchAll(VALUES)].some(([, unit = ""]) => readUnit(unit).ok);
/** Words that are a unit of resistance and nothing else, wherever they stand. */
const OHMS =
  /(?<!\p{L})((?:tera|giga?|mega?|kilo|milli|micr|micro|mikr|mikro|[tgmkµ])[ -]?ohms?|[TGMkmµ][ΩΩ])(?!\p{L})/giu;
