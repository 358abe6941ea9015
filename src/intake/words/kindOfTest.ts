import { memoizeText } from "../../quantities/memoizeText";
import type { RecordKind } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { anyOf, wordsFor } from "./phrases";
import { plainWords } from "./plainWords";

/** What a test is called besides the id of its record kind: in English by the kind itself, in others by the language. */
const otherNames = memoizeText((id) => {
  const kind = KINDS.find((one) => one.id === id);
  const names = [...(kind?.alsoCalled ?? []), ...wordsFor(({ tests }) => kind && tests?.[kind.id])];
  return new RegExp(`(?<![\\p{L}\\p{N}])${anyOf(names)}(?![\\p{L}\\p{N}])`, "u");
});

/**
 * The record kind that a test's name speaks of: the one named first, so that "insulation after
 * withstand" is an insulation test.
 *
 * @param kinds the record kinds there are
 * @example kindOfTest("Hi-pot", KINDS)?.id // "withstand"
 */
export const kindOfTest = <K extends Pick<RecordKind, "id">>(
  text: string,
  kinds: readonly K[],
): K | undefined => {
  const words = plainWords(text.slice(0, 200));
  const starts = kinds.flatMap((kind) => {
    const { id } = kind;
    const places = [words.indexOf(id), words.search(otherNames(id))].filter((place) => place >= 0);
    return places.length > 0 ? [{ kind, place: Math.min(...places) }] : [];
  });
  return starts.sort((one, other) => one.place - other.place)[0]?.kind;
};
