import { withoutPressureMark } from "./pressureMark";

/** What stands after a unit of voltage or current and says its wave, in the languages of exports. */
const WORDS: readonly (readonly [wave: "AC" | "DC", pattern: string])[] = [
  ["AC", "AC|a\\.c\\.?|CA|c\\. ?a\\.?|r\\.?m\\.?s\\.?|eff?\\.?|eficaz|efficaces?|effektiv"],
  ["DC", "DC|CC|d\\.c\\.?|c\\. ?c\\.?"],
];
const ANY = WORDS.map(([, pattern]) => pattern).join("|");

/** Where a wave begins: after a gap, or right after volts or amperes. */
const FROM = "(?:[\\s,]+|(?<=(?:^|[^\\p{L}])[kmµ]?[VA])|(?<=\\d))";

/** A wave at the end of a unit or a title: `kV rms`, `kV eff.`, `VDC`. */
const AFTER = new RegExp(`${FROM}(?:${ANY})$`, "iu");
/** The same after a number and its unit. */
const READING = new RegExp(`^(.*\\d.*?)${FROM}(${ANY})$`, "iu");

/** No reading with its unit is longer. */
const LONGEST = 100;

/**
 * A unit as it is written, without the wave or what a pressure stands above after it.
 *
 * @example withoutWave("kV eff.") // "kV"
 */
export const withoutWave = (text: string): string =>
  text.length > LONGEST ? text : withoutPressureMark(text.replace(AFTER, ""));

const BESIDE = new RegExp(
  `^(?:(?:${ANY})\\s+[kmµμu]?[VA]|.*(?<![\\p{L}\\p{N}])[kmµμu]?[VA][\\s,]+(?:${ANY}))$`,
  "iu",
);

/**
 * Whether a title names a unit with its wave beside it, which is no pair of phases then.
 *
 * @example isWithWave("kV AC") // true
 */
export const isWithWave = (title: string): boolean => BESIDE.test(title);

/** A wave as a group of a regular expression. */
export const WAVES = `(?:${ANY})`;

/** The kind of voltage or current that a word after a unit says. */
const waveOf = (word: string): "AC" | "DC" | undefined =>
  WORDS.find(([, pattern]) => new RegExp(`^(?:${pattern})$`, "i").test(word))?.[0];

/**
 * A reading and the wave that stands after it.
 *
 * @example waveAfter("126 V DC") // { plain: "126 V", wave: "DC" }
 */
export const waveAfter = (
  text: string,
): { readonly plain: string; readonly wave?: "AC" | "DC" } => {
  const [, plain = text, word] = (text.length > LONGEST ? null : READING.exec(text)) ?? [];
  return word === undefined ? { plain } : { plain, wave: waveOf(word) };
};
