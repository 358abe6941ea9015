import { answer, type Result, refuse } from "../quantities/result";
import type { Criterion } from "./criterion";
import { VT_CLASSES, type VtClassName, vtClasses, vtSource } from "./transformerClasses";

export const VT_QUANTITIES = ["ratio", "phase"] as const;
export type VtQuantity = (typeof VT_QUANTITIES)[number];

/**
 * Greatest error of a voltage transformer of a class: ratio error ±% or phase displacement ±min.
 *
 * IEC 61869-3:2011: 0.2, 0.5 and 1 from 80 % to 120 % of rated voltage (memory), 3P and 6P from 5 %
 * to the voltage factor on the plate, here at most 190 % (read in a handbook).
 *
 * @param name accuracy class: 0.2, 0.5, 1, 3P or 6P
 * @param percent primary voltage, percent of rated
 * @returns `none` outside the class's range, `wrong` for an unknown class or quantity
 * @example vtLimit("3P", 100, "phase") // 120
 */
export const vtLimit = (
  name: VtClassName,
  percent: number,
  quantity: VtQuantity = "ratio",
): Result<Criterion> => {
  if (!Object.hasOwn(vtClasses, name))
    return refuse("wrong", `Accuracy class must be one of ${VT_CLASSES.join(", ")}.`);
  if (!VT_QUANTITIES.includes(quantity)) return refuse("wrong", "Quantity must be ratio or phase.");
  if (Number.isNaN(percent)) return refuse("wrong", "Percent of rated voltage must be a number.");
  const { from, to, certainty, ...limits } = vtClasses[name];
  return percent >= from && percent <= to
    ? answer({ value: limits[quantity], source: { ...vtSource, certainty } })
    : refuse(
        "none",
        `Class ${name} gives limits from ${from} % to ${to} % of rated voltage, not at ${percent} %.`,
      );
};
