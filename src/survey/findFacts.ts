import { readDate } from "../intake/words/readDate";
import type { DateOrder } from "../quantities/dates";
import { readUnit } from "../quantities/readUnit";
import type { Unit } from "../quantities/units";
import { unitSize } from "../quantities/units";
import type { Facts, Label, Limit } from "./block";
import { type Cell, inBaseUnit, quantityIn } from "./cells";
import { classOf } from "./kindOf";
import { latin } from "./localWords";
import { unitIn } from "./unitIn";
import { hasWord, NUMBER_WORDS } from "./words/sheetWords";

interface Quantity {
  readonly number: number;
  readonly unit: Unit;
  readonly at: number;
  readonly end: number;
}

const QUANTITY =
  /(?<![\p{L}\d.,])(\d{1,3}(?:[ ,.]\d{3})+(?![\d])|\d+(?:[.,]\d+)?|one|two|three|four|five|ten|eine|une?|uno?|um)\s?-?((?:micro|milli|mega|giga)[ -]ohms?|lbf?[ -·.]ft|ft[ -·.]lbf?|[\p{L}µ°%Ω·]+(?:[·.]m)?)(?![\p{L}\d])/giu;
const WAVES = /^(k?v)(?:dc|ac|cc|ca)$/i;
const WORDS: readonly (readonly [RegExp, string])[] = [
  [WAVES, "$1"],
  [/^gigs?$/i, "GΩ"],
  [/^megs?$/i, "MΩ"],
  [/^minut\p{L}*$/iu, "min"],
  [/^(?:segundos?|sekunden?|secondes?|sek|seg)$/i, "s"],
];

const unitOfWord = (word: string) =>
  readUnit(WORDS.reduce((text, [form, unit]) => text.replace(form, unit), word.replace(/ /g, "")));

/** The quantities that a line of words names. */
export const quantitiesIn = (text: string): Quantity[] =>
  [...latin(text).matchAll(QUANTITY)].flatMap((found) => {
    const [all, digits = "", written = ""] = found;
    const unit = unitOfWord(written);
    const number = NUMBER_WORDS[digits.toLowerCase()] ?? quantityIn(digits)?.number;
    return unit.ok && number !== undefined
      ? [{ number, unit: unit.value, at: found.index, end: found.index + all.length }]
      : [];
  });

/** Two bounds in one: "close 50-80 ms", or "50 ft-lb, accept 45 to 55". */
const RANGE =
  /(?<![\d/])(\d+(?:[.,]\d+)?)\s?(?:-|–|…|\.\.\.|to|bis|a|à)\s?(\d+(?:[.,]\d+)?)(?![\d/])(?:\s?([\p{L}µΩ·]+))?/giu;

/** What is bounded on both sides. */
const RANGED: readonly string[] = ["time", "torque", "pressure"];

/** The unit of two bounds: after them, else that of the value before them, else that of the whole line; a bare pair of numbers says by its words that it bounds. */
const unitOfRange = (text: string, clause: string, index: number, written: string) => {
  const unit = unitOfWord(written);
  if (unit.ok) return unit.value;
  const isBound = (["limit", "closing", "opening"] as const).some((word) => hasWord(clause, word));
  if (!isBound) return undefined;
  const before = quantitiesIn(text.slice(0, index)).findLast(
    ({ unit: one }) => one !== "s" && one !== "min" && RANGED.includes(unitSize(one).quantity),
  );
  return before?.unit ?? unitIn(text);
};

const rangesIn = (text: string, address: string): Limit[] =>
  [...text.matchAll(RANGE)].flatMap(
    ({ 1: low = "", 2: high = "", 3: written = "", index }): Limit[] => {
      const before =
        text
          .slice(Math.max(0, index - NEAR), index)
          .split(/[;,.()]/)
          .at(-1) ?? "";
      const unit = unitOfRange(text, before, index, written);
      const [least, most] = [quantityIn(low)?.number, quantityIn(high)?.number];
      if (unit === undefined || least === undefined || most === undefined || least >= most)
        return [];
      if (!RANGED.includes(unitSize(unit).quantity)) return [];
      const [closing, opening] = [hasWord(before, "closing"), hasWord(before, "opening")];
      const operation =
        closing === opening
          ? {}
          : { operation: closing ? ("closing" as const) : ("opening" as const) };
      return [
        { side: "least", number: least, unit, address, ...operation },
        { side: "most", number: most, unit, address, ...operation },
      ];
    },
  );

/** Characters around a quantity in which a word for a bound belongs to it. */
const NEAR = 22;

/** On which side of a quantity the values of a test must lie, by the words beside it. */
const sideOf = (text: string, { at, end, unit }: Quantity): Limit["side"] | undefined => {
  const before = text.slice(Math.max(0, at - NEAR), at);
  const after = text.slice(end, end + 14);
  const sign = /(\+ ?\/ ?-|[≥≤<>±]=?)\s*$/.exec(before)?.[1];
  if (sign) return /[≥>]/.test(sign) ? "least" : "most";
  const clause = before.split(/[;,.()–]/).at(-1) ?? "";
  const tail = after.split(/[;,.()–]/)[0] ?? "";
  if (hasWord(clause, "atLeast") || hasWord(tail, "atLeast")) return "least";
  if (hasWord(clause, "atMost") || hasWord(tail, "atMost")) return "most";
  if (!hasWord(clause, "limit")) return undefined;
  return classOf(unit) === "high resistance" ? "least" : "most";
};

const SHARE = /(\d+(?:[.,]\d+)?)\s?%\s?(?:of|von|de|du|do|da)\s/giu;

/** Volts of a test by its words: DC for insulation, AC for a withstand test. */
const voltsIn = (text: string): { readonly testV?: number; readonly kV?: number } => {
  const volts = quantitiesIn(text).filter(({ unit }) => unitSize(unit).quantity === "voltage");
  const shares = [...text.matchAll(SHARE)].map(({ 0: all, 1: share = "", index }) => ({
    share: (quantityIn(share)?.number ?? 0) / 100,
    end: index + all.length,
  }));
  const found: { testV?: number; kV?: number } = {};
  for (const { number, unit, at, end } of volts) {
    const share = shares.find((one) => Math.abs(one.end - at) <= 2)?.share ?? 1;
    const base = inBaseUnit(number, unit) * share;
    const around = text.slice(Math.max(0, at - 8), end + 8);
    const isDc = /dc|c\.?\s?c\.?|gleich/iu.test(around.replace(/accept\w*/giu, ""));
    if (isDc) found.testV ??= base;
    else if (base >= 5000 && !/^\s*(?:gear|metal|switch|class|rated|kl)/iu.test(text.slice(end)))
      found.kV ??= base / 1000;
  }
  return found;
};

const secondsIn = (text: string): number | undefined => {
  const time = quantitiesIn(text).find(
    ({ unit }) => unitSize(unit).quantity === "time" && unit !== "ms",
  );
  return time && inBaseUnit(time.number, time.unit);
};

const DATES = /\b(\d{4}-\d\d-\d\d|\d{1,2}[./]\d{1,2}[./]\d{2,4}|\d{1,2}\.? \p{L}{3,9}\.? \d{4})\b/u;

/** Facts that one line of words tells. */
export const factsIn = (cell: Cell): Facts => {
  const { address } = cell;
  // The point of an abbreviation ends no clause: "máx. 2 mm".
  const text = cell.text.replace(
    /(?<!\p{L})(m[aá]x|m[ií]n|mind|zul|adm|perm)\.(?=\s|\d)/giu,
    "$1 ",
  );
  const limits = quantitiesIn(text).flatMap((quantity): Limit[] => {
    const { quantity: measured } = unitSize(quantity.unit);
    if (measured === "time" && quantity.unit !== "ms") return [];
    if (measured === "temperature") return [];
    if (measured === "voltage") return operationLimit(text, quantity, address);
    const side = sideOf(text, quantity);
    const about = text
      .slice(Math.max(0, quantity.at - NEAR), quantity.at)
      .split(/[;,.()]/)
      .at(-1);
    return side ? [{ side, number: quantity.number, unit: quantity.unit, address, about }] : [];
  });
  const date = cell.day ?? dayIn(text, cell.order);
  return {
    ...voltsIn(latin(text)),
    ...defined("seconds", secondsIn(text)),
    ...(date === undefined ? {} : { day: date, dayAddress: address }),
    limits: [...rangesIn(text, address), ...limits],
  };
};

/** The voltage by which a release has to work: "close by 93.5 V, trip by 77 V". */
const operationLimit = (text: string, { at, number, unit }: Quantity, address: string): Limit[] => {
  const clause =
    text
      .slice(Math.max(0, at - NEAR), at)
      .split(/[;,()]/)
      .at(-1) ?? "";
  const [closing, opening] = [hasWord(clause, "closing"), hasWord(clause, "opening")];
  const isBound = /\bby\b|≤|<|\bat or below\b|\bbis\b/iu.test(clause) || hasWord(clause, "atMost");
  return closing !== opening && isBound
    ? [{ side: "most", number, unit, address, operation: closing ? "closing" : "opening" }]
    : [];
};

const dayIn = (text: string, order: DateOrder): number | undefined => {
  const written = DATES.exec(text)?.[1];
  const read = written === undefined ? undefined : readDate(written, order);
  return read?.ok ? read.value : undefined;
};

const defined = <K extends string, V>(key: K, value: V | undefined) =>
  value === undefined ? {} : ({ [key]: value } as { [key in K]: V });

export const NO_FACTS: Facts = { limits: [] };

const withoutGaps = (facts: Facts): Partial<Facts> =>
  Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined));

/** Facts of several lines together; what stands nearer counts first. */
export const joinFacts = (nearer: Facts, further: Facts): Facts => ({
  ...further,
  ...withoutGaps(nearer),
  limits: [...nearer.limits, ...further.limits],
});

/** Facts that the labels of a form tell. */
export const factsOfLabels = (labels: readonly Label[]): Facts =>
  labels.reduce<Facts>(
    (facts, label) => (label.value ? joinFacts(factOf(label, label.value), facts) : facts),
    NO_FACTS,
  );

const factOf = ({ concept, text }: Label, value: Cell): Facts => {
  const day = value.day ?? (typeof value.value === "number" ? value.value : undefined);
  if (concept === "date") return { ...defined("day", day), limits: [] };
  if (concept === "by" || concept === "tester") return { by: value.text, limits: [] };
  if (concept === "instrument") return { instrument: value.text, limits: [] };
  if (!/\d/.test(value.text)) return NO_FACTS;
  const told = factsIn({ ...value, text: `${text} ${value.text}` });
  // What a form says of voltages besides its test voltage is the rating.
  return concept === "voltage" ? told : { limits: told.limits };
};
