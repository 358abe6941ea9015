import type { Sense } from "../words/languages/language";

/** Ways in which a title may speak of something: the senses of each, parted by spaces. */
export const s = (...any: readonly string[]): readonly (readonly Sense[])[] =>
  any.map((words) => words.split(" ").filter((word) => word !== "") as Sense[]);
