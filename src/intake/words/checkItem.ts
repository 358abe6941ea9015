import { memoizeText } from "../../quantities/memoizeText";
import { CHECK_ITEMS } from "./languages/checkItems";
import { foldedWords, isFiller } from "./senses";

/** An item by the beginnings of its words, folded: one of each group must be there, no word may be another. */
interface Called {
  readonly item: string;
  readonly groups: readonly (readonly string[])[];
  readonly all: readonly string[];
}

const beginnings = (text: string, between: string): string[] =>
  text.split(between).flatMap((beginning) => foldedWords(beginning).join("") || []);

const CALLED: readonly Called[] = CHECK_ITEMS.flatMap((items) =>
  Object.entries(items).map(([item, told]): Called => {
    const [must = "", may = ""] = told.split("~");
    const groups = must
      .trim()
      .split(" ")
      .map((group) => beginnings(group, "|"));
    return { item, groups, all: [...groups.flat(), ...beginnings(may, " ")] };
  }),
);

/** Words that join others, and say nothing for or against. */
const JOINING: ReadonlySet<string> = new Set(
  "al alla allo ai alle aos as os i su sus est sont sind ist sono son esta estan estao sao todas todos tutte alle tous toutes".split(
    " ",
  ),
);

const isCalled = ({ groups, all }: Called, words: readonly string[]): boolean => {
  const beginsWith = (beginning: string) => (word: string) => word.startsWith(beginning);
  return (
    groups.every((group) => group.some((beginning) => words.some(beginsWith(beginning)))) &&
    words.every((word) => all.some((beginning) => word.startsWith(beginning)))
  );
};

/**
 * The usual item of the installation that a text in another language is, by the records' own name: only
 * where it says all that the item does, nothing else, and can be no other.
 *
 * @example checkItem("Anclada a la cimentación") // "Anchored to the foundation"
 */
export const checkItem: (text: string) => string | undefined = memoizeText((text) => {
  const words = foldedWords(text).filter((word) => !isFiller(word) && !JOINING.has(word));
  if (words.length < 2) return undefined;
  const items = new Set(CALLED.flatMap((one) => (isCalled(one, words) ? one.item : [])));
  const [only, ...others] = items;
  return others.length === 0 ? only : undefined;
});
