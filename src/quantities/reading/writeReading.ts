import { convert } from "../convert";
import { UNITS, type Unit, unitSize } from "../units";
import type { Reading } from "./reading";
import { readUnit } from "./readUnit";

const SIGNS = { exact: "", above: "> ", below: "< " } as const;

const RESISTANCES = (Object.keys(UNITS) as Unit[]).filter((unit) => unit.endsWith("Ω"));

/**
 * The canonical text of a reading: bound, number with a decimal point and nothing grouped, unit.
 *
 * A resistance is written in the unit that leaves one to three digits before the point, because the
 * trade's resistances span eighteen decades; every other quantity stays in its unit. Three decimals
 * get a zero after them, so that nobody can take the point for a thousands separator. Reading the
 * text again gives the same reading.
 *
 * @example writeReading({ value: 2000000, unit: "MΩ", bound: "above", text: "OL 2000 GΩ" }) // "> 2 TΩ"
 * @example writeReading({ value: 1.125, unit: "kV", bound: "exact", text: "1,125 kV" }) // "1.1250 kV"
 */
export const writeReading = ({ value, unit, bound }: Reading): string => {
  const [number, best] = atBest(value, unit);
  const digits = String(number).replace(/^(-?[1-9]\d{0,2}\.\d{3})$/, "$10");
  return `${SIGNS[bound]}${digits} ${best}`;
};

/** The value in the largest resistance unit that it reaches one of, if it can be read back exactly. */
const atBest = (value: number, unit: Unit): readonly [number, Unit] => {
  if (unitSize(unit).quantity !== "resistance") return [value, unit];
  for (const better of RESISTANCES) {
    const there = convert(value, unit, better);
    if (!there.ok || Math.abs(there.value) < 1 || !readUnit(better, unit).ok) continue;
    const back = convert(there.value, better, unit);
    return back.ok && back.value === value ? [there.value, better] : [value, unit];
  }
  return [value, unit];
};
