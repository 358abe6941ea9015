import { PARTS } from "../words/languages/language";
import { wholeWord } from "../words/phrases";
import { plainWords } from "../words/plainWords";
import type { Candidate } from "./candidates";
import type { RecordRows } from "./recordRows";

/** The rows of the part as it is written; those of a part that has these words among others only where there is none. */
export const ofThisPart = <T extends RecordRows>(
  rows: readonly Candidate<T>[],
  written: string,
) => {
  const verbatim = rows.filter(({ part }) => plainWords(part) === plainWords(written));
  return verbatim.length > 0
    ? verbatim
    : rows.filter(({ part, object }) => isPart(written, part, object));
};

/** Every word of the part as written is in the part's name, or in that of the panel it belongs to. */
const isPart = (written: string, part: string, object: string): boolean => {
  const [words, own, panel] = [partWords(written), partWords(part), partWords(object)];
  return (
    words.some((word) => own.includes(word)) &&
    words.every((word) => own.includes(word) || panel.includes(word))
  );
};

/** Each part that the records name, and how it is written. */
const PART_WORDS = PARTS.map(
  (part) =>
    [
      new RegExp(
        wholeWord(({ parts }) => parts?.[part]),
        "gu",
      ),
      part,
    ] as const,
);

const partWords = (text: string): string[] =>
  PART_WORDS.reduce(
    (words, [pattern, part]) => words.replace(pattern, part),
    plainWords(text),
  ).split(" ");
