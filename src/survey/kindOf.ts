import { type Unit, unitSize } from "../quantities/units";
import { kindsIn } from "./words/sheetWords";

/** Record kinds whose readings come in a unit, the usual one first (common practice, no source). */
const KINDS_BY_UNIT: Readonly<Record<string, readonly string[]>> = {
  "high resistance": ["insulation", "control", "cable", "indexCurve"],
  "low resistance": ["contact", "earthing"],
  resistance: ["earthing", "currentTransformer", "control"],
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

/** How much the words say: the reading's own title, the line next to it and the sheet's name, lines further off. */
const [TITLE, NEAR, FAR] = [4, 2, 1];

/**
 * The record kind of a reading by its unit and the words around it, the nearest words first.
 *
 * @returns undefined where neither says what is measured
 */
export const kindOf = (unit: Unit | undefined, around: readonly string[]): string | undefined => {
  const possible = unit && KINDS_BY_UNIT[classOf(unit)];
  if (unit && !possible) return undefined;
  const votes = votesOf(around, possible);
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
  around: readonly string[],
  possible: readonly string[] | undefined,
): ReadonlyMap<string, number> => {
  const votes = new Map<string, number>();
  for (const [index, text] of around.entries()) {
    const isNear = index === 1 || index === around.length - 1;
    const weight = index === 0 ? TITLE : isNear ? NEAR : FAR;
    const kinds = kindsIn(text).filter((kind) => possible === undefined || possible.includes(kind));
    for (const kind of kinds) votes.set(kind, (votes.get(kind) ?? 0) + weight);
  }
  return votes;
};

/** Words that speak of the usual kind and of a special one mean the special one: "IR of control wiring". */
const specialOf = (
  unit: Unit | undefined,
  votes: ReadonlyMap<string, number>,
  usual: string,
  most: number,
): string | undefined =>
  unit === undefined || classOf(unit).endsWith(" resistance")
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
  for (const text of around) {
    const named = kindsIn(text);
    const kind = CHECKS.find((one) => named.includes(one));
    if (kind) return kind;
  }
  return "installation";
};
