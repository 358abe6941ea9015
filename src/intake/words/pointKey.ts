import { foldedWords, sensesOf } from "./senses";

/**
 * A point of a test, made comparable: `2 × pick-up`, `2x pickup` and `2.0 x Is` are the multiple 2, and
 * `25 %` is 25. What has no figure is known by what its words speak of.
 *
 * @example pointKey("2x pickup") // "2"
 */
export const pointKey = (text: string): string => {
  const [, number] = /(\d+(?:[.,]\d+)?)/.exec(text.slice(0, 100)) ?? [];
  if (number !== undefined) return String(Number(number.replace(",", ".")));
  const { senses } = sensesOf(text);
  return senses.size > 0 ? [...senses].sort().join("+") : foldedWords(text).join("");
};
