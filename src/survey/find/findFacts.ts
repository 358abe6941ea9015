import { readDate } from "../../intake/words/readDate";
import type { DateOrder } from "../../quantities/dates";
import { readUnit } from "../../quantities/reading/readUnit";
import type { Unit } from "../../quantities/units";
import { unitSize } from "../../quantities/units";
import { type Cell, inBaseUnit, quantityIn } from "../read/cells";
import { latin } from "../understand/localWords";
import { unitIn } from "../understand/unitIn";
import { hasWord, NUMBER_WORDS } from "../words/sheetWords";
import type { Facts, Label, Limit } from "./block";
import { classOf } from "./kindOf";

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
  [/^G$/, "GΩ"],
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
    const plain = NUMBER_WORDS[digits.toLowerCase()] ?? quantityIn(digits)?.number;
    const isNegative = /[≤≥<>=]\s*[-−]$/u.test(text.slice(0, found.index));
    const number = plain !== undefined && isNegative ? -plain : plain;
    const at = isNegative ? text.slice(0, found.index).trimEnd().length - 1 : found.index;
    return unit.ok && number !== undefined
      ? [{ number, unit: unit.value, at, end: found.index + all.length }]
      : [];
  });

/** Two bounds in one: "close 50-80 ms", or "50 ft-lb, accept 45 to 55". */
const RANGE =
  /(?<![\d/])(\d+(?:[.,]\d+)?)\s?(?:-|–|…|\.\.\.|to|bis|a|à)\s?(\d+(?:[.,]\d+)?)(?![\d/])(?:\s?([\p{L}µΩ·]+))?/giu;

/** What is bounded on both sides. */
const RANGED: readonly string[] = ["time", "torque", "pressure"];

/** Whether two bounds stand in brackets behind the value that they are for: "70 N·m (63-77)". */
const bracketed = (text: string, index: number, least: number, most: number) => {
  if (!/[([]\s*$/.test(text.slice(0, index))) return undefined;
  return quantitiesIn(text.slice(0, index)).findLast(
    ({ number, unit }) =>
      number >= least && number <= most && RANGED.includes(unitSize(unit).quantity),
  )?.unit;
};

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
      const [least, most] = [quantityIn(low)?.number, quantityIn(high)?.number];
      if (least === undefined || most === undefined || least >= most) return [];
      const unit = unitOfRange(text, before, index, written) ?? bracketed(text, index, least, most);
      if (unit === undefined) return [];
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

/** A stage of a relay by its letter, such as "I> 0.8 A" or "U<< 40 V": its setting, and no bound. */
const RELAY_STAGE = /(?<![\p{L}\d])(?:3?I[oe0]?|U[oe0]?|V[oe0]?|f)\s?[<>]{1,3}\s*$/u;

/** Words by which what lies beyond a bound is turned down, right before it: "reject over 12". */
const REJECTED =
  /(?:reject\w*|replace|redo|fail\w*|investigate|rechaz\p{L}*|refus\p{L}*|rejeit\p{L}*|verwerfen|nacharbeit\p{L}*)(?: if| when| any\p{L}*| wenn| si| se)?(?: it is| is| es| ist)? (over|above|more than|greater than|beyond|exceeding|>|below|under|less than|<|über|unter|mayor (?:de|que|a)|menor (?:de|que|a)|supérieure? à|inférieure? à|acima de|abaixo de)\s*$/iu;
const HIGH = /^(?:over|above|more|greater|beyond|exceeding|>|über|mayor|sup|acima)/iu;

/** The side on which values must lie where what lies on the other is turned down. */
const sideOfRejected = (before: string): Limit["side"] | undefined => {
  const word = REJECTED.exec(before.slice(-60))?.[1];
  return word === undefined ? undefined : HIGH.test(word) ? "most" : "least";
};

/** On which side of a quantity the values of a test must lie, by the words beside it. */
const sideOf = (text: string, { at, end, unit }: Quantity): Limit["side"] | undefined => {
  const before = text.slice(Math.max(0, at - NEAR), at);
  const after = text.slice(end, end + 14);
  if (unit === "%" && OF_SCALE.test(text.slice(end))) return "most";
  const rejected = sideOfRejected(text.slice(0, at));
  if (rejected) return rejected;
  const sign = RELAY_STAGE.test(before) ? undefined : /(\+ ?\/ ?-|[≥≤<>±]=?)\s*$/.exec(before)?.[1];
  if (sign) return /[≥>]/.test(sign) ? "least" : "most";
  const clause =
    before
      .replace(/(?<=\p{L})[<>]/gu, " ")
      .split(/[;,.()–]/)
      .at(-1) ?? "";
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
  const shares = [...text.slice(0, 500).matchAll(SHARE)].map(
    ({ 0: all, 1: share = "", index }) => ({
      share: (quantityIn(share)?.number ?? 0) / 100,
      end: index + all.length,
    }),
  );
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

const DATES =
  /\b(\d{4}-\d\d-\d\d|\d{1,2}[./]\d{1,2}[./]\d{2,4}|\d{1,2}\.?[ -](?:de )?\p{L}{3,10}\.?[ -](?:del? )?(?:\d{4}|\d\d(?=$|[\s,;)]))|\p{L}{3,10}\.? \d{1,2}(?:st|nd|rd|th)?,? \d{4})\b/u;

/** A number without a unit. */
const BARE =
  /(?<![\p{L}\d.,/–-]|[/–-]\s)(\d{1,3}(?:[ ,]\d{3})+|\d+(?:[.,]\d+)?)(?![\p{L}\d/%°]| %|[.,]\d|\s?[-–/]\s?\d)/gu;

const wordsOf = (text: string) => text.split(/\s+/).filter((word) => word !== "");

/** The side that a sign before a number tells; "I> 0.8" is a relay's stage. */
const signBefore = (before: string): Limit["side"] | undefined => {
  const sign = /(?<!\p{L})([<>≤≥])\s*$/u.exec(before)?.[1];
  return sign === undefined ? undefined : /[>≥]/.test(sign) ? "least" : "most";
};

/** On which side of a bare number the values must lie, by the words right beside it: "60 max", "min. 20". */
const sideOfBare = (before: string, after: string): Limit["side"] | undefined => {
  const told = wordsOf(before.split(/[;,()]/).at(-1) ?? "")
    .slice(-2)
    .join(" ");
  const next = wordsOf(after.split(/[;,.()]/)[0] ?? "");
  const isAlone = next.length === 0 || /^\s*[;,.()]/.test(after);
  const signed = isAlone ? signBefore(before) : undefined;
  if (signed) return signed;
  // "1 min" is a time.
  const later = /^min\.?$/i.test(next[0] ?? "") ? "" : next.slice(0, 2).join(" ");
  for (const words of [isAlone ? told : "", later]) {
    if (hasWord(words, "atLeast")) return "least";
    if (hasWord(words, "atMost")) return "most";
  }
  return undefined;
};

/** Bounds that a line states without a unit: that of the line, or of the values under it, is meant. */
const bareLimits = (text: string, address: string, values: Unit | undefined): Limit[] => {
  const unit = unitIn(text) ?? values;
  return unit === undefined
    ? []
    : [...text.matchAll(BARE)].flatMap(({ 0: all, 1: digits = "", index }): Limit[] => {
        const number = quantityIn(digits)?.number;
        const before = text.slice(Math.max(0, index - NEAR), index);
        const side =
          sideOfRejected(text.slice(0, index)) ??
          sideOfBare(before, text.slice(index + all.length));
        const about = before.split(/[;,.()]/).at(-1);
        return side && number !== undefined ? [{ side, number, unit, address, about }] : [];
      });
};

/** Whether a sign for a bound stands right before a quantity: "dew point ≤ -25 °C". */
const isSigned = (text: string, { at }: Quantity): boolean =>
  /[≤≥<>]=?\s*[-−]?$/u.test(text.slice(0, at));

/** A share of the scale is what an instrument may be off: "1 % of full scale". */
const OF_SCALE =
  /^\s*(?:of )?(?:full scale|f\.?\s?s\b|fsd\b|(?:of )?time|vom (?:messbereichs)?endwert|(?:de la )?pleine échelle|(?:de )?fondo de escala|(?:do )?fundo de escala)/iu;

/** A value with how far it may be missed: "70 N·m ±10 %". */
const BAND = /^\s*(?:±|\+\s?\/?\s?[-−])\s*(\d+(?:[.,]\d+)?)\s?(%)?/u;
const BANDED: readonly string[] = ["torque", "pressure", "resistance", "length"];

const bandOf = (text: string, { number, unit, at, end }: Quantity, address: string): Limit[] => {
  const [, digits = "", share] = BAND.exec(text.slice(end)) ?? [];
  const width = quantityIn(digits)?.number;
  if (width === undefined || !BANDED.includes(unitSize(unit).quantity)) return [];
  const off = share === undefined ? width : (number * width) / 100;
  // What is tightened stands before its value, with its bolt: "Earth bar, M10: 40 N·m ± 10 %".
  const about = text
    .slice(Math.max(0, at - 2 * NEAR), at)
    .split(/[;/()]/)
    .at(-1);
  return [
    { side: "least", number: number - off, unit, address, about },
    { side: "most", number: number + off, unit, address, about },
  ];
};

/** Words behind a bound by which it is one of several poles together: "max 2 ms between poles". */
const ofPoles = (after: string): string | undefined =>
  /^\s*(?:between|among|across|zwischen|entre|untereinander|zueinander)(?!\p{L})[^;,.()]{0,24}/iu.exec(
    after,
  )?.[0];

/**
 * Facts that one line of words tells.
 *
 * @param values the unit of the values under it, for bounds that carry none
 */
export const factsIn = (cell: Cell, values?: Unit): Facts => {
  const { address } = cell;
  // The point of an abbreviation ends no clause: "máx. 2 mm".
  const text = cell.text.replace(
    /(?<!\p{L})(m[aá]x|m[ií]n|mind|zul|adm|perm)\.(?=\s|\d)/giu,
    "$1 ",
  );
  const limits = quantitiesIn(text).flatMap((quantity): Limit[] => {
    const { quantity: measured } = unitSize(quantity.unit);
    if (measured === "time" && quantity.unit !== "ms") return [];
    if (measured === "temperature" && !isSigned(text, quantity)) return [];
    if (measured === "voltage") return operationLimit(text, quantity, address);
    const band = bandOf(text, quantity, address);
    if (band.length > 0) return band;
    const side = sideOf(text, quantity);
    const before = text.slice(Math.max(0, quantity.at - NEAR), quantity.at);
    const about = ofPoles(text.slice(quantity.end)) ?? before.split(/[;,.()]/).at(-1);
    return side ? [{ side, number: quantity.number, unit: quantity.unit, address, about }] : [];
  });
  const date = cell.day ?? dayIn(text, cell.order);
  return {
    ...voltsIn(latin(text)),
    ...defined("seconds", secondsIn(text)),
    ...(date === undefined ? {} : { day: date, dayAddress: address }),
    limits: [
      ...rangesIn(text, address),
      ...operationShares(text, address),
      ...limits,
      ...bareLimits(text, address, values),
    ],
  };
};

/** A range of operation as a share of the control voltage: "closing 85 to 110 %". */
const SHARES = /(\d{2,3})\s?(?:-|–|…|to|bis|a|à|and|y|e)\s?(\d{2,3})\s?%/giu;

/** The least voltages at which a release has to work, where a line tells them as shares of its control voltage. */
const operationShares = (text: string, address: string): Limit[] => {
  const control = quantitiesIn(text).find(
    ({ number, unit }) => unit === "V" && number >= 12 && number <= 400,
  );
  if (!control) return [];
  return [...text.matchAll(SHARES)].flatMap(({ 1: low = "", index }): Limit[] => {
    const clause =
      text
        .slice(Math.max(0, index - NEAR), index)
        .split(/[;,()]/)
        .at(-1) ?? "";
    const [closing, opening] = [hasWord(clause, "closing"), hasWord(clause, "opening")];
    if (closing === opening) return [];
    const number = (Number(low) * control.number) / 100;
    return [
      { side: "most", number, unit: "V", address, operation: closing ? "closing" : "opening" },
    ];
  });
};

/** The voltage by which a release has to work: "close by 93.5 V, trip by 77 V". */
const operationLimit = (text: string, { at, number, unit }: Quantity, address: string): Limit[] => {
  const clause =
    text
      .slice(Math.max(0, at - NEAR), at)
      .split(/[;,()]/)
      .at(-1) ?? "";
  const [closing, opening] = [hasWord(clause, "closing"), hasWord(clause, "opening")];
  const isBound =
    /\bby\b|≤|<|\bat or below\b|\bbis\b|até|hasta|jusqu/iu.test(clause) ||
    hasWord(clause, "atMost");
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
