import type { Criterion } from "./criterion";
import { tolerance } from "./iec60060-1.2010";

/**
 * How far a withstand voltage may stand from its required value during the test, as a fraction:
 * 1 % for tests up to 60 s, 3 % for longer ones (IEC 60060-1).
 *
 * @param seconds duration of the test, s
 * @example withstandTolerance(60).value // 0.01
 */
export const withstandTolerance = (seconds: number): Criterion =>
  seconds > 60 ? tolerance.long : tolerance.short;
