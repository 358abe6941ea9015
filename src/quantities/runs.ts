/** So many numbers and runs are named; of more the first, and how many others there are. */
const MOST_NAMED = 12;

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
    to > from + 1
      ? [{ text: `${from} to ${to}`, count: to - from + 1 }]
      : [...new Set([from, to])].map((one) => ({ text: `${one}`, count: 1 })),
  );
  const isLong = named.length > MOST_NAMED + 1;
  const shown = isLong ? named.slice(0, MOST_NAMED) : named.slice(0, -1);
  const left = numbers.length - shown.reduce((sum, { count }) => sum + count, 0);
  const last = isLong ? `${left} others` : (named.at(-1)?.text ?? "");
  return [...(shown.length > 0 ? [shown.map(({ text }) => text).join(", ")] : []), last].join(
    " and ",
  );
};
