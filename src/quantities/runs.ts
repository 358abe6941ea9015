/** So many numbers and runs are named; of more the first and how many follow. */
const MOST_NAMED = 8;

/**
 * Whole numbers in words, those that follow each other as a run.
 *
 * @param numbers in order, each once
 * @example runs([3, 5, 6, 7]) // "3 and 5 to 7"
 */
export const runs = (numbers: readonly number[]): string => {
  const found: [number, number][] = [];
  for (const number of numbers) {
    const last = found.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else found.push([number, number]);
  }
  const named = found.flatMap(([from, to]) =>
    to > from + 1 ? [`${from} to ${to}`] : from === to ? [`${from}`] : [`${from}`, `${to}`],
  );
  const shown = named.length > MOST_NAMED ? named.slice(0, MOST_NAMED) : named.slice(0, -1);
  const last = named.length > MOST_NAMED ? "others" : (named.at(-1) ?? "");
  return shown.length === 0 ? last : `${shown.join(", ")} and ${last}`;
};
