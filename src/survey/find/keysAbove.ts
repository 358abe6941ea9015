import { type Cell, isValue, type SheetView } from "../read/cells";
import { areNames } from "../understand/phases";
import { conceptOf } from "../words/sheetWords";
import type { Concept } from "../words/words";

interface Area {
  readonly top: number;
  readonly head: number;
  readonly left: number;
  readonly right: number;
}

/** Labels of lines that tell the columns apart. */
export const NAMING: readonly (Concept | undefined)[] = [
  "panel",
  "name",
  "part",
  "position",
  "test",
  "stage",
  "operation",
];

/** Labels of lines that tell the columns apart where the panels stand across. */
const KEYS: readonly (Concept | undefined)[] = [...NAMING, "serial", "ratio", "class"];

/** Labels of lines that name the panels. */
const PANELS: readonly (Concept | undefined)[] = ["panel", "name"];

const isWords = (cell: Cell | undefined): cell is Cell =>
  cell !== undefined && typeof cell.value === "string" && !isValue(cell);

/** Columns at the left of the titles in which their label may stand. */
const STEPS = [0, 1, 2];

/** The column of the labels: that of the word beside the titles which says what they are. */
const labelsAt = (view: SheetView, { head, left }: Area): number | undefined =>
  STEPS.map((step) => left - step).find((at) => {
    const cell = view.at(head, at);
    return isWords(cell) && KEYS.includes(conceptOf(cell.text));
  });

/** Lines above the titles that may belong to them. */
const MOST = 6;

/**
 * Titles with the labelled lines over them up to that of the panels, where the panels stand across:
 * "Panel | 52-M1 | | | 52-A1" over "Phase | A | B | C | A".
 */
export const withKeysAbove = <A extends Area>(view: SheetView, area: A): A => {
  const at = labelsAt(view, area);
  if (at === undefined) return area;
  const own = view.at(area.head, at);
  if (own && PANELS.includes(conceptOf(own.text))) return area;
  for (let row = area.top - 1; row >= Math.max(0, area.top - MOST); row--) {
    const label = view.at(row, at);
    if (!isWords(label) || !isLine(view, row, at, area)) return area;
    if (PANELS.includes(conceptOf(label.text)))
      return isOfPanels(view, row, at) ? { ...area, top: row } : area;
  }
  return area;
};

/** What stands in a line behind its label. */
const valuesOf = (view: SheetView, row: number, at: number): Cell[] =>
  (view.rows[row] ?? []).filter((cell) => view.columnOf(cell) > at);

/** Whether a line has values for several columns, and no labels among them. */
const isLine = (view: SheetView, row: number, at: number, { right }: Area): boolean => {
  const values = valuesOf(view, row, at);
  const last = Math.max(at, ...values.map((cell) => view.columnOf(cell)));
  return (
    values.length >= 2 &&
    last <= right &&
    values.every((cell) => isValue(cell) || conceptOf(cell.text) === undefined)
  );
};

const isOfPanels = (view: SheetView, row: number, at: number): boolean => {
  const names = valuesOf(view, row, at).map(({ text }) => text);
  return areNames(names) || new Set(names).size >= 2;
};
