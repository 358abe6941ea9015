import { readUnit } from "../../quantities/reading/readUnit";
import { a1 } from "../../sheets/cells/address";
import type { Label } from "../find/block";
import { conceptOf } from "../words/sheetWords";
import type { Concept } from "../words/words";
import type { Cell, SheetView } from "./cells";

/** Whether a cell belongs to no table. */
type Free = (cell: Cell) => boolean;

const COLON = /[:：]$/;
/** A label and its value in one cell. */
const INLINE = /^([^:]{2,40}):\s+(\S.*)$/;
const BLANKS = /^[_.…\s]+$/;

/** What a form asks of the person, told as missing where one form has it and another does not. */
const ASKED: readonly Concept[] = ["by", "tester", "date", "instrument"];
const LIMITS: readonly Concept[] = ["minimum", "maximum", "limit"];

/** A unit that stands in the cell after a number belongs to it. */
const withUnitAfter = (view: SheetView, value: Cell): Cell => {
  if (value.number === undefined || value.unit !== undefined) return value;
  const next = view.at(value.row, value.column + 1);
  const unit = next && typeof next.value === "string" ? readUnit(next.text) : undefined;
  return unit?.ok ? { ...value, unit: unit.value, text: `${value.text} ${next?.text}` } : value;
};

/** What stands beside a label as its value: in the next cell, or in the one after where the label leaves no doubt. */
const valueBeside = (view: SheetView, cell: Cell, concept: Concept): Cell | undefined => {
  const [beside, next] = [1, 2].map((step) => {
    const other = view.shown(cell.row, cell.column + step);
    return other === cell || BLANKS.test(other?.text ?? "") ? undefined : other;
  });
  const isFar =
    next !== undefined &&
    (COLON.test(cell.text) ||
      (LIMITS.includes(concept) && next.number !== undefined) ||
      (ASKED.includes(concept) && beside === undefined && conceptOf(next.text) === undefined));
  const below = view.at(cell.row + 1, cell.column);
  const isAbove = beside === undefined || conceptOf(beside.text) !== undefined;
  // Below a label without a value beside it, what has a value of its own beside it is the next label.
  const isLabel =
    below !== undefined &&
    (conceptOf(below.text) !== undefined ||
      (beside === undefined && view.shown(cell.row + 1, cell.column + 1) !== undefined));
  if (isAbove && !isFar && ASKED.includes(concept) && below && !isLabel) return below;
  const value = beside ?? (isFar ? next : undefined);
  return value && !COLON.test(value.text) && conceptOf(value.text) !== concept ? value : undefined;
};

const labelAt = (view: SheetView, cell: Cell, free: Free): Label | undefined => {
  if (typeof cell.value !== "string" || cell.text.length > 60 || /_{3}/.test(cell.text))
    return undefined;
  const [, label, text = ""] = INLINE.exec(cell.text) ?? [];
  const concept = conceptOf(label ?? cell.text.replace(/\s*[:：]$/, ""));
  if (!concept) return undefined;
  const { address } = cell;
  const base = { sheet: view.name, concept, address };
  if (label !== undefined)
    return { ...base, text: label, valueAddress: address, value: { ...cell, text, value: text } };
  const found = valueBeside(view, cell, concept);
  const value = found && free(found) ? withUnitAfter(view, found) : undefined;
  if (!value && !COLON.test(cell.text) && !ASKED.includes(concept)) return undefined;
  return {
    ...base,
    text: cell.text,
    valueAddress: value?.address ?? a1(cell.row, cell.column + 1),
    ...(value ? { value } : {}),
  };
};

/** The labels of a form: words that end with a colon or name something, and what stands beside them. */
export const readLabels = (view: SheetView, free: Free): Label[] =>
  view.rows.flat().flatMap((cell) => (free(cell) ? (labelAt(view, cell, free) ?? []) : []));
