/** Items by what each is said to be of, in their order. */
export function groupedBy<T, K>(items: readonly T[], keyOf: (item: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}

/** The same without the names: the groups, in the order of the first of each. */
export const groupBy = <T>(items: readonly T[], keyOf: (item: T) => string): T[][] => [
  ...groupedBy(items, keyOf).values(),
];
