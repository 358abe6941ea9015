import { decimals, inOrder } from "./similar";

/** How finely readings are written: digits after the point, and digits that count. */
export interface Grain {
  readonly decimals: number;
  readonly digits: number;
}

/** Neighbours on either side of a value by which the density of readings is told. */
const NEAR = 5;
/** Pairs of different readings below which nothing is known of how they lie. */
const FEW = 3;
/** Steps from which on a reading may be rounded to one of them. */
const FINE = 100;
/** The share of readings that get by with the digits of their grain. */
const MOST = 0.9;

/** The grain of readings as nine in ten of them are written. */
export const grainOf = (values: readonly number[]): Grain => ({
  decimals: quantile(values.map(decimals)),
  digits: quantile(values.map(digits)),
});

/** Digits of a number as it is written, without leading and trailing zeros. */
export function digits(value: number): number {
  const size = Math.abs(value);
  const places = decimals(value);
  let whole = Math.round(size * 10 ** places);
  // Beyond what a number holds exactly, its text tells.
  if (places > EXACT_PLACES || (size > 0 && size < SMALL) || whole >= EXACT)
    return size.toExponential().split("e")[0]?.replace(".", "").replace(/0+$/, "").length ?? 0;
  if (whole === 0) return 0;
  while (whole % 10 === 0) whole /= 10;
  let count = 1;
  for (let least = 10; least <= whole; least *= 10) count += 1;
  return count;
}

const EXACT_PLACES = 6;
const EXACT = 1e15;
const SMALL = 1e-6;

/** The least step between two readings of about this size. */
export const stepAt = (value: number, grain: Grain): number => {
  const last = 10 ** -grain.decimals;
  if (value === 0) return last;
  return Math.max(last, 10 ** (Math.floor(Math.log10(Math.abs(value))) - grain.digits + 1));
};

/** A reading in the grain of its like: worked out to more digits, it is the same to the eye. One of another size stays as it is. */
export const inGrain = (value: number, grain: Grain): number => {
  const step = stepAt(value, grain);
  if (step > Math.abs(value) / FINE) return value;
  const steps = Math.round(value / step);
  // A whole number over a power of ten rounds once and right; its text is asked where that is not exact.
  if (Math.abs(steps) > MOST_STEPS) return Number((steps * step).toPrecision(12));
  return step < 1 ? steps / Math.round(1 / step) : steps * Math.round(step);
};

const MOST_STEPS = 1e11;

/** What is counted of the readings of one block or of several: pairs of readings, by how near they lie. */
export interface Tally {
  readonly readings: number;
  readonly pairs: number;
  readonly equal: number;
  /** Pairs of different readings, and those of them that lie no more than a few steps apart. */
  readonly different: number;
  readonly near: number;
}

/** Of the readings of one block, which alone are pairs. */
export const tallyOf = (values: readonly number[], grain: Grain): Tally => {
  const sorted = inOrder(values);
  const single = sorted.filter((value, at) => value !== sorted[at - 1]);
  return {
    readings: sorted.length,
    pairs: pairsOf(sorted.length),
    equal: equalPairs(sorted),
    different: pairsOf(single.length),
    near: nearPairs(single, grain),
  };
};

const NOTHING: Tally = { readings: 0, pairs: 0, equal: 0, different: 0, near: 0 };

/** What several blocks come to, or, taken away, others than some of them. */
export const together = (tallies: readonly Tally[], without: readonly Tally[] = []): Tally => {
  const sum = { ...NOTHING };
  const add = (tally: Tally, times: number) => {
    for (const key of Object.keys(NOTHING) as (keyof Tally)[]) sum[key] += times * tally[key];
  };
  for (const tally of tallies) add(tally, 1);
  for (const tally of without) add(tally, -1);
  return sum;
};

/**
 * How likely two readings are the same by chance: the share of equal pairs among them, or what the pairs
 * that are a few steps apart allow, whichever is greater; at most 1, which it is where there are too few to
 * tell.
 */
export function chanceIn({ readings, pairs, equal, different, near }: Tally): number {
  if (different < FEW) return 1;
  // A copied table is full of equal pairs by its copies: these alone must not excuse them.
  const share = Math.max(0, equal - readings / 2) / pairs;
  const density = (near + 1) / (2 * NEAR * different);
  return Math.min(1, Math.max(density, share));
}

const pairsOf = (count: number) => (count * (count - 1)) / 2;

function equalPairs(sorted: Float64Array): number {
  let [equal, run] = [0, 0];
  for (let at = 1; at < sorted.length; at++) {
    run = sorted[at] === sorted[at - 1] ? run + 1 : 0;
    equal += run;
  }
  return equal;
}

/** Pairs of different values that lie no more than a few steps apart. */
function nearPairs(sorted: Float64Array, grain: Grain): number {
  let [near, from] = [0, 0];
  for (let at = 0; at < sorted.length; at++) {
    const value = sorted[at] ?? 0;
    const reach = (NEAR + 0.5) * stepAt(value, grain);
    while (value - (sorted[from] ?? value) > reach) from++;
    near += at - from;
  }
  return near;
}

/** The least whole number from 0 on that most of some do not exceed. */
function quantile(numbers: readonly number[]): number {
  const counts: number[] = [];
  for (const number of numbers) counts[number] = (counts[number] ?? 0) + 1;
  let above = Math.floor(MOST * (numbers.length - 1));
  for (const [number, count = 0] of counts.entries()) {
    if (above < count) return number;
    above -= count;
  }
  return 0;
}

/** In so many tables chance makes one such likeness, of which it would make so many in this one. */
export const seldom = (expected: number): string =>
  (1 / expected).toPrecision(1).replace(/e\+/, "e");
