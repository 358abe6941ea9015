import { memoizeText } from "../../quantities/memoizeText";
import { operationIn } from "../words/operationIn";
import { areSchemeLetters } from "../words/readPosition";
import type { Knowledge } from "./knowledge";
import { placesNamed } from "./places";
import { isPosition } from "./titleSense";

/** A column whose cells name a place and its phase at once, and what reads each from a cell. */
export interface PartedNames {
  readonly index: number;
  readonly place: (text: string) => string;
  readonly phase: (text: string) => string;
  /** The operation of a breaker, where cells name that too. */
  readonly operation?: (text: string) => string;
}

const BETWEEN = /[\s/:;,·–-]+/g;
const MOST = 0.8;
const LONGEST = 60;

type Parted = readonly [place: string, phase: string, operation?: string];

/** Each way to part a text in two, the longest end first. */
const partings = (text: string): Parted[] =>
  [...text.matchAll(BETWEEN)]
    .map(({ index, 0: mark }) => [text.slice(0, index), text.slice(index + mark.length)] as const)
    .filter(([one, other]) => one !== "" && other !== "");

const isPhase = (text: string): boolean => isPosition(text) || /^[A-Z]$/.test(text);

/** A place and the phase written to it, whichever comes first: `Bus 1 A-Gnd`, `L1 of J02`. */
const parted = (written: string, isPlace: (text: string) => boolean): Parted | undefined => {
  const text = written
    .replace(/[()[\]]/g, " ")
    .replace(/\s+/g, " ")
    .trim();
  if (text.length > LONGEST) return undefined;
  const operated = withoutOperation(text);
  const found = operated && placeAndPhase(operated.rest, isPlace);
  return found ? [found[0], found[1], operated?.operation] : placeAndPhase(text, isPlace);
};

const placeAndPhase = (text: string, isPlace: (text: string) => boolean): Parted | undefined => {
  const all = partings(text);
  const turned = all.map(([phase, place]): Parted => [place, phase]).reverse();
  return [...all, ...turned].find(([place, phase]) => isPhase(phase) && isPlace(place));
};

/** The one word of a text that names an operation, and the text without it: `52-F3 close A`. */
const withoutOperation = (text: string): { operation: string; rest: string } | undefined => {
  const words = text.split(/[\s/:;,·]+|(?<=\s)[-–—]+(?=\s)/).filter((word) => word !== "");
  const [operation, ...others] = words.filter(
    (word) => word.length > 1 && operationIn(word) !== undefined,
  );
  return operation === undefined || others.length > 0
    ? undefined
    : { operation, rest: words.filter((word) => word !== operation).join(" ") };
};

/**
 * The one column of a table whose cells name a place of the records and a phase together, an operation
 * of a breaker beside them in all cells or in none. None where a column of phases stands beside it, or where the cells are names of places as they stand.
 *
 * @example partedNames([["Bus 1 A-Gnd", "36.4"], ["Bus 1 B-Gnd", "58.9"]], knows)?.phase("Bus 1 A-Gnd") // "A-Gnd"
 */
export const partedNames = (
  rows: readonly (readonly string[])[],
  { kinds, objectOf }: Knowledge,
): PartedNames | undefined => {
  const isPlace = memoizeText(
    (text: string) =>
      objectOf(text) !== undefined ||
      kinds.some(({ places }) => placesNamed(places, text).length > 0),
  );
  const read = memoizeText((text: string) => parted(text.trim(), isPlace));
  const width = Math.max(0, ...rows.map((cells) => cells.length));
  const columns = Array.from({ length: width }, (_, index) => ({
    index,
    texts: [...new Set(rows.flatMap((cells) => cells[index]?.trim() || []))],
  })).filter(({ texts }) => texts.length > 1 && texts.some((text) => /\p{L}/u.test(text)));
  const areLetters = (texts: readonly string[]) =>
    areSchemeLetters(texts) && texts.every((text) => text.length === 1);
  if (columns.some(({ texts }) => texts.every(isPosition) || areLetters(texts))) return undefined;
  const found = columns.find(({ texts }) => {
    const phases = texts.flatMap((text) => read(text)?.[1] ?? []);
    const letters = phases.filter((phase) => phase.length === 1);
    const isOperated = (text: string) => read(text)?.[2] !== undefined;
    const operated = texts.filter(isOperated).length;
    return (
      texts.filter((text) => !isOperated(text) && isPlace(text)).length <= texts.length / 2 &&
      phases.length >= MOST * texts.length &&
      (operated === 0 || operated === phases.length) &&
      new Set(phases).size > 1 &&
      (letters.length === 0 || areSchemeLetters(letters))
    );
  });
  if (found === undefined) return undefined;
  const operated = found.texts.some((text) => read(text)?.[2] !== undefined);
  return {
    index: found.index,
    place: (text) => read(text)?.[0] ?? text,
    phase: (text) => read(text)?.[1] ?? "",
    ...(operated && { operation: (text: string) => read(text)?.[2] ?? "" }),
  };
};
