import { convert } from "../quantities/convert";
import { readUnit } from "../quantities/reading/readUnit";
import { type Unit, unitSize } from "../quantities/units";

/** A quantity that a sort of instrument measures or applies; the powers of ten of the units that it is read in. */
interface Measures {
  readonly quantity: string;
  /** The only wave that it gives or takes; without it, any. */
  readonly wave?: Wave;
  readonly leastExponent?: number;
  readonly mostExponent?: number;
}

const q = (...quantities: readonly string[]): Measures[] =>
  quantities.map((quantity) => ({ quantity }));
/** The wave of a voltage or current, as far as it matters to what an instrument gives. */
export type Wave = "AC" | "DC";

/** What an insulation tester puts on: direct voltage, at any level. */
const DIRECT_VOLTS: Measures = { quantity: "voltage", wave: "DC" };
const HIGH_OHMS: Measures = { quantity: "resistance", leastExponent: 3 };
const COIL_VOLTS: Measures = { quantity: "voltage", mostExponent: 0 };
const LOW_OHMS: Measures = { quantity: "resistance", mostExponent: 0 };

/**
 * What sorts of instruments measure or apply, by the words of their description in trade use; common
 * practice, no source. A description that fits several measures what each of them does.
 */
const SORTS: readonly (readonly [words: RegExp, measures: readonly Measures[]])[] = [
  [
    /insulation|isolation|isolement|aislami|isolamento|meg.?ohm|عزل/,
    [HIGH_OHMS, DIRECT_VOLTS, ...q("current", "time")],
  ],
  [
    /(?:micro|mikro|milli|µ|μ|low.?resistance|niederohm).{0,12}ohm|contact resistance|ميكرو/,
    [LOW_OHMS, COIL_VOLTS, ...q("current")],
  ],
  [
    /continuity|earth bond|durchgang|schutzleiter|continuit|continuidad|continuidade/,
    [LOW_OHMS, COIL_VOLTS, ...q("current")],
  ],
  [/torque|drehmoment|dynamom|couple|torquimet|torqu[ií]metro|عزم/, q("torque")],
  [/thermo|temperatur|termom/, q("temperature", "share")],
  [/hygro|humidity|feuchte|higr[oó]metro/, q("share", "temperature")],
  [/barom|pressure|manom|druck|presi[oó]n|press[aã]o/, q("pressure", "temperature")],
  [
    /\b(?:ac|dc|hv)\b.{0,20}test set|high.?voltage|hochspannung|haute tension|alta tensi|withstand|dielectric|di[eé]lectri|very.?low.?frequency|\bvlf\b/,
    q("voltage", "current", "time"),
  ],
  [
    /timer|breaker analy|schalterpr[uü]f|chronom|cron[oó]m/,
    [COIL_VOLTS, ...q("time", "current", "resistance", "length")],
  ],
  [
    /injection|relay|transformer|einspeis|pr[uü]fsystem|inyecci|inje[cç]/,
    q("current", "voltage", "time", "resistance", "apparent power", "share", "frequency"),
  ],
  [/\blevel\b|\brule\b|tape|calip|wasserwaage|messschieber|niveau|flex[oó]metro/, q("length")],
  [/crane scale|load cell|kranwaage/, q("mass")],
];

/** Instruments that measure most of everything: of these no quantity is a surprise. */
const ALL_ROUND = /multi.?meter|multim|universal|multi.?function|power.?qualit|oscillo/;

/**
 * What an instrument measures or applies by its description; undefined where the description does not say.
 *
 * @example scopeOf("Micro-ohmmeter 200 A")?.measures("MΩ") // false
 */
export function scopeOf(description: string): Scope | undefined {
  const words = description.normalize("NFKC").toLowerCase();
  const sorts = SORTS.filter(([pattern]) => pattern.test(words)).flatMap(
    ([, measures]) => measures,
  );
  if (sorts.length === 0 || ALL_ROUND.test(words)) return undefined;
  const spans = spansIn(description);
  const reached = new Map<Unit, readonly Reach[]>();
  const reachIn = (unit: Unit): readonly Reach[] => {
    const { quantity } = unitSize(unit);
    const reach =
      reached.get(unit) ??
      (sorts.some((one) => one.quantity === quantity)
        ? spans
            .filter((span) => unitSize(span.unit).quantity === quantity)
            .map((span) => reachOf(span, unit))
        : []);
    reached.set(unit, reach);
    return reach;
  };
  return {
    measures: (unit, wave) => {
      const { quantity, exponent } = unitSize(unit);
      return sorts.some(
        (one) =>
          one.quantity === quantity &&
          (wave === undefined || one.wave === undefined || one.wave === wave) &&
          exponent >= (one.leastExponent ?? -99) &&
          exponent <= (one.mostExponent ?? 99),
      );
    },
    isLimited: (unit) => reachIn(unit).length > 0,
    beyond: (value, unit) => {
      const reach = reachIn(unit);
      return reach.length === 0 || reach.some(({ low, high }) => value >= low && value <= high)
        ? undefined
        : reach.map(({ text }) => text).join(", ");
    },
  };
}

export interface Scope {
  /** Whether readings in this unit, and of this wave where it is known, are of a sort that it takes or applies. */
  readonly measures: (unit: Unit, wave?: Wave) => boolean;
  /** Whether its description says how far it reaches in the quantity of a unit. */
  readonly isLimited: (unit: Unit) => boolean;
  /** What its description says that it reaches, where a value lies beyond; undefined where it does not. */
  readonly beyond: (value: number, unit: Unit) => string | undefined;
}

/** From where to where an instrument reaches, in a unit that is asked for, and as its description says it. */
interface Reach {
  readonly low: number;
  readonly high: number;
  readonly text: string;
}

const reachOf = ({ least, most, unit: written, text }: Span, unit: Unit): Reach => {
  const [low, high] = [convert(least, written, unit), convert(most, written, unit)];
  return low.ok && high.ok
    ? { low: low.value * 0.999, high: high.value * OVER, text }
    : { low: Number.NaN, high: Number.NaN, text };
};

/** A tester of 5 kV gives somewhat more into an open circuit (common practice). */
const OVER = 1.05;

interface Span {
  readonly least: number;
  readonly most: number;
  readonly unit: Unit;
  readonly text: string;
}

const NUMBER_AND_UNIT =
  /(?:(\d+(?:[.,]\d+)?)\s*(?:to|bis|à|a|-|–|…|\.\.\.?)\s*)?(\d+(?:[.,]\d+)?)\s*(TΩ|GΩ|MΩ|kΩ|mΩ|µΩ|Ω|kV|V|kA|A|N·m|Nm|lbf·ft|MPa|bar|kPa|kg|t)(?![\p{L}\p{N}])/gu;

/** The numbers with units of a description: what it reaches. */
const spansIn = (description: string): Span[] =>
  [...description.matchAll(NUMBER_AND_UNIT)].flatMap(([text, least, most, written]): Span[] => {
    const unit = readUnit(written ?? "");
    return unit.ok ? [{ least: plain(least), most: plain(most), unit: unit.value, text }] : [];
  });

const plain = (text: string | undefined): number => Number((text ?? "0").replace(",", "."));
