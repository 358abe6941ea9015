import { type Unit, unitSize } from "../../quantities/units";
import { kindsIn } from "../words/sheetWords";

/** Record kinds whose readings come in a unit, the usual one first (common practice, no source). */
const KINDS_BY_UNIT: Readonly<Record<string, readonly string[]>> = {
  "high resistance": ["insulation", "control", "cable", "indexCurve"],
  "low resistance": ["contact", "earthing"],
  resistance: ["earthing", "currentTransformer", "mechanism", "control"],
  time: ["timing", "protection", "mechanism"],
  torque: ["torque"],
  voltage: [
    "withstand",
    "cable",
    "voltageTransformer",
    "protection",
    "excitation",
    "mechanism",
    "metering",
  ],
  pressure: ["gas"],
  current: ["currentTransformer", "protection", "metering", "excitation", "withstand", "mechanism"],
  length: ["installation", "dimensions"],
  share: ["currentTransformer", "voltageTransformer", "metering"],
};

/** Resistances from kilohms up are insulation, those from milliohms down are joints and bonds. */
export const classOf = (unit: Unit): string => {
  const { quantity, exponent } = unitSize(unit);
  if (quantity !== "resistance") return quantity;
  return exponent >= 3 ? "high resistance" : exponent < 0 ? "low resistance" : "resistance";
};

/** The words that tell the kind of a reading. */
export interface WordsAround {
  /** The reading's own title, or what its line says. */
  readonly title: string;
  /** Lines over the table, the nearest first, then the sheet's name. */
  readonly words: readonly string[];
  /** Titles of other columns. */
  readonly keys?: readonly string[];
}

/** How much the words say: the reading's own title, the first line that speaks of a test and the sheet's name, others. */
const [TITLE, NEAR, FAR] = [4, 2, 1];

/**
 * The record kind of a reading by its unit and the words around it, the nearest words first.
 *
 * @returns undefined where neither says what is measured
 */
export const kindOf = (unit: Unit | undefined, around: WordsAround): string | undefined => {
  const possible = unit && KINDS_BY_UNIT[classOf(unit)];
  if (unit && !possible) return undefined;
  const votes = votesOf(around, possible, isOfResistance(unit));
  const most = Math.max(0, ...votes.values());
  if (most === 0) return possible?.[0];
  const special = specialOf(unit, votes, possible?.[0] ?? "insulation", most);
  const named =
    unit && classOf(unit) === "length"
      ? votes
      : new Map([...votes].filter(([, weight]) => weight === most));
  return special ?? possible?.find((kind) => named.has(kind)) ?? [...named.keys()][0];
};

const votesOf = (
  { title, words, keys = [] }: WordsAround,
  possible: readonly string[] | undefined,
  isResistance: boolean,
): ReadonlyMap<string, number> => {
  const votes = new Map<string, number>();
  const usual = possible?.[0];
  const count = (text: string, weight: number) => {
    const named = kindsIn(text);
    const kinds = named.filter(
      (kind) =>
        (possible === undefined || possible.includes(kind)) &&
        !(possible && kind === "currentTransformer" && named.includes("excitation")) &&
        // An instrument for contacts measures bonds as well.
        !(kind === "contact" && named.includes("earthing") && !isOfContacts(text)) &&
        // "Relay timing" is about relays.
        !(kind === "timing" && named.includes("protection")),
    );
    // "Insulation resistance of control wiring" is about control wiring, whatever the title says.
    const isSpecial =
      isResistance && kinds.length > 1 && usual !== undefined && kinds.includes(usual);
    for (const kind of isSpecial ? kinds.filter((one) => one !== usual) : kinds)
      votes.set(kind, (votes.get(kind) ?? 0) + (isSpecial ? weight + NEAR : weight));
    return kinds.length > 0;
  };
  count(title, TITLE);
  let isTold = false;
  for (const [index, text] of words.entries())
    isTold = count(text, isTold && index < words.length - 1 ? FAR : NEAR) || isTold;
  for (const text of keys) count(text, FAR);
  return votes;
};

/** Instruments and units by which people call a test of contacts, and other joints too. */
const OF_LOW_RESISTANCE = /dlro|ductor|micro ?-?ohm\w*|microhm\w*|low resistance|drt/giu;

const isOfContacts = (text: string): boolean =>
  kindsIn(text.replace(OF_LOW_RESISTANCE, " ")).includes("contact");

const isOfResistance = (unit: Unit | undefined) =>
  unit === undefined || classOf(unit).endsWith(" resistance");

/** Words that speak of the usual kind and of a special one mean the special one: "IR of control wiring". */
const specialOf = (
  unit: Unit | undefined,
  votes: ReadonlyMap<string, number>,
  usual: string,
  most: number,
): string | undefined =>
  isOfResistance(unit)
    ? [...votes.keys()].find((kind) => kind !== usual && (votes.get(kind) ?? 0) >= most - FAR)
    : undefined;

/** Kinds that are lists of checks. */
const CHECKS: readonly string[] = [
  "function",
  "installation",
  "inspection",
  "handling",
  "documents",
];

/** The kind of a list of checks by the words around it, installation where they say nothing else. */
export const checkKindOf = (around: readonly string[]): string => {
  const named = around.flatMap((text) => {
    const kinds = kindsIn(text);
    return CHECKS.find((one) => kinds.includes(one)) ?? [];
  });
  // "Checks" alone says less than the name of the sheet.
  return named.find((kind) => kind !== "inspection") ?? named[0] ?? "installation";
};
