/**
 * A list in as few parts as hold at most so many each, and as even as they can be; one empty part of none.
 *
 * @param most of one part, at least 1
 * @example evenParts([1, 2, 3, 4, 5], 4) // [[1, 2, 3], [4, 5]]
 * @example evenParts([], 4) // [[]]
 */
export function evenParts<T>(items: readonly T[], most: number): T[][] {
  const count = Math.max(1, Math.ceil(items.length / most));
  const from = (part: number) => Math.ceil((part * items.length) / count);
  return Array.from({ length: count }, (_, part) => items.slice(from(part), from(part + 1)));
}
