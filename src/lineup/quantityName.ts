import { convert } from "../quantities/convert";
import { readUnit } from "../quantities/reading/readUnit";
import type { Unit } from "../quantities/units";

/** A quantity's name without its unit, and the unit. */
interface QuantityName {
  readonly base: string;
  readonly unit: Unit | undefined;
}

const parted = (name: string): QuantityName => {
  const at = name.lastIndexOf(" ");
  const unit = at < 0 ? undefined : readUnit(name.slice(at + 1));
  return unit?.ok
    ? { base: name.slice(0, at).toLowerCase(), unit: unit.value }
    : { base: name.toLowerCase(), unit: undefined };
};

/**
 * What a value of one quantity comes to in another that differs from it in the unit alone; undefined for
 * quantities that differ in more.
 *
 * @example asQuantity(200, "ground bus resistance µΩ", "ground bus resistance mΩ") // 0.2
 */
export const asQuantity = (value: number, from: string, to: string): number | undefined => {
  if (from === to) return value;
  const [given, wanted] = [parted(from), parted(to)];
  if (given.base !== wanted.base) return undefined;
  if (given.unit === wanted.unit) return value;
  if (given.unit === undefined || wanted.unit === undefined) return undefined;
  const found = convert(value, given.unit, wanted.unit);
  return found.ok ? found.value : undefined;
};
