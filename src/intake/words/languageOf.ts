import { LANGUAGES, OWN_LANGUAGE } from "./languages/languages";
import { foldedWords } from "./senses";

/** The words of each language, whole phrases apart. */
const WORDS = LANGUAGES.map((language) => ({
  language,
  words: new Set(
    [...Object.values(language.senses ?? {}), ...Object.values(language.titles)].flatMap((texts) =>
      texts.flatMap((text) => foldedWords(text).filter((word) => word.length > 2)),
    ),
  ),
}));

/**
 * Whether texts are in a language other than English: more of their words are of it than are English, and
 * some are of it alone.
 *
 * @example isForeign(["Prüfdatum", "Prüfspannung (V)", "Feld"]) // true
 */
export const isForeign = (texts: readonly string[]): boolean => {
  const words = [...new Set(texts.flatMap((text) => foldedWords(text.slice(0, 200))))];
  const english = WORDS.find(({ language }) => language === OWN_LANGUAGE);
  const known = words.filter((word) => english?.words.has(word));
  return WORDS.some(({ language, words: own }) => {
    const found = words.filter((word) => own.has(word));
    const alone = found.filter((word) => !english?.words.has(word));
    return language !== OWN_LANGUAGE && alone.length >= 2 && found.length > known.length;
  });
};
