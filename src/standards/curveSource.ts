import { type Curve, curves } from "../engineering/curves";
import type { Source } from "./criterion";

const IEC: Source = {
  document: "IEC 60255-151",
  edition: "2009",
  certainty: "read",
  note: "in relay makers' manuals, edition from memory",
};

const IEEE: Source = {
  document: "IEEE C37.112",
  edition: "1996",
  certainty: "read",
  note: "in relay makers' manuals, edition from memory",
};

/**
 * The standard that an inverse-time curve stands in; undefined for what is no such curve.
 *
 * @example curveSource("definite") // undefined
 */
export const curveSource = (curve: string): Source | undefined => {
  if (!Object.hasOwn(curves, curve)) return undefined;
  return (curve as Curve).startsWith("IEC") ? IEC : IEEE;
};
