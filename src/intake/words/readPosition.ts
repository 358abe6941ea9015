import type { Told } from "../../messages/told";
import { memoizeText } from "../../quantities/memoizeText";
import { quoted } from "../../quantities/quoted";
import { answer, type Result, refuse } from "../../quantities/result";
import { anyWord, wholeWord } from "./phrases";

/**
 * How the three phases are lettered: R Y B after colours that were in use before (common practice). The
 * same letter can stand for another phase in another scheme.
 */
const SCHEMES = ["RYB", "RST", "ABC", "UVW"] as const;

const EARTHS = anyWord(({ positions }) => positions.earth);
const TOKEN = new RegExp(`${EARTHS}|L?[123]|[RYSTABCUVW]`, "iy");
const EARTH = new RegExp(`^${EARTHS}$`, "i");
/** A word beside a phase, also one that its figure is written to: `Ph1`. */
const FILLERS = new RegExp(
  `(?<!\\p{L})${anyWord(({ positions }) => positions.fillers)}(?!\\p{L})`,
  "giu",
);
const OPEN = new RegExp(
  wholeWord(({ positions }) => positions.open),
  "giu",
);
/** Two letters of phases that are short for something else: a circuit breaker, a busbar (practice). */
const SHORT_WORDS = new RegExp(`^${anyWord(({ positions }) => positions.others)}$`, "i");
/** The colours of the phases as words, each with the letter of its phase where phases go by colours. */
const COLOURS = [..."RYB"].map(
  (letter, phase) =>
    [
      letter,
      new RegExp(
        wholeWord(({ positions }) => positions.colours?.[phase]),
        "giu",
      ),
    ] as const,
);
/** A text with the letters of phases in place of their colours: `Red - Yellow` is `R - Y`. */
const withoutColours = (text: string): string =>
  COLOURS.reduce((sofar, [letter, colour]) => sofar.replace(colour, letter), text);
/** Whether a text is the colour of a phase. */
export const isColour = (text: string): boolean => /^[RYB]$/.test(withoutColours(text.trim()));

/** T and M for earth, as in other languages, where no scheme has them as a phase of it beside the other. */
const TO_EARTH =
  /^\s*(L[123](?=\s*[-–/+ ]?\s*.$)|[123ABCYUVW](?=\s*[-–/]\s*.$))\s*[-–/+ ]?\s*[TM⏚]\s*$/;
/**
 * Makes the reader of an export's phases, poles and combinations: `R-E`, `A to earth`, `L12`,
 * `across pole 2`, `L1-L1'` become `L1-E`, `L1-E`, `L1-L2`, `L2 open`, `L1 open`.
 *
 * Which letters the export uses tells the scheme: `B` is L2 beside A and C, L3 beside R and Y. A
 * letter that two possible schemes read differently is refused.
 *
 * @param texts every position of the export, by which the scheme is known
 * @example positionReader(["R-E", "Y-E", "B-E"])("B-E") // "L3-E"
 */
export const positionReader = (
  texts: Iterable<string>,
): ((text: string) => Result<string, Told>) => {
  const letters = new Set<string>();
  for (const text of new Set(texts))
    for (const token of tokensOf(text)?.tokens ?? []) if (isLetter(token)) letters.add(token);
  const schemes = SCHEMES.filter((scheme) => [...letters].every((one) => scheme.includes(one)));
  return (text) => readPosition(text, schemes);
};

/** What phases, poles and combinations come to that are read beside each other; what is none is left out. */
export const readPositions = (texts: readonly string[]): string[] => {
  const read = positionReader(texts);
  return texts.flatMap((text) => {
    const found = read(text);
    return found.ok ? found.value : [];
  });
};

/**
 * Whether a title names a phase, a pole or a combination. A digit alone may be anything, a letter alone is
 * one only beside the others of its scheme, and letters of two schemes, as in CT or VT, are none.
 */
export const namesPosition = (text: string): boolean => {
  const tokens = tokensOf(text)?.tokens ?? [];
  const phases = tokens.filter((token) => !EARTH.test(token));
  const letters = tokens.filter(isLetter);
  return (
    phases.length > 0 &&
    tokens.length <= 2 &&
    !SHORT_WORDS.test(text) &&
    SCHEMES.some((scheme) => letters.every((letter) => scheme.includes(letter))) &&
    !/[()[\]]/.test(text) &&
    // "U/V" is a voltage in volts, "L1/L2" two phases.
    (!text.includes("/") || /L\d/i.test(text) || /\s\/\s\p{L}{3}/u.test(text)) &&
    !/^[\d\s.,-]+$/.test(text) &&
    !/^\p{L}$/u.test(text)
  );
};

/** The scheme of which all three letters are among the texts: these are the phases, and no other letter is. */
export const schemeAmong = (texts: readonly string[]): string | undefined =>
  SCHEMES.find((scheme) => [...scheme].every((letter) => texts.includes(letter)));

export const isOneOf = (letters: string, text: string): boolean =>
  text.length === 1 && letters.includes(text);

/** Whether the three letters of one scheme are among the texts. */
export const areSchemeLetters = (texts: readonly string[]): boolean =>
  schemeAmong(texts) !== undefined;

const readPosition = (text: string, schemes: readonly string[]): Result<string, Told> => {
  const parts = tokensOf(text);
  if (!parts) return refuse("wrong", ({ intake }) => intake.cells.noPosition(quoted(text)));
  const lettered = parts.tokens.some(isLetter);
  if (lettered && schemes.length === 0)
    return refuse("wrong", ({ intake }) => intake.cells.mixedLetters(quoted(text)));
  // Where the letters are no position by one scheme, they are meant by another.
  const meanings = [
    ...new Set(
      (lettered ? schemes : [""]).flatMap(
        (scheme) => combine(parts.tokens, parts.open, scheme) ?? [],
      ),
    ),
  ];
  const [meaning] = meanings;
  if (meanings.length > 1)
    return refuse("wrong", ({ intake }) => intake.cells.openLetters(quoted(text), meanings));
  return meaning
    ? answer(meaning)
    : refuse("wrong", ({ intake }) => intake.cells.noPosition(quoted(text)));
};

const isLetter = (token: string) => /^[RYSTABCUVW]$/.test(token);

interface Tokens {
  readonly tokens: readonly string[];
  readonly open: boolean;
}

/** The earth and phase marks of a text in order; undefined where anything else stands in it. */
const tokensOf = memoizeText((text): Tokens | undefined => {
  if (text.length > 40) return undefined;
  const upper = withoutColours(text.normalize("NFKC")).toUpperCase().replace(TO_EARTH, "$1-E");
  const open = new RegExp(OPEN).test(upper);
  const rest = upper
    .replace(OPEN, " ")
    .replace(FILLERS, " ")
    .replace(/[\s\p{P}+]/gu, "");
  const tokens: string[] = [];
  const token = new RegExp(TOKEN);
  while (token.lastIndex < rest.length) {
    const [found] = token.exec(rest) ?? [];
    if (found === undefined) return undefined;
    tokens.push(found);
  }
  // "R L1" is the resistance of L1, and no phase R against L1.
  if (tokens.some(isLetter) && tokens.some((one) => /\d/.test(one))) return undefined;
  return tokens.length > 0 ? { tokens, open } : undefined;
});

/** One phase, one phase to earth, two phases, or one phase across its open pole; undefined for what is none. */
const combine = (tokens: readonly string[], open: boolean, scheme: string): string | undefined => {
  const earths = tokens.filter((token) => EARTH.test(token)).length;
  const phases = tokens
    .filter((token) => !EARTH.test(token))
    .map((token) => (/\d/.test(token) ? Number(token.at(-1)) : scheme.indexOf(token) + 1));
  const [first = 0, second] = phases;
  if (tokens.length > 2 || first === 0 || second === 0) return undefined;
  if (second === undefined) {
    if (earths === 0) return open ? `L${first} open` : `L${first}`;
    return open ? undefined : `L${first}-E`;
  }
  if (first === second) return `L${first} open`;
  if (open) return undefined;
  const [low, high] = first < second ? [first, second] : [second, first];
  return low === 1 && high === 3 ? "L3-L1" : `L${low}-L${high}`;
};
