import type { Language, Phrases } from "./languages/language";
import { LANGUAGES } from "./languages/languages";

/** The words that the languages have for something, each once. */
export const wordsFor = (pick: (language: Language) => Phrases | undefined): Phrases => [
  ...new Set(LANGUAGES.flatMap((language) => pick(language) ?? [])),
];

/**
 * A group for a regular expression that any of the phrases matches, the longest first; nothing matches
 * it where there is none.
 *
 * @example anyOf(["e", "earth"]) // "(?:earth|e)"
 */
export const anyOf = (phrases: Phrases): string =>
  phrases.length === 0
    ? "(?!)"
    : `(?:${[...phrases].sort((one, other) => other.length - one.length).join("|")})`;

/** The same for what the languages have. */
export const anyWord = (pick: (language: Language) => Phrases | undefined): string =>
  anyOf(wordsFor(pick));

/** The same, not within another word. */
export const wholeWord = (pick: (language: Language) => Phrases | undefined): string =>
  `(?<!\\p{L})${anyWord(pick)}(?!\\p{L})`;
