/**
 * Cyrillic and Greek letters that look like Latin ones, in the order of the Latin ones below (Unicode
 * Technical Standard 39, confusables, of which these are the letters that names of equipment use; from memory).
 */
const OTHERS = "АВЕКМНОРСТУХаеорсухіјѕԁһӏ" + "ΑΒΕΖΗΙΚΜΝΟΡΤΥΧονα";
const LATIN = "ABEKMHOPCTYXaeopcyxijsdhl" + "ABEZHIKMNOPTYXova";

const LATIN_OF: ReadonlyMap<string, string> = new Map(
  [...OTHERS].map((letter, at) => [letter, LATIN[at] ?? letter]),
);

const asLatin = (text: string): string =>
  [...text.trim()].map((letter) => LATIN_OF.get(letter) ?? letter).join("");

/** The letters in which a text differs from one that looks the same; none where it does not look the same. */
export const lookAlikes = (text: string, wanted: string): string[] => {
  if (asLatin(text).toLowerCase() !== asLatin(wanted).toLowerCase()) return [];
  const right = new Set(wanted);
  return [...new Set(text.trim())].filter(
    (letter) => !right.has(letter) && (LATIN_OF.has(letter) || hasLook(right, letter)),
  );
};

/** Whether a Latin letter stands where another text has one that looks like it. */
const hasLook = (letters: ReadonlySet<string>, latin: string): boolean =>
  [...letters].some((letter) => LATIN_OF.get(letter) === latin);
