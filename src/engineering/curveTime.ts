import { type Result, refuse } from "../quantities/result";
import { computed } from "./computed";
import { type Curve, type CurveConstants, curves } from "./curves";
import { notPositive } from "./notPositive";

/** Beyond this multiple relays hold their time, each in its own way. */
const MOST = 20;

/**
 * Expected operating time of an inverse-time element.
 *
 * IEC 60255-151:2009: t = TMS · k / (M^α − 1). IEEE C37.112-1996: t = TD · (A / (M^p − 1) + B). Both
 * read in relay makers' manuals. Tolerances come from the relay's own manual.
 *
 * @param curve a name of `curves`
 * @param multiple current as a multiple of pick-up, above 1, at most 20
 * @param setting time multiplier (IEC) or time dial (IEEE), above 0
 * @returns s; `range` outside, `wrong` for an unknown curve
 * @example curveTime("IEEE very", 2, 1) // 7.028
 */
export const curveTime = (curve: Curve, multiple: number, setting: number): Result<number> => {
  if (!Object.hasOwn(curves, curve))
    return refuse("wrong", (text) =>
      text.engineering.oneOf(text.name("Curve"), Object.keys(curves)),
    );
  const { a, b, p }: CurveConstants = curves[curve];
  if (Number.isNaN(multiple))
    return refuse("wrong", (text) => text.engineering.notNumber(text.name("Multiple of pick-up")));
  if (!(multiple > 1 && multiple <= MOST))
    return refuse("range", (text) =>
      text.engineering.noMultiple(text.name("Multiple of pick-up"), MOST, multiple),
    );
  return (
    notPositive("Time setting", setting, "") ?? computed(setting * (a / (multiple ** p - 1) + b))
  );
};
