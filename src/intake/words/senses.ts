import { memoizeText } from "../../quantities/memoizeText";
import type { Sense } from "./languages/language";
import { LANGUAGES } from "./languages/languages";

export type { Sense } from "./languages/language";

/** What the words of a text speak of. */
export interface SensesOf {
  readonly senses: ReadonlySet<Sense>;
  /** The words in their order: what each speaks of, several words together where they do. */
  readonly words: readonly SensedWord[];
  /** How many words speak of nothing that is known. */
  readonly unknown: number;
}

export interface SensedWord {
  readonly text: string;
  readonly senses: readonly Sense[];
}

/**
 * Words as they are compared: lower case, without accents, ae and oe and ue as the vowels that they stand for.
 *
 * @example foldedWords("Prüfspannung / Pruefer") // ["prufspannung", "prufer"]
 */
export const foldedWords = (text: string): string[] =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/ß/g, "ss")
    .replace(/([aou])e/g, "$1")
    .match(/\p{L}+|\p{N}+(?:[.,]\p{N}+)*|[%°]/gu) ?? [];

/** Phrases by their folded words, each with what they speak of. */
const PHRASES: ReadonlyMap<string, readonly Sense[]> = (() => {
  const phrases = new Map<string, Sense[]>();
  for (const { senses = {} } of LANGUAGES)
    for (const [sense, texts] of Object.entries(senses) as [Sense, readonly string[]][])
      for (const text of texts) {
        const key = foldedWords(text).join(" ");
        const known = phrases.get(key);
        if (known === undefined) phrases.set(key, [sense]);
        else if (!known.includes(sense)) known.push(sense);
      }
  return phrases;
})();

const LONGEST_PHRASE = 5;
/** Parts of a compound word are no shorter, so that no word falls apart by chance. */
const LEAST_PART = 3;
const LEAST_COMPOUND = 8;

/** What a word speaks of that is put together of two known ones, as German does it: `Prüfspannung`. */
const compound = (word: string): readonly Sense[] | undefined => {
  if (word.length < LEAST_COMPOUND) return undefined;
  for (let at = word.length - LEAST_PART; at >= LEAST_PART; at--) {
    const tail = PHRASES.get(word.slice(at));
    const head = tail && (PHRASES.get(word.slice(0, at)) ?? linked(word.slice(0, at)));
    if (tail && head) return [...new Set([...head, ...tail])];
  }
  return undefined;
};

/** The first part of a compound without the s or n that links it. */
const linked = (head: string): readonly Sense[] | undefined =>
  /[sn]$/.test(head) && head.length > LEAST_PART ? PHRASES.get(head.slice(0, -1)) : undefined;

/** The article of Arabic, and what is written to it. */
const ARTICLE = /^(?:[وبفك]?ال|لل|و(?=\p{L}{3}))/u;

/** A word of some length without the ending of its plural or case: `Anzugsmomente`, `lecturas`. */
const singular = (word: string): readonly Sense[] | undefined => {
  if (word.length < LEAST_INFLECTED) return undefined;
  const [ending] = /(?:es|en|e|s|n)$/.exec(word) ?? [];
  return ending === undefined
    ? undefined
    : (PHRASES.get(word.slice(0, -1)) ?? PHRASES.get(word.slice(0, -ending.length)));
};
const LEAST_INFLECTED = 8;

const wordSenses = (word: string): readonly Sense[] =>
  PHRASES.get(word) ??
  PHRASES.get(word.replace(ARTICLE, "")) ??
  singular(word) ??
  compound(word) ??
  [];

/**
 * What the words of a text speak of, phrases of several words before single ones.
 *
 * @example sensesOf("Prüfspannung").senses // test, voltage
 */
export const sensesOf: (text: string) => SensesOf = memoizeText((text) => {
  const words = foldedWords(text.slice(0, 300));
  const found: SensedWord[] = [];
  for (let at = 0; at < words.length; ) {
    const { length, senses } = phraseAt(words, at);
    const parts = words.slice(at, at + length);
    found.push({ text: parts.join(" "), senses: withQuantities(senses, parts) });
    at += length;
  }
  return {
    words: found,
    senses: new Set(found.flatMap(({ senses }) => senses)),
    unknown: found.filter(({ text: word, senses }) => senses.length === 0 && !FILLER.has(word))
      .length,
  };
});

/** What is measured: a phrase that has such a word speaks of that too, as "voltage drop" does of a voltage. */
const QUANTITIES: ReadonlySet<Sense> = new Set([
  "resistance",
  "voltage",
  "current",
  "temperature",
  "pressure",
  "torque",
]);
/** Phrases about these speak of nothing measured, whatever words they have. */
const NOT_MEASURED: ReadonlySet<Sense> = new Set([
  ...(["number", "retest", "date", "time", "by", "witness", "serial", "remark", "item"] as const),
  ...(["instrument", "ct", "vt", "withstand", "limit", "held", "circuit", "circuits"] as const),
  ...(["heating", "ratio", "wiring", "section", "earthbar", "nameplate", "elapsed"] as const),
]);

const withQuantities = (senses: readonly Sense[], parts: readonly string[]): readonly Sense[] => {
  if (senses.length === 0 || senses.some((sense) => NOT_MEASURED.has(sense))) return senses;
  const [only = ""] = parts;
  const more = (parts.length > 1 ? parts.flatMap(wordSenses) : (compound(only) ?? [])).filter(
    (sense) => QUANTITIES.has(sense) && !senses.includes(sense),
  );
  return more.length > 0 ? [...senses, ...new Set(more)] : senses;
};

const phraseAt = (
  words: readonly string[],
  at: number,
): { length: number; senses: readonly Sense[] } => {
  for (let length = Math.min(LONGEST_PHRASE, words.length - at); length > 1; length--) {
    const senses = PHRASES.get(words.slice(at, at + length).join(" "));
    if (senses) return { length, senses };
  }
  return { length: 1, senses: wordSenses(words[at] ?? "") };
};

/** Words that say nothing by themselves, and numbers' neighbours. */
const FILLER: ReadonlySet<string> = new Set(
  (
    "of the a an at in to from and or per with on for as is was von der die das des dem den und oder bei mit zu im am " +
    "de la le les du des et a au aux en l d el los las del y con do da dos das e em com para no na ao " +
    "di dei del della delle dello dell degli il lo gli per con nel all"
  ).split(" "),
);
export const isFiller = (word: string): boolean => FILLER.has(word);
