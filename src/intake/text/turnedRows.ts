import { readUnit } from "../../quantities/reading/readUnit";
import { operationIn } from "../words/operationIn";
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
  const rest = rows.slice(found.end);
  return [
    ...rows.slice(0, found.head),
    ...turned(rows.slice(found.head, found.end), found.title),
    ...(turnedRows(rest, objectOf) ?? rest),
  ];
};

/** One table turned: its lines are numbered on from its titles, up to the last that it had. */
const turned = ([names, ...lines]: readonly TextRow[], title: Turned["title"]): TextRow[] => {
  if (names === undefined) return [];
  const across = names.cells.flatMap((name, at) => (at > 0 && name !== "" ? [{ name, at }] : []));
  const last = lines.at(-1)?.line ?? names.line;
  return [
    { line: names.line, cells: [title, ...lines.map(({ cells }) => cells[0] ?? "")] },
    ...across.map(({ name, at }, nth) => ({
      line: Math.min(names.line + 1 + nth, last),
      cells: [name, ...lines.map(({ cells }) => cells[at] ?? "")],
    })),
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
    const lines = rows.slice(head + 1, end);
    if (areQuantities(lines) || (title === "Phase" && isOneMeasured(lines)))
      return { head, end, title };
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

/** Whether a line alone is of one quantity with its unit, and of no operation, which records have lines by: `R (µΩ),33.7,34.8,42.3`. */
const isOneMeasured = (lines: readonly TextRow[]): boolean => {
  const [
    {
      cells: [label = ""],
    } = { cells: [] },
    ...others
  ] = lines;
  const { name, unit } = splitTitle(label);
  return others.length === 0 && unit !== undefined && operationIn(name) === undefined;
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
