import { insulationCorrect } from "../../engineering/insulationCorrect";
import { type Unit, unitSize } from "../../quantities/units";
import { insulationMinimum } from "../../standards/insulationMinimum";
import { torqueTolerance } from "../../standards/practice";
import type { Entry, Limit, SurveyColumn } from "../find/block";
import { quantitiesIn } from "../find/findFacts";
import { classOf } from "../find/kindOf";
import { type Cell, inBaseUnit, statedVerdict } from "../read/cells";
import { conceptOf, hasWord, plain } from "../words/sheetWords";
import type { SurveyContext } from "./rule";

/** The number of an entry that is held against a bound. */
interface Judged {
  /** The cell that is judged: the reading, its corrected value, or the error worked out from it. */
  readonly cell: Cell;
  readonly unit?: Unit;
  /** The temperature from which the reading was brought to 20 °C here, where the workbook does not. */
  readonly temperature?: Cell;
}

/** A value of an entry held against a bound. */
export interface Comparison extends Judged {
  readonly limit: Limit;
  /** Where the bound comes from, in words; undefined where it stands in the workbook. */
  readonly source?: string;
  readonly verdict: "Pass" | "Fail" | "Inconclusive";
}

/** The verdict that the line itself states. */
export const resultOf = ({ beside, cell }: Entry): "Pass" | "Fail" | undefined => {
  const stated = beside.result;
  return stated && stated !== cell ? statedVerdict(stated) : undefined;
};

const fits = (limit: Limit, unit: Unit | undefined): boolean =>
  limit.unit === undefined || unit === undefined || classOf(limit.unit) === classOf(unit);

/** By how many percent a reading differs from what is expected. */
const offBy = (cell: Cell | undefined, required: Cell | undefined): number | undefined =>
  cell?.number !== undefined && required?.number !== undefined && required.number !== 0
    ? (cell.number / required.number - 1) * 100
    : undefined;

/** The error or the spread of a reading in percent: as the line states it, else from what is expected. */
const shareOf = ({ cell, beside, kind }: Pick<Entry, "cell" | "beside" | "kind">) => {
  const stated = kind === "contact" ? beside.spread : (beside.error ?? beside.spread);
  if (stated?.number !== undefined) return stated;
  const off = OF_ERROR.includes(kind) ? offBy(cell, beside.required) : undefined;
  return cell && off !== undefined ? { ...cell, number: off, bound: undefined } : undefined;
};

/** The numbers that a limit of this unit can be about, the corrected value before the reading. */
const judgedBy = ({ cell, unit, beside, kind }: Entry, limit: Limit): Judged | undefined => {
  if (limit.unit === "%" || (OF_ERROR.includes(kind) && beside.error)) {
    const share = shareOf({ cell, beside, kind });
    return share && { cell: share, unit: "%" };
  }
  const { corrected } = beside;
  // Without its reading a corrected value is judged by nothing: the reading is told as missing.
  if (cell && corrected?.number !== undefined && fits(limit, corrected.unit ?? unit))
    return { cell: corrected, unit: corrected.unit ?? unit };
  return cell && fits(limit, unit) ? { cell, unit } : undefined;
};

const inBase = (number: number, unit: Unit | undefined) =>
  unit ? inBaseUnit(number, unit) : number;

/** Shares by which a number may miss its limit and still be as good, for rounding. */
const ROUNDING = 1e-9;

const verdictOf = (cell: Cell, unit: Unit | undefined, limit: Limit): Comparison["verdict"] => {
  const isShare = unit === "%" && limit.side === "most";
  const value = inBase(isShare ? Math.abs(cell.number ?? 0) : (cell.number ?? 0), unit);
  const bound = inBase(limit.number, limit.unit ?? unit);
  const slack = Math.abs(bound) * ROUNDING;
  const within = limit.side === "least" ? value >= bound - slack : value <= bound + slack;
  // What is known to lie above or below proves a bound on its own side only, and fails it on the other only.
  const side = { exact: undefined, above: "least", below: "most" }[cell.bound ?? "exact"];
  if (side === undefined || (side === limit.side) === within) return within ? "Pass" : "Fail";
  return "Inconclusive";
};

/** Kinds whose readings are judged by their error in percent. */
const OF_ERROR: readonly string[] = [
  "currentTransformer",
  "voltageTransformer",
  "metering",
  "protection",
];

/** The band around the torque called for, where the workbook states none. */
const TORQUE_BAND: readonly { readonly side: Limit["side"]; readonly share: number }[] = [
  { side: "least", share: 1 - torqueTolerance.value / 100 },
  { side: "most", share: 1 + torqueTolerance.value / 100 },
];

/** Whether a bound is for how far the poles are apart: "simultaneity at most 2 ms". */
export const isOfSpread = ({ about }: Limit): boolean =>
  about !== undefined && (conceptOf(about) === "spread" || BETWEEN_POLES.test(plain(about)));

/** Several poles together, for which a bound is how far they are apart: "poles within 3 ms". */
const BETWEEN_POLES =
  /^(?:max \p{L}* ?)?(?:poles|phases|contacts|polen?|phasen|kontakte|polos|fases|contactos|contatos)(?: (?:within|together|inside|apart|innerhalb|en|dentro|entre|max\p{L}*|a|au|hochstens)(?!\p{L}).*)?$|(?:between|among|across|zwischen|entre) (?:\p{L}{2,3} )?(?:poles|phases|contacts|polen|phasen|polos|fases|contactos|contatos)(?!\p{L})|(?<!\p{L})(?:untereinander|zueinander)(?!\p{L})/u;

/** At what a stage of a density monitor came: what the heading bounds is the gas. */
const OF_STAGE =
  /alarm|lock ?out|block|sperr|meldung|bloqu|verrouill|enclav|(?<!\p{L})(?:stage|stufe|etapa|seuil)(?!\p{L})|إنذار|انذار|إغلاق/iu;

/** The limits that headings and notes tell for a reading of this kind. */
const limitsTold = ({ facts, unit, kind, beside, operation, column }: Entry): readonly Limit[] => {
  const isOfError = beside.error !== undefined || OF_ERROR.includes(kind);
  const told = facts.limits.filter(
    (limit) =>
      limit.unit !== undefined &&
      !(limit.unit === "ms" && isOfSpread(limit)) &&
      !(kind === "gas" && OF_STAGE.test(column.title)) &&
      (limit.operation === undefined || limit.operation === operation) &&
      ((unit !== undefined && classOf(limit.unit) === classOf(unit)) ||
        (isOfError && limit.unit === "%")),
  );
  const about = told.filter((limit) => sharesWord(limit.about, column.title));
  const apt = about.length > 0 ? about : told.filter((limit) => !isOneOfSeveral(limit, told));
  return apt.filter((limit, index) => apt.findIndex(({ side }) => side === limit.side) === index);
};

/** Whether a heading states several bounds on this side, so that nobody knows which is meant. */
const isOneOfSeveral = ({ address, side, number }: Limit, told: readonly Limit[]): boolean =>
  told.some((other) => other.address === address && other.side === side && other.number !== number);

/** Whether a limit's own words and a title have a word in common, by its first five letters. */
const sharesWord = (about: string | undefined, title: string): boolean => {
  const stems = (text: string) =>
    plain(text)
      .split(" ")
      .filter((word) => word.length > 2 && !hasWord(word, "atLeast") && !hasWord(word, "atMost"))
      .map((word) => word.slice(0, 5));
  const titled = stems(title);
  return (
    about !== undefined &&
    stems(about).some((stem) =>
      titled.some((other) => stem.startsWith(other) || other.startsWith(stem)),
    )
  );
};

/** How far a torque may be off, as a share, where heading or notes say one: "tolerance ± 5 %". */
const toleranceTold = ({ facts }: Entry): number | undefined => {
  const told = facts.limits.filter(({ unit, side }) => unit === "%" && side === "most");
  const [first] = told;
  return first && told.every(({ number }) => number === first.number)
    ? first.number / 100
    : undefined;
};

/** The limits that count for an entry: those of its line, else those of heading and notes, each side once. */
const limitsOf = (entry: Entry): readonly Limit[] => {
  const { limits, unit, kind, beside, column } = entry;
  const own = limits.filter((limit) => limit.unit === "%" || fits(limit, unit));
  if (own.length > 0) return own;
  if (kind === "withstand" || kind === "indexCurve" || column.concept === "voltage") return [];
  const { required } = beside;
  if (kind !== "torque" || required?.number === undefined) return limitsTold(entry);
  const called = required.number;
  const stated = toleranceTold(entry);
  return TORQUE_BAND.map(({ side, share }) => ({
    side,
    number: called * (stated === undefined ? share : side === "least" ? 1 - stated : 1 + stated),
    unit: required.unit ?? unit,
    address: required.address,
  }));
};

/** Whether a resistance was measured with a voltage for low-voltage circuits: no criterion of main circuits holds for it. */
const isLowVoltage = ({ column, beside, facts }: Entry): boolean => {
  const titled = quantitiesIn(column.title).find(
    ({ unit }) => unitSize(unit).quantity === "voltage",
  );
  const own =
    titled ??
    (beside.voltage?.number === undefined
      ? undefined
      : { number: beside.voltage.number, unit: beside.voltage.unit ?? "V" });
  const volts = own ? inBaseUnit(own.number, own.unit) : facts.testV;
  return volts !== undefined && volts < 1000;
};

/** A bound that counts for an entry, and where it comes from. */
export interface Bound {
  readonly limit: Limit;
  /** The document of a criterion; undefined where the bound stands in the workbook. */
  readonly source?: string;
}

/** The bounds that count for an entry: the workbook's own, and where it has none the criterion of the basis. */
export const boundsOf = (entry: Entry, { ratedkV, basis }: SurveyContext): Bound[] => {
  if (entry.kind === "withstand") return [];
  const own = limitsOf(entry).map((limit): Bound => ({ limit }));
  if (
    own.length > 0 ||
    entry.kind !== "insulation" ||
    entry.unit === undefined ||
    isLowVoltage(entry) ||
    ratedkV === undefined ||
    basis === undefined
  )
    return own;
  const least = insulationMinimum(ratedkV, { basis });
  if (!least.ok) return [];
  const { value, source } = least.value;
  return [
    {
      limit: { side: "least", number: value, unit: "MΩ", address: "" },
      source: source.document,
    },
  ];
};

/** An entry held against one bound; undefined where there is no number to compare. */
export const compareBy = (entry: Entry, { limit, source }: Bound): Comparison | undefined => {
  const judged = source === undefined ? judgedBy(entry, limit) : atBase(entry, limit);
  return judged?.cell.number === undefined
    ? undefined
    : { ...judged, limit, source, verdict: verdictOf(judged.cell, judged.unit, limit) };
};

/** Every comparison that an entry allows; by the workbook's own limits, and where it has none by the criterion. */
export const compare = (entry: Entry, context: SurveyContext): Comparison[] =>
  boundsOf(entry, context).flatMap((bound) => compareBy(entry, bound) ?? []);

/** Whether a title says that its readings are brought to 20 °C already. */
export const isAtBase = ({ title }: SurveyColumn): boolean => /\b20 ?°|R ?20\b|corr/i.test(title);

/** What is held against a criterion for 20 °C: the value that the workbook corrects, or the reading corrected here. */
const atBase = (entry: Entry, limit: Limit): Judged | undefined => {
  const judged = judgedBy(entry, limit);
  const { cell, unit, column } = entry;
  const warmth = temperatureOf(entry);
  const isReading = judged !== undefined && judged.cell === cell && !isAtBase(column);
  if (!isReading || unit === undefined || cell?.number === undefined || warmth === undefined)
    return judged;
  const corrected = insulationCorrect(inBaseUnit(cell.number, unit) / 1e6, warmth.celsius);
  return corrected.ok
    ? {
        cell: { ...cell, number: corrected.value, unit: "MΩ" },
        unit: "MΩ",
        temperature: warmth.cell,
      }
    : judged;
};

/** The temperature at which a reading was taken, as its line tells it, and its cell. */
export const temperatureOf = ({ beside: { temperature, air } }: Entry) => {
  const cell = temperature ?? air;
  if (cell?.number === undefined || !TEMPERATURES.includes(cell.unit)) return undefined;
  const { number, unit } = cell;
  return { cell, celsius: unit === "°F" ? ((number - 32) * 5) / 9 : number };
};

/** A number without a unit is in °C. */
const TEMPERATURES: readonly (Unit | undefined)[] = [undefined, "°C", "°F"];
