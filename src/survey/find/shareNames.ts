import { readUnit } from "../../quantities/reading/readUnit";
import { conceptOf, plain } from "../words/sheetWords";
import type { Concept } from "../words/words";

const BOUNDS: readonly (Concept | undefined)[] = [
  "minimum",
  "maximum",
  "limit",
  "required",
  "result",
];

const BRACKETS = /[([]([^()[\]]{1,20})[)\]]/g;

/** What stands in brackets, where it is no unit. */
const withoutUnit = (all: string, inside: string): string =>
  readUnit(inside.trim()).ok ? " " : all;

/** Words that name something: no units, no numbers, no words of a bound. */
const namesIn = (text: string): readonly string[] =>
  plain(text.slice(0, 300).replace(BRACKETS, withoutUnit))
    .split(" ")
    .filter(
      (word) =>
        word.length >= 2 &&
        !/\d/.test(word) &&
        !readUnit(word).ok &&
        !BOUNDS.includes(conceptOf(word)) &&
        !SMALL.test(word),
    )
    .map((word) => word.slice(0, 5));

/** Words that stand in any title and name nothing. */
const SMALL =
  /^(?:at|of|in|on|to|by|for|and|the|set|than|or|is|per|from|von|bei|der|die|das|und|mit|zu|de|du|des|la|le|les|el|los|en|a|au|et|y|e|do|da|no|na)$/u;

/**
 * Whether two titles have a naming word in common, by its first five letters.
 *
 * @example sharesName("PI", "PI least") // true
 */
export const sharesName = (one: string, other: string): boolean => {
  const names = namesIn(other);
  return namesIn(one).some((name) => names.includes(name));
};
