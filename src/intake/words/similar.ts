import { distance } from "fastest-levenshtein";
import { plainWords } from "./plainWords";

/**
 * How alike two names are, from 0 to 1: one where only leading zeros of their numbers differ comes to
 * 0.95; names whose numbers differ are never more alike than 0.5, however alike their letters.
 *
 * @example similar("H1", "=H01") // 0.95
 */
export const similar = (one: string, other: string): number => {
  const [left, right] = [bare(one), bare(other)];
  if (left === "" || right === "") return 0;
  if (left === right) return 0.95;
  const [numbers, others] = [numbersOf(left), numbersOf(right)];
  const most = Math.max(left.length, right.length);
  const alike =
    1 - distance(left.slice(0, LONGEST), right.slice(0, LONGEST)) / Math.min(most, LONGEST);
  // "Panel 3" and "=H03": the numbers agree where letters say little.
  if (numbers === others) return Math.min(0.9, numbers === "" ? alike : 0.6 + 0.3 * alike);
  return numbers === "" || others === "" ? alike : Math.min(0.5, alike / 2);
};

/** Names longer than this are compared by their beginning. */
const LONGEST = 40;

const bare = (text: string): string =>
  plainWords(text.slice(0, 200))
    .replace(/\s/g, "")
    .replace(/(?<!\d)0+(?=\d)/g, "");

const numbersOf = (text: string): string => (text.match(/\d+/g) ?? []).join(" ");
