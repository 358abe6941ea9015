/** The times after which an insulation resistance is usually read, in minutes and in seconds (common practice). */
const MINUTES: ReadonlySet<number> = new Set([0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
const SECONDS: ReadonlySet<number> = new Set([
  15, 30, 45, 60, 90, 120, 180, 240, 300, 360, 420, 480, 540, 600,
]);
const LEAST = 3;

const CLOCK = /^(?:0?0:)?(\d{1,2}):([0-5]\d)$/;
const MEASURE = /^(\d{1,3}(?:[.,]\d{1,2})?)\s*(s|secs?|m|mins?|['"′″])$/i;
const NUMBER = /^\d{1,3}(?:[.,]\d{1,2})?$/;

const numberOf = (text: string) => Number(text.replace(",", "."));

/** The seconds that a title alone is, where it tells its unit: `0:30`, `10'`, `1 m`. */
const unitedTime = (text: string): number | undefined => {
  const clock = clockSeconds(text);
  if (clock !== undefined) return clock;
  const [whole, number = "", unit = ""] = MEASURE.exec(text) ?? [];
  if (whole === undefined) return undefined;
  return numberOf(number) * (/^(?:m|['′]$)/i.test(unit) ? 60 : 1);
};

/** The seconds that minutes and seconds are, as a stopwatch shows them: `01:30`, `0:10:00`. */
export const clockSeconds = (text: string): number | undefined => {
  const [whole, minutes = "", seconds = ""] = CLOCK.exec(text.trim()) ?? [];
  return whole === undefined ? undefined : Number(minutes) * 60 + Number(seconds);
};

/** Whether texts are the times of a test in rising order, and no times of day. */
export const areElapsed = (texts: readonly string[]): boolean => {
  const read = texts.map(clockSeconds);
  return (
    texts.length >= LEAST &&
    read.every((one) => one !== undefined && SECONDS.has(one)) &&
    new Set(read).size >= LEAST
  );
};

/** Numbers without a unit, in seconds, where all of them are usual times in minutes or all in seconds. */
const bareTimes = (numbers: readonly number[]): readonly number[] => {
  const has = (...some: readonly number[]) => some.some((one) => numbers.includes(one));
  if (numbers.every((one) => MINUTES.has(one)) && has(1) && has(5, 10))
    return numbers.map((one) => one * 60);
  return numbers.every((one) => SECONDS.has(one)) && has(60) && has(30, 300, 600) ? numbers : [];
};

/**
 * The times in seconds that titles of a line are, by their place in it, where three or more stand side by
 * side in ascending order and no other number stands among them.
 *
 * @example timesAcross(["Bus", "0:30", "1:00", "10:00", "PI"]) // 1: 30, 2: 60, 3: 600
 * @example timesAcross(["Minutes", "1", "5", "10"]) // 1: 60, 2: 300, 3: 600
 */
export const timesAcross = (cells: readonly string[]): ReadonlyMap<number, number> => {
  const texts = cells.flatMap((cell, at) =>
    /^\d/.test(cell.trim()) ? [{ at, text: cell.trim() }] : [],
  );
  if (texts.length < LEAST || texts[0]?.at === 0) return new Map();
  const bare = texts.every(({ text }) => NUMBER.test(text))
    ? bareTimes(texts.map(({ text }) => numberOf(text)))
    : texts.flatMap(({ text }) => unitedTime(text) ?? []);
  const isRising = bare.every((one, at) => at === 0 || one > (bare[at - 1] ?? 0));
  return bare.length === texts.length && isRising
    ? new Map(texts.map(({ at }, nth) => [at, bare[nth] ?? 0]))
    : new Map();
};
