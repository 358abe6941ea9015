import { readUnit } from "../../quantities/reading/readUnit";
import { sensesOf } from "./senses";
import type { TitleWords } from "./synonyms";

/** What a title is called until it is known what it holds: it speaks of something, and no more is known yet. */
const OPEN = "§";

/** The reader of titles that knows besides whole titles what their words speak of. */
export const sensedWords = (words: TitleWords): TitleWords => {
  const known = READERS.get(words);
  if (known) return known;
  const reader: TitleWords = (title) => {
    const field = words(title);
    if (field !== undefined) return field;
    const { senses, unknown } = sensesOf(withoutForeign(title));
    return senses.size > 0 && unknown === 0 ? `${OPEN}${[...senses].sort().join("+")}` : undefined;
  };
  READERS.set(words, reader);
  return reader;
};

/** A title without a unit in brackets that is none of those that readings are brought to, such as dBmV. */
const withoutForeign = (title: string): string => {
  const [brackets, inside = ""] = /\s*[([]([^()[\]]{1,20})[)\]]\s*$/.exec(title) ?? [];
  return brackets === undefined || readUnit(inside).ok
    ? title
    : title.slice(0, -brackets.length) || title;
};

const READERS = new WeakMap<TitleWords, TitleWords>();

/** Whether a field only says that a title speaks of something. */
export const isOpen = (field: string | undefined): boolean => field?.startsWith(OPEN) ?? false;
