import { memoizeText } from "../../quantities/memoizeText";
import { unitCalled } from "../../quantities/reading/readUnit";
import { splitReading } from "../../quantities/reading/splitReading";
import { filledOf } from "../text/textCells";
import { kindsNamed } from "../understand/kindWords";
import { isPosition } from "../understand/titleSense";
import { plainWords } from "../words/plainWords";
import { readDate } from "../words/readDate";
import { readStage } from "../words/readStage";
import { type Sense, sensesOf } from "../words/senses";

/** A fact as it is written: what it is of, and what it says. */
export type KeyAndValue = readonly [key: string, value: string];

/** Where the next of several facts in one cell may begin: after a wide gap, a bar or a semicolon. */
const APART = /\s{2,}|\s*[|;]\s*|\t/;
/** A key before a colon or an equals sign; one that begins a designation, as in `=H03`, parts nothing. */
const KEYED = /^((?:[^:=]|=(?=\p{Lu}{1,3}\d)){1,40}?)\s*(?::|=(?!\p{Lu}{1,3}\d))\s*(.*)$/u;
/** Where a fact begins within others: a word or two before a colon. */
const WITHIN = /[,\s]+(?=\p{Lu}[\p{L}\p{N}/.° ]{0,24}:\s)/u;

/** No line of facts has longer cells, or more of them. */
const LONGEST_CELL = 300;
const MOST_CELLS = 60;

const wordsOf = memoizeText((text) => sensesOf(text));

/** Whether a text can be what a fact is of: words that are all known. */
const isKey = (text: string): boolean => {
  const { senses, unknown } = wordsOf(text);
  return text.length < 40 && senses.size > 0 && unknown <= 1;
};

/**
 * The facts that stand in one cell: `Date: 03/17/2026     Tester: R. Oakes`, `By: D. Pell`.
 *
 * @returns none where it holds no key before a colon
 */
export const factsInCell = (cell: string): KeyAndValue[] => {
  if (cell.length > LONGEST_CELL) return [];
  const parts = cell.split(APART).filter((part) => part !== "");
  const whole = joinedKeys(parts);
  const labels = whole.filter((part) => KEYED.test(part)).length;
  if (labels > 0 && labels === whole.length) return whole.flatMap(keyed);
  // Facts among other words: "Set: MO-02; 100 A; By: D. Pell".
  return labels > 1
    ? whole.flatMap((part): KeyAndValue[] => (KEYED.test(part) ? keyed(part) : [[part, ""]]))
    : single(cell);
};

/** The facts of a part of a cell: one, or several with nothing but a comma or a space between. */
const keyed = (part: string): KeyAndValue[] => {
  const parts = part.split(WITHIN);
  const all = parts.every((one) => KEYED.test(one)) ? parts : [part];
  return all.flatMap((one): KeyAndValue[] => {
    const [, key = "", value = ""] = KEYED.exec(one) ?? [];
    return key === "" ? [] : [[key.trim(), withoutMark(value.trim())]];
  });
};

/** A value without what parts it from the next fact: `M. Ibarra -`. */
const withoutMark = (value: string): string =>
  value.length < LONGEST_CELL ? value.replace(/\s[-–—/·,;]+$/u, "") : value;

/** A gap before or after a colon parts nothing: `Site     : Salina`. */
const joinedKeys = (parts: readonly string[]): string[] => {
  const joined: string[] = [];
  for (const part of parts) {
    const last = joined.at(-1);
    if (last !== undefined && (part.startsWith(":") || /[:=]$/.test(last)))
      joined[joined.length - 1] = `${last} ${part}`;
    else joined.push(part);
  }
  return joined;
};

/** A colon that parts no hours and minutes. */
const MARK = /(?<!\d):|:(?!\d\d(?!\d))/;

const single = (cell: string): KeyAndValue[] => {
  const at = cell.search(MARK);
  const key = cell.slice(0, at).trim();
  return at > 0 && key.length < 40 ? [[key, cell.slice(at + 1).trim()]] : [];
};

const OF_PHASES = /^(.*?)\s*\(?(L?1|[ARU])\s*[/,;]\s*(L?2|[BYSV])\s*[/,;]\s*(L?3|[CBTW])\)?$/i;

/** One fact for each phase where a label names all three and the values stand side by side: `IR A / B / C: 25 / 8 / 12 GΩ`. */
const byPhase = ([key, value]: KeyAndValue): KeyAndValue[] => {
  const [, label = "", ...phases] = OF_PHASES.exec(key) ?? [];
  const unitAt = value.search(/[\p{L}µΩΩ°%]/u);
  const [numbers, unit] = unitAt < 0 ? [value, ""] : [value.slice(0, unitAt), value.slice(unitAt)];
  const values = numbers
    .split(/[/;]/)
    .map((one) => one.trim())
    .filter((one) => /^[-+<>]?\s*[\d.,]+$/.test(one));
  return phases.length === 3 && values.length === 3
    ? phases.map((phase, at) => [`${label} ${phase}`.trim(), `${values[at]} ${unit}`.trim()])
    : [[key, value]];
};

/** The facts of a line: in its cells, or from one cell to the next. */
export const factsInCells = (cells: readonly string[]): KeyAndValue[] =>
  cells.length > MOST_CELLS ? [] : factsBeside(cells).flatMap(byPhase);

const factsBeside = (cells: readonly string[]): KeyAndValue[] => {
  const filled = joinedKeys(filledOf(cells));
  const found: KeyAndValue[] = [];
  for (let at = 0; at < filled.length; at++) {
    const cell = filled[at] ?? "";
    const next = filled[at + 1];
    const own = factsInCell(cell);
    if (own.some(([, value]) => value !== "")) found.push(...own);
    else if (
      next !== undefined &&
      factsInCell(next).length === 0 &&
      (/[:=]$/.test(cell) || isKey(cell))
    ) {
      found.push([cell.replace(/\s*[:=]\s*$/, ""), next]);
      at += 1;
    } else {
      const trailing = keyAndRest(cell);
      if (trailing) found.push(trailing);
    }
  }
  return found;
};

/** A key and its value with no mark between: `Analyzer S/N INV-90909`. */
const keyAndRest = (cell: string): KeyAndValue | undefined => {
  const words = cell.split(" ");
  const from = words.findIndex((word) => /\d/.test(word));
  const key = words.slice(0, from).join(" ");
  return from > 0 && from === words.length - 1 && isKey(key) && is.withDigit(words[from] ?? "")
    ? [key, words[from] ?? ""]
    : undefined;
};

const is = {
  number: (text: string) => (splitReading(text)?.number ?? "") !== "",
  measure: (text: string) => {
    const parts = splitReading(text);
    return (parts?.number ?? "") !== "" && unitCalled(parts?.unit ?? "") !== undefined;
  },
  date: (text: string) => readDate(text, "day-first").ok,
  name: (text: string) => /\p{L}/u.test(text) && wordsOf(text).unknown > 0,
  withDigit: (text: string) => /\d/.test(text) && !/[([/]/.test(text) && !speaksOfReadings(text),
};

/** Whether a text speaks of something measured, as titles do. */
const speaksOfReadings = (text: string): boolean =>
  [...wordsOf(text).senses].some((sense) => MEASURED.has(sense));
const MEASURED: ReadonlySet<Sense> = new Set<Sense>([
  "resistance",
  "insulation",
  "voltage",
  "current",
  "temperature",
  "pressure",
  "torque",
  "time",
  "held",
]);

/** What a value must look like to be of its key. */
const VALUES: readonly (readonly [Sense, (value: string) => boolean])[] = [
  ["stage", (value) => readStage(value) !== undefined],
  ["date", is.date],
  ["temperature", is.number],
  ["humidity", is.number],
  ["barometer", is.number],
  ["pressure", is.number],
  ["voltage", is.number],
  ["current", is.number],
  ["held", is.number],
  ["withstand", is.measure],
  ["applied", is.measure],
  ["instrument", (value) => is.withDigit(value) || is.name(value)],
  ["serial", is.withDigit],
  ["meter", is.withDigit],
  ["relay", is.withDigit],
  ["cable", is.withDigit],
  ["by", (value) => is.date(value) || (is.name(value) && !is.number(value))],
  ["witness", (value) => is.name(value)],
  ["panel", is.withDigit],
  ["section", is.withDigit],
  ["breaker", is.withDigit],
  ["phase", isPosition],
  ["test", (value) => kindsNamed(value).size > 0],
  ["air", is.number],
  ["unit", () => false],
];

/** Whether a value can be of its key, and is no title that stands beside another. */
const isOf = ([key, value]: KeyAndValue): boolean => {
  const { senses } = wordsOf(plainWords(key));
  const wanted = VALUES.filter(([sense]) => senses.has(sense));
  return wanted.length > 0 && wanted.some(([, fits]) => fits(value));
};

/** Whether every other cell of a line is a label of known words, and a value stands beside each. */
export const areLabelled = (cells: readonly string[]): boolean => {
  const filled = filledOf(cells);
  return (
    filled.length > 1 &&
    filled.length % 2 === 0 &&
    filled.length <= MOST_CELLS &&
    filled.every((cell, at) => at % 2 === 1 || (isKey(cell) && wordsOf(cell).unknown === 0))
  );
};

/** Whether several things of one sort stand side by side, as titles do: `Cub. M1,Cub. F1,Cub. F2`. */
const areAcross = (cells: readonly string[]): boolean => {
  const named = cells.flatMap((cell): KeyAndValue[] => {
    const found = keyAndRest(cell);
    return found ? [found] : [];
  });
  return named.some(([key, value]) =>
    named.some(([other, another]) => other === key && another !== value),
  );
};

/**
 * Whether a line is one of facts side by side, such as `Stage,before` or `Date,17/04/2026,Tested by,S. Menon`,
 * and no line of titles: every cell of it is a key or its value.
 */
export const isFactLine = (cells: readonly string[]): boolean => {
  if (cells.length > MOST_CELLS) return false;
  const filled = joinedKeys(filledOf(cells));
  if (filled.length === 0 || filled.some((cell) => cell.length > LONGEST_CELL)) return false;
  const marked = filled.every(
    (cell, at) => factsInCell(cell).length > 0 || /[:=]$/.test(filled[at - 1] ?? ""),
  );
  if (marked) return true;
  if (areAcross(filled)) return false;
  const facts = factsInCells(cells);
  const covered =
    facts.some(isOf) && facts.every((fact) => isOf(fact) || (facts.length > 1 && !isKey(fact[1])));
  const shown = new Set(facts.flat());
  return (
    covered &&
    filled.every(
      (cell) =>
        shown.has(cell) ||
        shown.has(cell.replace(/\s*[:=]\s*$/, "")) ||
        factsInCell(cell).length > 0 ||
        keyAndRest(cell) !== undefined,
    )
  );
};
