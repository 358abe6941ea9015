import { readUnit } from "../../quantities/reading/readUnit";
import { areLabelled, factsInCells, isFactLine } from "../table/factsIn";
import { type Sense, sensesOf } from "../words/senses";
import type { TextRow } from "./delimited";
import { countFilled, filledOf, isNumberish } from "./textCells";

/** A form of fewer labels is a head without its table. */
const LEAST_LABELS = 4;

/**
 * A note of labels and values, one test or several below each other, as a table: the labels are its titles,
 * and a label that comes again begins the next line. What stands above the first label stays above.
 *
 * @returns undefined where most lines are something else
 * @example formRows([{ line: 1, cells: ["Panel : H01"] }, …]) // titles "Panel", …; a line "H01", …
 */
export const formRows = (all: readonly TextRow[]): TextRow[] | undefined => {
  const rows = all.map(withoutLeaders).map(withName).map(withUnit);
  const filled = rows.filter(({ cells }) => countFilled(cells) > 0 && !isRule(cells));
  const isLabelled = ({ cells }: TextRow) =>
    isFactLine(cells) || areLabelled(cells) || MARK.test(cells.join(""));
  const from = filled.findIndex(isLabelled);
  const labelled = filled.slice(Math.max(0, from));
  const facts = labelled.flatMap((row) =>
    factsInCells(wholeCells(row)).map(([label, value]) => ({ line: row.line, label, value })),
  );
  if (facts.length < LEAST_LABELS || labelled.filter(isLabelled).length < 0.8 * labelled.length)
    return undefined;
  const titles: string[] = [];
  const forms: Form[] = [];
  for (const { line, label, value } of facts) {
    if (!titles.includes(label)) titles.push(label);
    const last = forms.at(-1);
    if (last && !last.values.has(label)) {
      last.values.set(label, value);
      last.line = line;
    } else forms.push({ line, values: new Map([[label, value]]) });
  }
  const top = facts[0]?.line ?? 1;
  const held = heldFrom(forms);
  return [
    ...filled.slice(0, Math.max(0, from)).map(asHeading),
    { line: top, cells: titles },
    ...forms.map(({ line, values }) => ({
      line: Math.max(line, top + 1),
      cells: titles.map((title) => values.get(title) ?? held.get(title) ?? ""),
    })),
  ];
};

/** What parts a label from its value; an equals sign may begin a designation, as in `=H03`. */
const MARK = /:|=(?!\p{Lu}{1,3}\d)/u;

/** Dots that lead the eye from a label to its value: `Closing coil, lowest ..... 78 V`. */
const LEADERS = /^(.{2,60}?)\s*(?:\.{3,}|…+|_{3,}|(?:\s\.){3,})\s*:?\s*(\S.*)$/u;
/** Fewer of them, before a colon: `Gas temperature . : 21 °C`, `Air pressure .. : 1009 hPa`. */
const SHORT_LEADERS =
  /^(.{2,60}?)(?:\s+\.{1,2}|(?<!\p{L})\s*\.{1,2}\s+\.{1,2}|\.\.)\s*:\s*(\S.*)$/u;

/** A wide gap before nothing but a number and its unit: `Contact resistance L1   34.2 µΩ`, `B  35.2 µΩ`. */
const GAP = /^(L[123]|[A-Z]|\p{L}[^\t:=]{2,60}?(?<!\s))\s{2,9}(\d[\d.,]{0,9}\s?[^\s\d]{1,4})$/u;

/** What stands over the labels is no line of titles, whatever parts its words. */
const asHeading = (row: TextRow): TextRow => ({ ...row, cells: [filledOf(row.cells).join(", ")] });

/** A row with its unit written to its number: `Gas pressure;503;kPa`. */
const withUnit = (row: TextRow): TextRow => {
  const [label = "", value = "", unit = "", more] = filledOf(row.cells);
  const isMeasured = more === undefined && isNumberish(value) && readUnit(unit).ok;
  return isMeasured ? { line: row.line, cells: [label, `${value} ${unit}`] } : row;
};

/** A row with a colon for the dots between its label and its value, as its line says them. */
const withoutLeaders = (row: TextRow): TextRow => {
  // Parted at wide gaps, a line has these between its cells.
  const text = (row.text ?? row.cells.join("  ")).trim();
  const [, label, value] =
    text.length > LONGEST_LINE
      ? []
      : (LEADERS.exec(text) ?? SHORT_LEADERS.exec(text) ?? GAP.exec(text) ?? []);
  if (label === undefined || value === undefined) return row;
  const whole = `${label.trim()}: ${value}`;
  return { line: row.line, cells: [whole], text: whole };
};
const LONGEST_LINE = 200;

const LONGEST_NAME = 60;

/** What a form is of, on a line of its own: `Panel H01 / Q0`, `52-F1`. */
const NAMED = /^(\p{L}+\.?)\s+(\S*\d\S*(?:\s*[/,–-]?\s*\S{1,14}){0,2})$/u;
const NAME = /^[+=]?\p{L}{0,4}[-+]?\d{0,3}[-/]?\p{L}{0,3}\d{1,4}\p{L}?$/u;

/** A row that names a panel or what stands in it, as a label with its value. */
const withName = (row: TextRow): TextRow => {
  const said = (row.text ?? row.cells.join(" ")).trim();
  if (said.length > LONGEST_NAME || said.includes(":")) return row;
  const text = said.replace(/^[-=*#\s]+|[-=*#,;\s]+$/g, "");
  const [, sort = "", name] = NAMED.exec(text) ?? [];
  const isNamed = name !== undefined && isPlaceWord(sort);
  const whole = isNamed ? `${sort}: ${name}` : NAME.test(text) ? `Designation: ${text}` : undefined;
  return whole === undefined ? row : { line: row.line, cells: [whole], text: whole };
};

const isPlaceWord = (word: string): boolean => {
  const { senses } = sensesOf(word);
  return PLACES.some((sense) => senses.has(sense));
};
const PLACES: readonly Sense[] = ["panel", "section", "breaker", "cable", "circuit", "place"];

/** A line that only parts: `-----`, `[Record 2]`. */
const isRule = (cells: readonly string[]): boolean =>
  /^(?:\[.*\]|[-=_*#~.\s]+)$/.test(cells.join(" ").trim());

/** What stands over the first label that comes again holds for all forms: the day, the tester, the instrument. */
const heldFrom = ([first, second]: readonly Form[]): ReadonlyMap<string, string> => {
  const [again] = second?.values.keys() ?? [];
  const labels = [...(first?.values ?? [])];
  return new Map(
    labels.slice(
      0,
      labels.findIndex(([label]) => label === again),
    ),
  );
};

/** A label and its value are one text, whatever mark parts the lines of other files: `Date: July 21, 2026`. */
const wholeCells = ({ cells, text }: TextRow): readonly string[] =>
  text !== undefined && /^[^:=]{1,40}[:=]\s*\S/.test(text) && !/\t/.test(text)
    ? [text.trim().replace(/[,;\s]+$/, "")]
    : cells;

interface Form {
  /** The line of its last label. */
  line: number;
  readonly values: Map<string, string>;
}
