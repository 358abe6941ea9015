import { areLabelled, factsInCells, isFactLine } from "../table/factsIn";
import type { TextRow } from "./delimited";
import { countFilled } from "./textCells";

/** A form of fewer labels is a head without its table. */
const LEAST_LABELS = 4;

/**
 * A note of labels and values, one test or several below each other, as a table: the labels are its titles,
 * and a label that comes again begins the next line. What stands above the first label stays above.
 *
 * @returns undefined where most lines are something else
 * @example formRows([{ line: 1, cells: ["Panel : H01"] }, …]) // titles "Panel", …; a line "H01", …
 */
export const formRows = (rows: readonly TextRow[]): TextRow[] | undefined => {
  const filled = rows.filter(({ cells }) => countFilled(cells) > 0 && !isRule(cells));
  const isLabelled = ({ cells }: TextRow) =>
    isFactLine(cells) || areLabelled(cells) || /[:=]/.test(cells.join(""));
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
    ...filled.slice(0, Math.max(0, from)),
    { line: top, cells: titles },
    ...forms.map(({ line, values }) => ({
      line: Math.max(line, top + 1),
      cells: titles.map((title) => values.get(title) ?? held.get(title) ?? ""),
    })),
  ];
};

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
