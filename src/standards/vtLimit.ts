import { answer, type Result, refuse } from "../quantities/result";
import type { Criterion } from "./criterion";
import { vtErrors } from "./ieeeC57.13.2016";
import { plateClass } from "./plateClass";
import { grossRatio } from "./practice";
import type { Sourced, VtClass } from "./transformerClass";
import { VT_CLASSES, type VtClassName, vtClasses } from "./transformerClasses";

export const VT_QUANTITIES = ["ratio", "phase", "wrong"] as const;
export type VtQuantity = (typeof VT_QUANTITIES)[number];

/** The classes of a plate, each with limits known here; undefined where one of them is not known. */
export const knownVtClasses = (accuracy: string): readonly VtClassName[] | undefined => {
  const names = plateClass(accuracy).names.map((name) => VT_CLASSES.find((one) => one === name));
  return names.length > 0 && names.every((name) => name !== undefined) ? names : undefined;
};

/**
 * Greatest error of a voltage transformer of a class: ratio error ±% or phase displacement ±min; or `wrong`, the
 * ratio error ±% beyond which the class is missed for certain: where it says nothing of that voltage, 10 %
 * (practice).
 *
 * IEC 61869-3:2011: 0.1 to 3 from 80 % to 120 % of rated voltage (quoted), 3P and 6P from 5 % to the voltage factor
 * on the plate, here at most 190 %, and twice that at 2 % (read in a handbook). IEEE C57.13: 0.15 to 1.2 from 90 %
 * to 110 % (quoted); of two of these, each for its own burdens, the wider one is missed for certain.
 *
 * @param accuracy accuracy class as the plate writes it; of two, the finer limit, where both give one
 * @param percent primary voltage, percent of rated
 * @returns `none` outside the class's range, `wrong` for an unknown class or quantity
 * @example vtLimit("3P", 100, "phase") // 120
 * @example vtLimit("0.3WXYZ", 100) // 0.3
 * @example vtLimit("0.5/3P", 100) // 0.5
 */
export const vtLimit = (
  accuracy: string,
  percent: number,
  quantity: VtQuantity = "ratio",
): Result<Criterion> => {
  const names = knownVtClasses(accuracy);
  if (!names)
    return refuse("wrong", (text) =>
      text.engineering.oneOf(text.name("Accuracy class"), VT_CLASSES),
    );
  if (!VT_QUANTITIES.includes(quantity))
    return refuse("wrong", (text) => text.engineering.oneOf(text.name("Quantity"), VT_QUANTITIES));
  if (Number.isNaN(percent))
    return refuse("wrong", (text) =>
      text.engineering.notNumber(text.name("Percent of rated voltage")),
    );
  const found = names.map((name) => ofClass(name, percent, quantity));
  const counts = quantity === "wrong" && names.every(isOfBurden) ? Math.max : Math.min;
  return (
    found.find((one) => !one.ok) ??
    found.reduce((first, one) =>
      first.ok && one.ok && counts(one.value.value, first.value.value) !== first.value.value
        ? one
        : first,
    )
  );
};

/** Whether a plate names the class for some burdens alone, and a wider one for greater: `0.3WXY, 1.2Z` (IEEE C57.13). */
const isOfBurden = (name: VtClassName): boolean => vtClasses[name].source.document === C57_13;
const C57_13 = vtErrors.source.document;

/** A set holds its voltage to about this part of it: the ends of a range count as reached. */
const NEAR = 0.005;

const ofClass = (name: VtClassName, percent: number, quantity: VtQuantity): Result<Criterion> => {
  const { from, to, source, twiceFrom, ...limits }: Sourced<VtClass> = vtClasses[name];
  const within = percent >= from * (1 - NEAR) && percent <= to * (1 + NEAR);
  const twice = !within && twiceFrom !== undefined && percent >= twiceFrom && percent < from;
  if (quantity === "wrong")
    return answer(within || twice ? { value: limits.ratio * (twice ? 2 : 1), source } : grossRatio);
  const limit = limits[quantity];
  if (limit === undefined) return refuse("none", (text) => text.standards.noPhase(name));
  // Between 2 % and 5 % the finer limit passes; at 2 % itself twice of it holds.
  const isLowEnd =
    twiceFrom !== undefined && Math.abs(percent - twiceFrom) <= NEAR * 20 * twiceFrom;
  return within || twice
    ? answer({ value: isLowEnd ? 2 * limit : limit, source })
    : refuse("none", (text) => text.standards.offClass(name, from, to, "voltage", percent));
};
