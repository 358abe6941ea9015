/** A time at which a reading is taken: "30 s", "1 min", "R 60s", "R10". */
export const POINT_OF_TIME =
  /^(?:(?:r ?)?\d+(?:[.,]\d+)? ?(?:s|sec|secs|seconds?|min|minutes?|['"′″])\.?|r ?\d+)$/i;

/** Whether one of the lines of a title is a time at which a reading is taken. */
export const isPointOfTime = (lines: readonly string[]): boolean =>
  lines.some((line) => POINT_OF_TIME.test(line));
