import { interpolate, type Points } from "../engineering/interpolate";
import { answer, type Result, refuse } from "../quantities/result";
import type { Criterion } from "./criterion";
import { knownCtClasses } from "./ctClassNamed";
import { grossRatio } from "./practice";
import type { CtClass, Sourced } from "./transformerClass";
import { CT_CLASSES, type CtClassName, ctClasses } from "./transformerClasses";

export const CT_QUANTITIES = ["ratio", "phase", "composite", "wrong", "turns"] as const;
export type CtQuantity = (typeof CT_QUANTITIES)[number];

/** How near to a tabulated current, as a part of it, one may inject and count as being there. */
const NEAR = 0.1;

/**
 * Greatest error of a current transformer of a class at a current: ratio error ±%, phase displacement
 * ±min, composite error % at the accuracy limit current, `turns` the turns ratio error ±% of classes that
 * limit it; or `wrong`, the ratio error ±% beyond which
 * the class is missed for certain: where the class says nothing of that current, 10 % (practice).
 *
 * IEC 61869-2:2012 (read in a published handbook and an article), PX (quoted), PXR to TPZ memory; IEEE C57.13 and
 * C57.13.6 metering classes (quoted), relaying classes C, K, T 3 % at rated current (memory). Between
 * two tabulated currents the limit of an IEC class lies on the straight line between them (practice);
 * of an IEEE class the finer passes and the wider fails. Outside there is none.
 *
 * @param accuracy accuracy class as the plate writes it; of two, the finer limit, where both give one
 * @param percent primary current, percent of rated; has no part in the composite error
 * @returns `none` where the class gives no such limit, `wrong` for an unknown class or quantity
 * @example ctLimit("0.5", 20) // 0.75
 * @example ctLimit("0.5", 60, "phase") // 37.5
 * @example ctLimit("0.3B-0.5", 10) // 0.6
 * @example ctLimit("PX", 100) // 0.25
 */
export const ctLimit = (
  accuracy: string,
  percent: number,
  quantity: CtQuantity = "ratio",
): Result<Criterion> => {
  const names = knownCtClasses(accuracy);
  if (!names)
    return refuse("wrong", (text) =>
      text.engineering.oneOf(text.name("Accuracy class"), CT_CLASSES),
    );
  if (!CT_QUANTITIES.includes(quantity))
    return refuse("wrong", (text) => text.engineering.oneOf(text.name("Quantity"), CT_QUANTITIES));
  if (quantity !== "composite" && Number.isNaN(percent))
    return refuse("wrong", (text) =>
      text.engineering.notNumber(text.name("Percent of rated current")),
    );
  const found = names.map((name) => ofClass(name, percent, quantity));
  return (
    found.find((one) => !one.ok) ??
    found.reduce((least, one) =>
      least.ok && one.ok && one.value.value < least.value.value ? one : least,
    )
  );
};

const ofClass = (name: CtClassName, percent: number, quantity: CtQuantity): Result<Criterion> => {
  const limits: Sourced<CtClass> = ctClasses[name];
  const { source } = limits;
  if (quantity === "composite")
    return limits.composite === undefined
      ? refuse("none", (text) => text.standards.noComposite(name))
      : answer({ value: limits.composite, source });
  if (quantity === "turns")
    return limits.turns
      ? answer({ value: limits.ratio[0]?.[1] ?? Number.NaN, source })
      : refuse("none", (text) => text.standards.noTurns(name));
  if (quantity === "wrong") {
    const widest = limits.turns ? undefined : valueAt(limits, limits.ratio, percent, Math.max);
    return answer(widest === undefined ? grossRatio : { value: widest, source });
  }
  const points = limits[quantity];
  if (!points) return refuse("none", (text) => text.standards.noPhase(name));
  const value = valueAt(limits, points, percent, Math.min);
  return value === undefined
    ? refuse("none", (text) =>
        text.standards.offClass(name, points[0]?.[0], points.at(-1)?.[0], "current", percent),
      )
    : answer({ value, source });
};

/** The limit at a current; between two tabulated ones on the line between them, or the one of both that is asked for. */
const valueAt = (
  { steps }: CtClass,
  points: Points,
  percent: number,
  of: (...limits: number[]) => number,
): number | undefined => {
  if (!steps) return interpolate(points, percent);
  const there = points.find(([at]) => Math.abs(percent - at) <= NEAR * at);
  if (there) return there[1];
  const above = points.findIndex(([at]) => at > percent);
  const [low, high] = [points[above - 1], points[above]];
  return low && high && of(low[1], high[1]);
};
