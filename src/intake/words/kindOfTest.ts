import { memoizeText } from "./memoizeText";
import { anyWord } from "./phrases";
import { plainWords } from "./plainWords";

/** What a test is called besides the name of its record kind. */
const otherNames = memoizeText(
  (id) =>
    new RegExp(`(?<![\\p{L}\\p{N}])${anyWord(({ tests }) => tests?.[id])}(?![\\p{L}\\p{N}])`, "u"),
);

/**
 * The record kind that a test's name speaks of: the one named first, so that "insulation after
 * withstand" is an insulation test.
 *
 * @param ids of the record kinds there are
 * @example kindOfTest("Hi-pot", ["contact", "insulation", "withstand"]) // "withstand"
 */
export const kindOfTest = (text: string, ids: readonly string[]): string | undefined => {
  const words = plainWords(text.slice(0, 200));
  const starts = ids.flatMap((id) => {
    const places = [words.indexOf(id), words.search(otherNames(id))].filter((place) => place >= 0);
    return places.length > 0 ? [{ id, place: Math.min(...places) }] : [];
  });
  return starts.sort((one, other) => one.place - other.place)[0]?.id;
};
