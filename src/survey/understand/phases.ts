import { positionReader } from "../../intake/words/readPosition";

/** The schemes of phase letters in use; colours by their first letters (common practice). */
const SCHEMES: readonly (readonly string[])[] = [
  ["R", "Y", "B"],
  ["R", "S", "T"],
  ["A", "B", "C"],
  ["U", "V", "W"],
  ["L1", "L2", "L3"],
  ["1", "2", "3"],
  ["X", "Y", "Z"],
  ["RED", "YELLOW", "BLUE"],
  ["RED", "WHITE", "BLUE"],
  ["BROWN", "BLACK", "GREY"],
  ["ROJO", "AMARILLO", "AZUL"],
  ["ROT", "GELB", "BLAU"],
];

/**
 * Those of several short texts that are phases or poles: two letters of one scheme at least.
 *
 * @example phasesAmong(["A", "B", "C", "Result"]) // Set { "A", "B", "C" }
 */
export const phasesAmong = (texts: readonly string[]): ReadonlySet<string> => {
  const upper = new Map(texts.map((text) => [text, bare(text)]));
  for (const scheme of SCHEMES) {
    const found = texts.filter((text) => scheme.includes(upper.get(text) ?? ""));
    if (new Set(found.map((text) => upper.get(text))).size >= 2) return new Set(found);
  }
  return new Set();
};

const bare = (text: string) =>
  text
    .slice(0, LONGEST)
    .toUpperCase()
    .replace(/^(?:PH(?:ASE)?|POLE|POLO|FASE|LEITER|POL|PÔLE|POLE|PHASE|Ø)[ .-]*/u, "")
    .replace(/[ .-]*(?:PH(?:ASE)?|POLE|POLO|FASE|PHASE|Ø)$/u, "")
    .trim();

/**
 * A phase, pole or combination in one way of writing, by the letters of the whole table: `L1`, `L1-E`, `L1-L2`.
 *
 * @param texts what stands in the column or the head
 * @returns undefined for what is none
 */
export const positionsAmong = (
  texts: readonly string[],
): ((text: string) => string | undefined) => {
  const written = [...new Set(texts)].filter(canBePlace).map(clean);
  // T is earth (terre, tierra) where the phases are lettered otherwise; N is it where no neutral is measured.
  const letters = written.join(" ").toUpperCase();
  const isEarthT = written.some((text) => /^T ?[-/] ?T$/i.test(text));
  const hasT = /\b[RS]\b/.test(letters) && !isEarthT;
  // White stands for yellow where the phases are red, white and blue.
  const hasW = /\bR\b/.test(letters) && /\bW\b/.test(letters) && /\bB\b/.test(letters);
  const earthed = (text: string) =>
    (hasW ? text.replace(/\bW\b/gi, "Y") : text)
      .replace(/^([A-Z]\d?) ?[-/] ?N$/i, "$1-E")
      .replace(/^([A-Z]\d?) ?[-/] ?T$/i, hasT ? "$1-T" : "$1-E");
  const cleaned = written.map(earthed);
  const read = positionReader(cleaned.filter((text) => text.length <= 24));
  const phases = phasesAmong(cleaned);
  // Four of a series and more are panels: no lineup has phases +E1 to +E5.
  const series = namesAmong(texts);
  const names = series.size >= 4 ? series : new Set<string>();
  return (text) => {
    if (names.has(text) || !canBePlace(text)) return undefined;
    const plain = earthed(clean(text));
    // A word that is cut short is none: "Un." stands over units.
    if (plain.length > 24 || /^\p{L}{2,}\.$/u.test(plain)) return undefined;
    const single = /^[A-Z0-9]$/i.test(plain);
    if (single && !phases.has(plain)) return undefined;
    const found = read(plain);
    if (found.ok) return found.value;
    return phases.has(plain) ? plain.toUpperCase() : undefined;
  };
};

/** No phase is written in more characters, whatever is said with it. */
const LONGEST = 200;

/** Whether a text is short enough to be a place, and no number with a decimal mark or of three digits. */
const canBePlace = (text: string) =>
  text.length <= 40 && !/^[<>≥≤~±-]?\s*\d+(?:[.,]\d+|\d{2,})/.test(text);

const clean = (text: string) =>
  text
    .slice(0, LONGEST)
    .replace(/\s*\[[^\]]*\]/g, "")
    .replace(/\s+/g, " ")
    .replace(/[–—→>]/g, "-")
    .replace(/\b(?:tierra|terre|terra|erde|masse|massa|tierra)\b/giu, "E")
    .trim();

/** "Panel 3", "CB-02", and numbers with a dash such as "52-101". */
const STEM = /^(.*?\p{L}.*?|\d{1,3}-)[ .-]?\d{1,4}$/u;

/** What lies between two of a series: "Cub 1-2", "Splice 2/3". */
const BETWEEN = /^(\p{L}{2,}[^\d]*)\d{1,3} ?[-–/] ?\d{1,3}$/u;

/** What a name of a series has in common with the others. */
const stemOf = (text: string): string | undefined => {
  if (text.length > 24) return undefined;
  const between = BETWEEN.exec(text)?.[1];
  return between === undefined ? STEM.exec(text)?.[1]?.toLowerCase() : `${between.toLowerCase()}-`;
};

/** Those of several texts that are names of one series: they differ in the number at their end only. */
export const namesAmong = (texts: readonly string[]): ReadonlySet<string> => {
  const stems = new Map<string, Set<string>>();
  for (const text of texts) {
    const stem = stemOf(text);
    if (stem !== undefined && !/^(?:l|phase|pole|polo|fase)$/.test(stem))
      stems.set(stem, (stems.get(stem) ?? new Set()).add(text));
  }
  const [most] = [...stems.values()].sort((one, other) => other.size - one.size);
  return most && most.size >= 2 ? most : new Set();
};

/**
 * Whether texts are the names of like things, as panels have: "Celda 1", "CB-02", "52-F3".
 *
 * @param texts of a column or a head, repeats among them
 */
export const areNames = (texts: readonly string[]): boolean =>
  namesAmong(texts).size >= Math.max(2, new Set(texts).size * 0.5);
