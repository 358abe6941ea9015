/** Numbers between 0 and 1 that are the same for the same start (mulberry32, public domain). */
export function random(start: number): () => number {
  let state = start >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export const pick = <T>(next: () => number, from: readonly T[]): T =>
  from[Math.floor(next() * from.length)] as T;

/** A number between two, evenly on the logarithm. */
export const spread = (next: () => number, least: number, most: number): number =>
  least * (most / least) ** next();

export const between = (next: () => number, least: number, most: number): number =>
  least + (most - least) * next();

/** A number rounded to as many decimal places as an instrument shows. */
export const shown = (value: number, digits: number): number => Number(value.toFixed(digits));
