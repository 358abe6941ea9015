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
    const { senses, unknown } = sensesOf(title);
    return senses.size > 0 && unknown === 0 ? `${OPEN}${[...senses].sort().join("+")}` : undefined;
  };
  READERS.set(words, reader);
  return reader;
};

const READERS = new WeakMap<TitleWords, TitleWords>();

/** Whether a field only says that a title speaks of something. */
export const isOpen = (field: string | undefined): boolean => field?.startsWith(OPEN) ?? false;
