import { inOrder } from "./similar";

/** Which of some numbers are there more than once. */
export interface Repeated {
  readonly isNone: boolean;
  readonly has: (number: number) => boolean;
}

/** A number, and its 64 bits as two numbers. */
const DOUBLE = new Float64Array(1);
const HALVES = new Uint32Array(DOUBLE.buffer);

/**
 * The numbers that are there more than once. As a rule most are there once: those alone are put in order and
 * remembered that share a place in a list with another, which tells a number apart at once.
 */
export function repeatedIn(numbers: readonly number[]): Repeated {
  const places = 2 ** Math.ceil(Math.log2(8 * numbers.length + 1));
  const placeOf = (number: number): number => {
    DOUBLE[0] = number;
    const mixed = Math.imul((HALVES[0] ?? 0) ^ ((HALVES[1] ?? 0) >>> 3), 0x9e3779b1);
    return (mixed ^ (mixed >>> 15)) & (places - 1);
  };
  const isTaken = new Uint8Array(places);
  const isShared = new Uint8Array(places);
  for (const number of numbers) {
    const place = placeOf(number);
    if (isTaken[place]) isShared[place] = 1;
    isTaken[place] = 1;
  }
  const sorted = inOrder(numbers.filter((number) => isShared[placeOf(number)]));
  const repeated = new Set(sorted.filter((number, at) => number === sorted[at - 1]));
  return {
    isNone: repeated.size === 0,
    has: (number) => isShared[placeOf(number)] === 1 && repeated.has(number),
  };
}
