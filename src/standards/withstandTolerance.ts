import type { Criterion, Source } from "./criterion";

const source: Source = {
  document: "IEC 60060-1",
  edition: "2010",
  place: "tolerance of the test voltage",
  certainty: "memory",
};

/**
 * How far a withstand voltage may stand from its required value during the test, as a fraction:
 * 1 % for tests up to 60 s, 3 % for longer ones (IEC 60060-1, memory).
 *
 * @param seconds duration of the test, s
 * @example withstandTolerance(60).value // 0.01
 */
export const withstandTolerance = (seconds: number): Criterion => ({
  value: seconds > 60 ? 0.03 : 0.01,
  source,
});
