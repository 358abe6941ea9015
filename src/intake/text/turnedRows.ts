import { readUnit } from "../../quantities/reading/readUnit";
import { areSchemeLetters, namesPosition } from "../words/readPosition";
import { splitTitle } from "../words/readTitle";
import { sensesOf } from "../words/senses";
import type { TextRow } from "./delimited";
import { countFilled } from "./textCells";

/** A table of which each line is a quantity, with the phases or panels across: where its line of names stands, and its last line. */
interface Turned {
  readonly head: number;
  readonly end: number;
  /** What the names across are of. */
  readonly title: "Phase" | "Panel";
}

const LEAST_LINES = 2;
const LEAST_UNITS = 2;

/**
 * Rows of which a table has its quantities down and its phases or panels across, with that table turned:
 * `Primary (V)`, `Secondary (V)` and `Polarity` below each other, `A`, `B`, `C` beside each other.
 *
 * @param rows all rows of a short file
 * @param objectOf the panel or section that a text names
 * @returns undefined where no table is so
 */
export const turnedRows = (
  rows: readonly TextRow[],
  objectOf: (text: string) => string | undefined,
): TextRow[] | undefined => {
  const found = turnedAt(rows, objectOf);
  if (found === undefined) return undefined;
  const { head, end, title } = found;
  const [names, lines] = [rows[head] as TextRow, rows.slice(head + 1, end)];
  const across = names.cells.flatMap((name, at) => (at > 0 && name !== "" ? [{ name, at }] : []));
  const isRoom = rows.slice(end).every(({ cells }) => countFilled(cells) === 0);
  if (across.length > lines.length && !isRoom) return undefined;
  return [
    ...rows.slice(0, head),
    { line: names.line, cells: [title, ...lines.map(({ cells }) => cells[0] ?? "")] },
    ...across.map(({ name, at }, nth) => ({
      line: names.line + 1 + nth,
      cells: [name, ...lines.map(({ cells }) => cells[at] ?? "")],
    })),
    ...rows.slice(end),
  ];
};

const turnedAt = (
  rows: readonly TextRow[],
  objectOf: (text: string) => string | undefined,
): Turned | undefined => {
  for (const [head, { cells }] of rows.entries()) {
    const title = namesAcross(cells, objectOf);
    if (title === undefined) continue;
    let end = head + 1;
    while (end < rows.length && isQuantity(rows[end]?.cells ?? [])) end += 1;
    if (areQuantities(rows.slice(head + 1, end))) return { head, end, title };
  }
  return undefined;
};

/** Whether lines are different quantities: of several units, or each of its own words. */
const areQuantities = (lines: readonly TextRow[]): boolean => {
  if (lines.length < LEAST_LINES) return false;
  const labels = lines.map(({ cells }) => cells[0] ?? "");
  const units = labels.flatMap((label) => splitTitle(label).unit ?? []);
  if (new Set(units).size >= LEAST_UNITS) return true;
  const senses = new Set(labels.map((label) => [...sensesOf(label).senses].join()));
  const areApart = units.length === labels.length && senses.size === labels.length;
  return areApart || (units.length > 1 && lines.some(({ cells }) => isAnswer(cells)));
};

/** What the titles behind the first name, all of them: the three phases, or panels. */
const namesAcross = (
  [first = "", ...others]: readonly string[],
  objectOf: (text: string) => string | undefined,
): Turned["title"] | undefined => {
  const names = others.filter((name) => name !== "");
  if (names.length < 2 || readUnit(first).ok) return undefined;
  const upper = names.map((name) => name.toUpperCase());
  if (names.length === 3 && (areSchemeLetters(upper) || names.every(namesPosition))) return "Phase";
  const objects = names.flatMap((name) => objectOf(name) ?? []);
  return objects.length === names.length && new Set(objects).size === names.length
    ? "Panel"
    : undefined;
};

/** The phase or pole that a quantity is of: `EIN L1`, `Close A`. */
const PHASE = /\s(?:L[123]|[RYSTABCUVW])$/;

/** Whether a line begins with a quantity of known words, and has something beside it. */
const isQuantity = (cells: readonly string[]): boolean => {
  const [label = ""] = cells;
  const { senses, unknown } = sensesOf(splitTitle(label).name.replace(PHASE, ""));
  return countFilled(cells) > 1 && senses.size > 0 && unknown === 0 && !namesPosition(label);
};

/** Whether a line answers in words. */
const isAnswer = (cells: readonly string[]): boolean =>
  cells.slice(1).every((cell) => !/\d/.test(cell));
