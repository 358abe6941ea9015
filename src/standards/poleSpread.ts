import { notPositive } from "../engineering/notPositive";
import { answer, type Result } from "../quantities/result";
import type { Criterion } from "./criterion";
import { poleSpreadCycles } from "./iec62271-100.2021";
import { tidy } from "./tidy";

/**
 * Greatest difference between the poles of one operation, ms: a quarter of a cycle on closing, a sixth
 * on opening (IEC 62271-100, memory), where the maker says nothing else.
 *
 * @param hertz rated frequency, Hz, above 0
 * @returns `range` for a frequency not above 0
 * @example poleSpread("closing", 50) // 5
 */
export const poleSpread = (operation: "closing" | "opening", hertz: number): Result<Criterion> =>
  notPositive("Rated frequency", hertz, "Hz") ??
  answer({
    value: tidy((poleSpreadCycles[operation].value * 1000) / hertz),
    source: poleSpreadCycles[operation].source,
  });
