/**
 * Designations that count on from the first one: its last number goes up by one, and keeps its width.
 *
 * @param first a designation with a number in it; without one, a number is put after it
 * @param count how many, at least 1
 * @example series("=H08", 3) // ["=H08", "=H09", "=H10"]
 * @example series("A1-K", 2) // ["A1-K", "A2-K"]
 */
export function series(first: string, count: number): string[] {
  const found = /^(.*?)(\d+)(\D*)$/.exec(first);
  const [, before, number, after] = found ?? [undefined, first, "1", ""];
  return Array.from(
    { length: count },
    (_, index) => `${before}${String(Number(number) + index).padStart(number.length, "0")}${after}`,
  );
}

/**
 * The next designation after one that no other bears.
 *
 * @example nextFree("=H01", ["=H01", "=H02"]) // "=H03"
 */
export function nextFree(designation: string, taken: readonly string[]): string {
  const names = new Set(taken);
  const candidates = series(designation, names.size + 2);
  return candidates.find((name) => !names.has(name)) ?? designation;
}
