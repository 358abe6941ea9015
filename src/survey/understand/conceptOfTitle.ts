import { type Unit, unitSize } from "../../quantities/units";
import { classOf } from "../find/kindOf";
import { conceptOf, kindsIn } from "../words/sheetWords";
import type { Concept } from "../words/words";
import { WORDS } from "./conceptUnder";
import { POINT_OF_CURVE, POINT_OF_TIME } from "./pointOfTime";
import { operationIn } from "./stageIn";

/** The quantity that a column of a concept has. */
const QUANTITY_OF: Readonly<Partial<Record<Concept, string>>> = {
  temperature: "temperature",
  air: "temperature",
  leakage: "current",
  voltage: "voltage",
  current: "current",
  duration: "time",
};

/** "60 s / 30 s", "R10/R1": one reading over an earlier one. */
const RATIO_OF_TIMES =
  /^(?:r ?)?\d+ ?(?:s|sec|min|minutes?)?\.? ?[/÷:] ?(?:r ?)?\d+ ?(?:s|sec|min|minutes?)\.?(?: ratio)?$|^r ?\d+ ?[/÷:] ?r ?\d+$/i;

/** Titles of the two ends of what is allowed, where they carry a unit: "from (ms)", "to (ms)". */
const RANGE_FROM = /^(?:from|von|de|du|desde)(?![\p{L}\p{N}])(?:[\s([].*)?$/iu;
const RANGE_TO = /^(?:to|bis|à|au|hasta|até)(?![\p{L}\p{N}])(?:[\s([].*)?$/iu;

/** What is read, as it is at the base temperature: "B @ 20 °C". */
const AT_BASE = /^(\S.*?) ?(?:@|(?<= )(?:at|to|bei|à)) ?(?:20|40|60|68|104) ?°\s?[CF]?$/iu;

const isAtBase = (title: string): boolean => {
  const read = AT_BASE.exec(title)?.[1];
  return read !== undefined && conceptOf(read) === undefined;
};

/** Titles that are known by their form. */
const FORMS: readonly {
  readonly form: RegExp;
  readonly concept: Concept;
  readonly needsUnit?: true;
}[] = [
  { form: POINT_OF_TIME, concept: "reading" },
  { form: POINT_OF_CURVE, concept: "reading" },
  { form: /^IP$/, concept: "index" },
  { form: RATIO_OF_TIMES, concept: "index" },
  { form: RANGE_FROM, concept: "minimum", needsUnit: true },
  { form: RANGE_TO, concept: "maximum", needsUnit: true },
];

/** Bounds behind what they are for, in brackets or after a comma: "Contact resistance, µΩ (max 60)", "Out of level, mm, max 2", "Height, mm (2300 ±3)". */
const BOUNDS_BEHIND = [
  /(?<=\S) ?[([](?=[^()[\]]*\d)(?:[<>≤≥±]|m[aá]x|m[ií]n|limit|at least|at most|mind|höchst)[^()[\]]*[)\]]/iu,
  /(?<=\S)(?:[,;]| (?=[<>≤≥])) ?(?:[<>≤≥±]|m[aá]x\.?|m[ií]n\.?|mind\.?|höchst\.?) ?\d[^,;]*$/iu,
  /(?<=\S) ?[([] ?\d[\d.,]* ?[±∓][^()[\]]*[)\]]/iu,
];

/** The bound that a title has behind its words; undefined where it has none. */
export const boundInTitle = (title: string): string | undefined =>
  BOUNDS_BEHIND.map((form) => form.exec(title.slice(0, 300))?.[0]).find(
    (found) => found !== undefined,
  );

const isInTime = (unit: Unit | undefined): boolean =>
  unit !== undefined && unitSize(unit).quantity === "time";

/** Whether a title tells how long something takes: "Calc. time (s)" by its unit alone. */
const isDuration = (concept: Concept | undefined, unit: Unit | undefined, title: string): boolean =>
  concept === "duration" ||
  (isInTime(unit) &&
    (concept === "time" || isOfDrive(title) || (concept === undefined && EXPECTED.test(title))));

/** What a drive takes to charge its spring is measured. */
const isOfDrive = (title: string): boolean => kindsIn(title).includes("mechanism");

/** What times say by their words: "Temps attendu s" beside "Temps mesuré s" are no durations of a test. */
const timeConcept = (title: string): Concept =>
  EXPECTED.test(title)
    ? "required"
    : MEASURED.test(title) || isOfDrive(title)
      ? "reading"
      : "duration";

/** Words of what a relay or a breaker should do. */
const EXPECTED = /expected|\bcalc|theor|erwartet|soll|attendu|théor|esperad|teóric|previst|متوقع/iu;

/** Words of what was measured, or is worked out of it. */
export const MEASURED = /measured|medid[oa]|gemessen|mesuré|found|of the|worst|encontrad|المقاس/iu;

/** What stands under a title that names the test alone, by its unit: what it is done at, or what is read. */
const conceptOfTest = (unit: Unit): Concept => {
  const { quantity } = unitSize(unit);
  return quantity === "voltage" ? "voltage" : quantity === "time" ? "duration" : "reading";
};

/** What a title says; what is called for as an extreme is a bound: "Minimum exigé". */
const conceptOfWords = (title: string, unit: Unit | undefined): Concept | undefined => {
  const concept = conceptOf(title);
  const [least, most] = [LEAST.test(title), MOST.test(title)];
  if (concept !== "required" || isInTime(unit) || least === most) return concept;
  return least ? "minimum" : "maximum";
};

const LEAST = /(?<!\p{L})(?:minim(?:um|al\p{L}*)|m[ií]nim[oa]|mindest\p{L}*)(?!\p{L})/iu;
const MOST = /(?<!\p{L})(?:maxim(?:um|al\p{L}*)|m[aá]xim[oa]|höchst\p{L}*)(?!\p{L})/iu;

/** What a title tells by its form alone. */
const conceptOfForm = (title: string, unit: Unit | undefined): Concept | undefined =>
  FORMS.find(({ form, needsUnit }) => form.test(title) && (unit !== undefined || !needsUnit))
    ?.concept ?? (isAtBase(title) ? "corrected" : undefined);

/** What a title says, where its unit does not contradict it. */
export const conceptOfTitle = (written: string, unit: Unit | undefined): Concept | undefined => {
  const bound = boundInTitle(written);
  const title = (bound === undefined ? written : written.replace(bound, "")).slice(0, 300);
  const formed = conceptOfForm(title, unit);
  if (formed) return formed;
  const concept = conceptOfWords(title, unit);
  if (isDuration(concept, unit, title)) return timeConcept(title);
  // The least voltage at which a breaker closes or opens is measured.
  if (concept === "minimum" && unit === "V" && operationIn([title]) !== undefined) return "reading";
  if (concept === undefined || unit === undefined) return concept;
  const isWound = concept === "primary" || concept === "secondary";
  // "Ensayo (V)" and "Test kV" tell at what the test is done, and no reading.
  if (concept === "test") return conceptOfTest(unit);
  // "Pri-Sec MΩ" is insulation.
  if (WORDS.includes(concept) || (isWound && classOf(unit).endsWith("resistance")))
    return "reading";
  const quantity = QUANTITY_OF[concept];
  if (quantity === undefined || unitSize(unit).quantity === quantity) return concept;
  return conceptOfUnit(unit) ?? "reading";
};

/** What a unit alone tells of a column. */
export const conceptOfUnit = (unit: Unit | undefined): Concept | undefined => {
  if (unit === "kV") return "voltage";
  if (unit === "mA" || unit === "µA") return "leakage";
  if (unit === "s" || unit === "min") return "duration";
  return unit === "°C" || unit === "°F" ? "temperature" : undefined;
};
