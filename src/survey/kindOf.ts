import { type Unit, unitSize } from "../quantities/units";
import { kindsIn } from "./words/sheetWords";

/** Record kinds whose readings come in a unit, the usual one first (common practice, no source). */
const KINDS_BY_UNIT: Readonly<Record<string, readonly string[]>> = {
  "high resistance": ["insulation", "control", "cable", "indexCurve"],
  "low resistance": ["contact", "earthing"],
  resistance: ["earthing", "currentTransformer", "control"],
  time: ["timing", "protection", "mechanism"],
  torque: ["torque"],
  voltage: ["withstand", "cable", "voltageTransformer", "protection", "excitation", "mechanism"],
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

/**
 * The record kind of a reading by its unit and the words around it, the nearest words first.
 *
 * @returns undefined where neither says what is measured
 */
export const kindOf = (unit: Unit | undefined, around: readonly string[]): string | undefined => {
  const possible = unit && KINDS_BY_UNIT[classOf(unit)];
  if (unit && !possible) return undefined;
  for (const text of around) {
    const named = kindsIn(text).filter((kind) => possible === undefined || possible.includes(kind));
    // The usual kind is also what words say that speak of several: "IR of control wiring" is control wiring.
    const [special] = named.filter((kind) => kind !== (possible?.[0] ?? "insulation"));
    const isSpecial = unit === undefined || classOf(unit).endsWith(" resistance");
    if (named.length > 0)
      return isSpecial
        ? (special ?? named[0])
        : (possible?.find((kind) => named.includes(kind)) ?? named[0]);
  }
  return possible?.[0];
};

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
