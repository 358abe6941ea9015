import { readUnit } from "../../quantities/reading/readUnit";
import { isAnswer } from "../cells/listWord";
import type { TextRow } from "../text/delimited";
import { areTerminals, countFilled, filledOf, isNumberish } from "../text/textCells";
import { namesPlace } from "../understand/headedPlaces";
import { operationIn } from "../words/operationIn";
import { anyWord } from "../words/phrases";
import { readStage } from "../words/readStage";
import { readTitle } from "../words/readTitle";
import { sensesOf } from "../words/senses";
import { factsInCells, isFactLine, type KeyAndValue } from "./factsIn";
import type { Head, LayoutOptions } from "./head";

/** A fact above a table: `Temperature,21.4 °C`, `# Stage: before`, or a remark. */
export interface Fact {
  readonly line: number;
  readonly key: string;
  readonly value: string;
}

/** One test of a file: the facts above it, and its titles. */
export interface Block {
  readonly title?: string;
  readonly facts: readonly Fact[];
  readonly head: Head;
  /** Texts that stand alone above it, the nearest last. */
  readonly headings: readonly string[];
  /** The same of the whole file. */
  readonly above: readonly string[];
  /** Texts alone below it that speak of all its readings: `All readings in µΩ`. */
  readonly notes: readonly string[];
  /** The first lines below the titles. */
  readonly sample: readonly (readonly string[])[];
}

/** Fields that say where a reading belongs, so that a row of them between readings begins something new. */
export const PLACING = new Set([
  "object",
  "circuit",
  "section",
  "part",
  "position",
  "stage",
  "test",
  "operation",
]);
const CLOSING = new RegExp(`^${anyWord(({ footers }) => footers)}`, "i");
const NOTES = new RegExp(`^${anyWord(({ notes }) => notes)}\\b`, "i");
const SUBHEAD = new RegExp(`^(${anyWord(({ headings }) => headings)})\\s+(.+)$`, "i");

/** A heading with its number: `2. Contact resistance`, `3) Joints`, `4.1 Busbar joints`. */
const NUMBERED = /^\d{1,2}(?:\.\d{1,2})*(?:[.)]\s*\p{L}|\s+\p{L}{4,}\s+\p{L})/u;

/** A line above the table or between its rows, as key and value. */
export const factOf = ({ line, cells }: TextRow): Fact[] => {
  const [first = "", ...rest] = filledOf(cells);
  const text = first.replace(/^#+\s*/, "");
  if (text === "") return [];
  const found = factsInCells([text, ...rest]);
  if (isFactLine([text, ...rest])) return found.map(([key, value]) => ({ line, key, value }));
  const [only, ...others] = found;
  if (only && others.length > 0 && text.includes(":"))
    return [
      ...found.map(([key, value]) => ({ line, key, value })),
      ...bare(rest, found).map((key) => ({ line, key, value: "" })),
    ];
  // A key and its value in one cell, others in the next: "Cubicle M1", "Tested by D. Pell".
  if (only && rest.length > 0 && text.startsWith(only[0]) && text.endsWith(only[1]))
    return [
      { line, key: only[0], value: only[1] },
      ...rest.flatMap((cell) => factOf({ line, cells: [cell] })),
    ];
  if (rest.length > 0) return [{ line, key: withoutColon(text), value: rest.join("  ") }];
  const at = text.search(/(?<!\d):|:(?!\d\d(?!\d))/);
  return [
    at > 0
      ? { line, key: text.slice(0, at).trim(), value: text.slice(at + 1).trim() }
      : { line, key: text, value: "" },
  ];
};

/** Cells beside facts that are of none: an instrument's name alone. */
const bare = (cells: readonly string[], facts: readonly KeyAndValue[]): readonly string[] =>
  cells.filter((cell) => !facts.some((fact) => fact.some((part) => cell.includes(part))));

const withoutColon = (text: string) => text.replace(/\s*:$/, "");

/** The texts of lines that are no facts: headings, and remarks over a table. */
export const headingsIn = (rows: readonly TextRow[]): string[] =>
  rows
    .filter(({ cells }) => countFilled(cells) > 0 && !isFactLine(cells))
    .map(({ cells }) =>
      filledOf(cells)
        .join("  ")
        .replace(/^#+\s*/, ""),
    )
    .filter((text) => text !== "");

/** The heading over a table: the last line above it with one text alone. */
export const titleOf = (rows: readonly TextRow[]): string | undefined =>
  headingsIn(rows.filter(({ cells }) => countFilled(cells) === 1)).at(-1);

/** Facts of the whole file. */
export const sharedFacts = (above: readonly TextRow[]): Fact[] => sharedRows(above).flatMap(factOf);

/** The lines of the whole file: those that a blank line parts from the lines of its first test. */
export const sharedRows = (above: readonly TextRow[]): readonly TextRow[] => {
  let last = above.length - 1;
  while (last >= 0 && countFilled(above[last]?.cells ?? []) === 0) last -= 1;
  for (let at = last; at >= 0; at--)
    if (countFilled(above[at]?.cells ?? []) === 0) return above.slice(0, at);
  return [];
};

/** Whether a fact says where readings belong. */
export const isPlacing = (options: LayoutOptions) => (fact: Fact) =>
  fact.value !== "" && PLACING.has(readTitle(fact.key, undefined, options.words).field ?? "");

/** Whether a text alone is a fact, or names a panel, section or phase: `Phase B`. */
const saysPlace = (text: string, { objectOf = () => undefined }: LayoutOptions): boolean =>
  isFactLine([text]) || namesPlace(text, objectOf);

/** Whether each cell of a line is a label with its value: `Breaker: 52-M1`, `Coil voltage: 125 V DC`. */
export const areMarked = (cells: readonly string[]): boolean => {
  let filled = 0;
  for (const cell of cells) {
    if (cell === "") continue;
    // Of readings, most cells hold no colon, and nothing more need be asked.
    if (!cell.includes(": ") || !/^\p{L}[^:]{1,40}: \s*\S/u.test(cell)) return false;
    filled += 1;
  }
  return filled > 0;
};

/** Whether a line is a fact, a heading or a note, and no reading. */
export const looksLikeFact = (
  cells: readonly string[],
  filled: number,
  short: boolean,
  apart: boolean,
  options: LayoutOptions,
): boolean => {
  if (areMarked(cells)) return true;
  if (filled > 2) return cells[0]?.startsWith("#") ?? false;
  const [first = "", second] = filledOf(cells);
  if (first.startsWith("#") || CLOSING.test(first)) return true;
  if (second === undefined)
    return (
      (!isNumberish(first) || NUMBERED.test(first)) &&
      (!short || first.includes(":") || saysPlace(first, options))
    );
  return saysFact([first, second], short, apart, options);
};

/** Whether one text says what the other is of. The lines of two columns look like that themselves: there, one that answers or measures is none. */
const saysFact = (
  [label, value]: readonly [string, string],
  short: boolean,
  apart: boolean,
  { words }: LayoutOptions,
): boolean => {
  const { field } = readTitle(label, undefined, words);
  const isLabel = label.endsWith(":");
  if (!short) return isLabel || (apart && field !== undefined);
  if ((isNumberish(value) && !areTerminals(value)) || isAnswer(value)) return false;
  return PLACING.has(field ?? "") ? isLabel || apart : isLabel && apart;
};

/** What a heading says that the lines below it were measured again. */
const RETEST = "Retest";
const PANEL = "Panel";
/** A heading without what stands in brackets and without its unit: `CLOSE TIME (milliseconds)`, `Opening, ms`. */
const withoutUnit = (heading: string): string => {
  const text = heading.replace(/[([][^()[\]]{0,60}[)\]]/g, " ").trim();
  const [, before = "", last = ""] = /^(.{1,60})[\s,;]+(\S+)$/.exec(text) ?? [];
  return readUnit(last).ok ? before.trim() : text;
};

/** The words of a banner of an operation over what follows (`CLOSE`, `Öffnen`); undefined where it is none. */
const operationBanner = (heading: string): string | undefined => {
  if (heading.length >= 60) return undefined;
  const text = withoutUnit(heading);
  const { words } = sensesOf(text);
  return text.length < 40 && words.length <= 2 && operationIn(text) !== undefined
    ? text
    : undefined;
};

/** What a line alone says of the lines below it, whatever titles stand between: an operation. */
export const bannerFacts = (row: TextRow): Fact[] => {
  const [only = "", other] = filledOf(row.cells);
  const banner = other === undefined ? operationBanner(only) : undefined;
  return banner === undefined ? factOf(row) : [{ line: row.line, key: OPERATION, value: banner }];
};
const OPERATION = "Operation";

const isRetest = (heading: string): boolean =>
  heading.length < 60 && sensesOf(heading).senses.has("retest");

/** What parts a name from more words on the line of it: `M1 (incomer)`, `F2 - pumps`. */
const AFTER_NAME = /\s*[([]|\s+[-–—:]\s+|\s*[,;:]\s+/u;

/** The panel or section that a line is the name of, whatever else it says of it. */
const namedAlone = (
  text: string,
  { objectOf = () => undefined }: LayoutOptions,
): string | undefined => {
  if (text.length >= 60) return undefined;
  const own = objectOf(text);
  if (own !== undefined) return own;
  const [first = "", ...others] = text.split(AFTER_NAME);
  const found = others.length > 0 && /\d/.test(first) ? objectOf(first) : undefined;
  const isOnly = others.every((other) => [undefined, found].includes(objectOf(other)));
  return isOnly ? found : undefined;
};

/** What a line between readings says of those below it. */
const noteFacts = (row: TextRow, options: LayoutOptions): Fact[] => {
  const { line } = row;
  const [only = "", other] = filledOf(row.cells);
  if (other !== undefined) return factOf(row);
  const named = namedAlone(only, options);
  if (named !== undefined) return [{ line, key: PANEL, value: named }];
  if (operationBanner(only) !== undefined) return bannerFacts(row);
  if (isRetest(only)) return [{ line, key: RETEST, value: only }];
  if (readStage(only.split(/\s/, 1)[0] ?? "")) return [{ line, key: "Stage", value: only }];
  const [, key, value] = SUBHEAD.exec(only) ?? [];
  return key !== undefined && value !== undefined && !value.includes(":")
    ? [{ line, key, value }]
    : factOf(row);
};

/** What the rows under some notes belong to: undefined where they go on as before. */
export const underNotes = (
  now: Block,
  notes: readonly TextRow[],
  options: LayoutOptions,
): Block | undefined => {
  const facts = notes.flatMap((note) => noteFacts(note, options));
  const placing = facts.filter((fact) => isPlacing(options)(fact) || fact.key === RETEST);
  if (placing.length > 0)
    return { ...now, facts: [...now.facts, ...placing], title: titleOf(notes) ?? now.title };
  const named = (fact: Fact) => isPlacing(options)(fact);
  const unclear = facts.some(
    ({ key, value }) => value === "" && !CLOSING.test(key) && !NOTES.test(key),
  );
  // A heading that is not understood may name another panel than the one above.
  return unclear && now.facts.some(named) && notes.some(({ cells }) => !cells[0]?.startsWith("#"))
    ? { ...now, facts: now.facts.filter((fact) => !named(fact)), title: titleOf(notes) }
    : undefined;
};
