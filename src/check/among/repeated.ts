/** Which of some numbers are there more than once. */
export interface Repeated {
  readonly isNone: boolean;
  readonly has: (number: number) => boolean;
}

/** A number, and its 64 bits as two numbers. */
const DOUBLE = new Float64Array(1);
const HALVES = new Uint32Array(DOUBLE.buffer);
/** How many numbers share a place. */
const [ONE, SEVERAL] = [1, 2];

/**
 * The numbers that are there more than once. As a rule most are there once: those alone are put in order and
 * remembered that share a place in a list with another, which tells a number apart at once.
 */
export function repeatedIn(numbers: Float64Array): Repeated {
  const places = 2 ** Math.ceil(Math.log2(4 * numbers.length + 1));
  const placeOf = (number: number): number => {
    DOUBLE[0] = number;
    const mixed = Math.imul((HALVES[0] ?? 0) ^ ((HALVES[1] ?? 0) >>> 3), 0x9e3779b1);
    return (mixed ^ (mixed >>> 15)) & (places - 1);
  };
  const taken = new Uint8Array(places);
  for (let at = 0; at < numbers.length; at++) {
    const place = placeOf(numbers[at] ?? 0);
    taken[place] = (taken[place] ?? 0) === 0 ? ONE : SEVERAL;
  }
  const isShared = (number: number) => taken[placeOf(number)] === SEVERAL;
  const sorted = numbers.filter(isShared).sort();
  const repeated = new Set(sorted.filter((number, at) => number === sorted[at - 1]));
  return {
    isNone: repeated.size === 0,
    has: (number) => isShared(number) && repeated.has(number),
  };
}
