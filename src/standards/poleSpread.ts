import { notPositive } from "../engineering/notPositive";
import { answer, type Result } from "../quantities/result";
import type { Criterion, Source } from "./criterion";
import { tidy } from "./tidy";

export const poleSpreadSource: Source = {
  document: "IEC 62271-100",
  edition: "2021",
  place: "simultaneity of poles, where the maker says nothing",
  certainty: "memory",
};

/** Part of a cycle that the poles of one operation may differ by. */
export const poleSpreadCycles = { closing: 1 / 4, opening: 1 / 6 } as const;

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
  answer({ value: tidy((poleSpreadCycles[operation] * 1000) / hertz), source: poleSpreadSource });
