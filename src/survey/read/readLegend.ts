import { isWord, plain, verdictIn } from "../words/sheetWords";

/** What the letters of a sheet stand for, where it says so itself. */
export type Legend = ReadonlyMap<string, "Pass" | "Fail" | "NotApplicable">;

/** "NC = non conforme", up to the next sign or the end. */
const MEANING =
  /(?<![\p{L}\p{N}])([\p{Lu}✓✗√×x][\p{L}./]{0,3}|\p{Ll}{1,2}(?=\s*=))\s*[=:]\s*([\p{L}][\p{L} '’]{1,40}?)(?=\s*(?:[,;.()/|]|$))/gu;

/** "S satisfactory, X to be put right": a letter or a mark, and right after it what it means. */
const UNSIGNED = /^([\p{Lu}✓✗√×x]{1,2})\s+(?:[-–]\s+)?(\p{L}[\p{L} '’]{2,40})$/u;

interface Meant {
  readonly code: string;
  readonly words: string;
}

/** Letters with their meaning and no sign between them, one after the other; one of them has to be a verdict. */
const unsignedIn = (text: string): Meant[] => {
  const found = text.split(/[,;:/|()]|\s[-–]\s/).flatMap((part): Meant[] => {
    const [, code, words] = UNSIGNED.exec(part.trim()) ?? [];
    return code && words ? [{ code, words }] : [];
  });
  return found.some(({ words }) => verdictIn(words) !== undefined) ? found : [];
};

/** A stroke, and what it stands for: "– not applicable". */
const STRUCK = /[,;:(]\s{0,3}[–—-]\s{0,3}[=:]?\s{0,3}(\p{L}[\p{L} '’./]{1,30})/u;
const DASHES = ["–", "—", "-"] as const;

/** Words that turn what follows into its opposite. */
const DENIED = /^(?:ne|non|not|no|nicht|não|nao|in|un)\s+|^n\S* (?=.* (?:pas|not)\b)/u;

const meaningOf = (
  words: string,
  others: readonly string[],
): "Pass" | "Fail" | "NotApplicable" | undefined => {
  if (isWord(words, "notApplicable")) return "NotApplicable";
  const told = verdictIn(words);
  if (told) return told;
  // "F = works, NF = does not work": one meaning has the words of the other, denied.
  const stems = plain(words)
    .split(" ")
    .flatMap((word) => (word.length > 3 ? [word.slice(0, 4)] : []));
  const alike = others.filter((other) => stems.some((stem) => plain(other).includes(stem)));
  if (alike.length === 0) return undefined;
  return DENIED.test(plain(words)) || alike.every((other) => other.length < words.length)
    ? "Fail"
    : "Pass";
};

type Meaning = "Pass" | "Fail" | "NotApplicable";

/** What one line of words explains: two letters or more, and the stroke beside them. */
const meaningsIn = (text: string): (readonly [code: string, meaning: Meaning])[] => {
  const signed = /[=:]/.test(text) ? [...text.matchAll(MEANING)] : [];
  const found =
    signed.length >= 2
      ? signed.map(([, code = "", words = ""]): Meant => ({ code, words }))
      : unsignedIn(text);
  if (found.length < 2) return [];
  const letters = found.flatMap(({ code, words }) => {
    const others = found.flatMap((other) => (other.code === code ? [] : [other.words]));
    const meaning = meaningOf(words, others);
    return meaning ? [[code, meaning] as const] : [];
  });
  const isStruck = isWord(STRUCK.exec(text)?.[1] ?? "", "notApplicable");
  return isStruck
    ? [...letters, ...DASHES.map((dash) => [dash, "NotApplicable"] as const)]
    : letters;
};

/**
 * Reads what letters mean on a sheet: "C = conforme, NC = non conforme".
 *
 * @param texts what is written on the sheet
 */
export function readLegend(texts: readonly string[]): Legend {
  const legend = new Map(texts.filter(({ length }) => length <= 200).flatMap(meaningsIn));
  return legend.size >= 2 ? legend : new Map();
}
