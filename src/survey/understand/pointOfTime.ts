/** A time at which a reading is taken: "30 s", "1 min", "R 60s", "R10". */
export const POINT_OF_TIME =
  /^(?:(?:r ?)?\d+(?:[.,]\d+)? ?(?:s|sec|secs|seconds?|min|minutes?|['"′″])\.?|r ?\d+)$/i;

/** A point of a curve: the voltage, current or share at which a value was taken, "40 V", "1.5 kV", "50 %". */
export const POINT_OF_CURVE = /^\d+(?:[.,]\d+)? ?(?:V|kV|A|mA|%|(?:x|×) ?(?:In|Un|I|U))$/iu;

/** Whether one of the lines of a title is a time at which a reading is taken. */
export const isPointOfTime = (lines: readonly string[]): boolean =>
  lines.some((line) => POINT_OF_TIME.test(line));
