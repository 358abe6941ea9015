import type { Told } from "../messages/told";

/** So many numbers and runs are named; of more the first, and how many others there are. */
const MOST_NAMED = 12;

/**
 * Whole numbers in words, those that follow each other as a run.
 *
 * @param numbers in order, each once
 * @param told the language of the words
 * @example runs([3, 5, 6, 7], toldIn("en")) // "3 and 5 to 7"
 */
export const runs = (numbers: readonly number[], { intake: { lines } }: Told): string => {
  const found: [number, number][] = [];
  for (const number of numbers) {
    const last = found.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else found.push([number, number]);
  }
  const named = found.flatMap(([from, to]) =>
    to > from + 1
      ? [{ text: lines.span(from, to), count: to - from + 1 }]
      : [...new Set([from, to])].map((one) => ({ text: `${one}`, count: 1 })),
  );
  const isLong = named.length > MOST_NAMED + 1;
  const shown = isLong ? named.slice(0, MOST_NAMED) : named.slice(0, -1);
  const left = numbers.length - shown.reduce((sum, { count }) => sum + count, 0);
  const last = isLong ? lines.others(left) : (named.at(-1)?.text ?? "");
  return lines.list(
    shown.map(({ text }) => text),
    last,
  );
};
