import { type Curve, curves } from "../engineering/curves";
import type { Source } from "./criterion";
import * as iec from "./iec60255-151.2009";
import * as ieee from "./ieeeC37.112.1996";

/**
 * The standard that an inverse-time curve stands in; undefined for what is no such curve.
 *
 * @example curveSource("definite") // undefined
 */
export const curveSource = (curve: string): Source | undefined => {
  if (!Object.hasOwn(curves, curve)) return undefined;
  return (curve as Curve).startsWith("IEC") ? iec.curves : ieee.curves;
};
