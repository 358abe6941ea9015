import { foldedWords, sensesOf } from "./senses";

/**
 * The ways in which a point may be meant: a share in percent may be a multiple of what is set.
 *
 * @example pointKeys("150 %") // ["150", "1.5"]
 */
export const pointKeys = (text: string): readonly string[] => {
  const key = pointKey(text);
  const isShare = /\d\s*%/.test(text) && Number(key) >= 100;
  return isShare ? [key, String(Number(key) / 100)] : [key];
};

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
