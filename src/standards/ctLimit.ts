import { interpolate, type Points } from "../engineering/interpolate";
import { answer, type Result, refuse } from "../quantities/result";
import type { Criterion } from "./criterion";
import {
  CT_CLASSES,
  type CtClass,
  type CtClassName,
  ctClasses,
  ctSource,
} from "./transformerClasses";

export const CT_QUANTITIES = ["ratio", "phase", "composite"] as const;
export type CtQuantity = (typeof CT_QUANTITIES)[number];

/**
 * Greatest error of a current transformer of a class at a current: ratio error ±%, phase displacement
 * ±min, or composite error % at the accuracy limit current.
 *
 * IEC 61869-2:2012 (read in a published handbook and an article). Between two tabulated currents the
 * limit lies on the straight line between them (practice); outside there is none.
 *
 * @param name accuracy class: 0.1, 0.2, 0.5, 1, 0.2S, 0.5S, 3, 5, 5P or 10P
 * @param percent primary current, percent of rated; has no part in the composite error
 * @returns `none` where the class gives no such limit, `wrong` for an unknown class or quantity
 * @example ctLimit("0.5", 20) // 0.75
 * @example ctLimit("0.5", 60, "phase") // 37.5
 */
export const ctLimit = (
  name: CtClassName,
  percent: number,
  quantity: CtQuantity = "ratio",
): Result<Criterion> => {
  if (!Object.hasOwn(ctClasses, name))
    return refuse("wrong", `Accuracy class must be one of ${CT_CLASSES.join(", ")}.`);
  if (!CT_QUANTITIES.includes(quantity))
    return refuse("wrong", "Quantity must be ratio, phase or composite.");
  const limits: CtClass = ctClasses[name];
  if (quantity === "composite")
    return limits.composite === undefined
      ? refuse("none", `Class ${name} gives no composite error; classes 5P and 10P do.`)
      : answer({ value: limits.composite, source: ctSource });
  const points = limits[quantity];
  if (!points) return refuse("none", `Class ${name} gives no limit of phase displacement.`);
  if (Number.isNaN(percent)) return refuse("wrong", "Percent of rated current must be a number.");
  const value = interpolate(points, percent);
  return value === undefined
    ? refuse(
        "none",
        `Class ${name} gives limits ${span(points)} of rated current, not at ${percent} %.`,
      )
    : answer({ value, source: ctSource });
};

const span = (points: Points): string =>
  points.length === 1
    ? `at ${points[0]?.[0]} %`
    : `from ${points[0]?.[0]} % to ${points.at(-1)?.[0]} %`;
