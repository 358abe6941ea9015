import { readUnit } from "../quantities/readUnit";
import { a1 } from "../sheets/address";
import type { Label } from "./block";
import type { Cell, SheetView } from "./cells";
import { conceptOf } from "./words/sheetWords";

/** Cells of a sheet that no table took. */
export type Free = (cell: Cell) => boolean;

/** A unit that stands in the cell after a number belongs to it. */
const withUnitAfter = (view: SheetView, value: Cell): Cell => {
  if (value.number === undefined || value.unit !== undefined) return value;
  const next = view.at(value.row, value.column + 1);
  const unit = next && typeof next.value === "string" ? readUnit(next.text) : undefined;
  return unit?.ok ? { ...value, unit: unit.value, text: `${value.text} ${next?.text}` } : value;
};

/** The labels of a form: words that end with a colon or name something, and what stands beside them. */
export function readLabels(view: SheetView, free: Free): Label[] {
  const labels: Label[] = [];
  for (const row of view.rows)
    for (const cell of row) {
      if (!free(cell) || typeof cell.value !== "string" || cell.text.length > 60) continue;
      if (/_{3}/.test(cell.text)) continue;
      const inline = /^([^:]{2,40}):\s+(\S.*)$/.exec(cell.text);
      const concept = conceptOf(inline?.[1] ?? cell.text.replace(/\s*[:：]$/, ""));
      if (!concept) continue;
      if (inline) {
        const text = inline[2] ?? "";
        labels.push({
          sheet: view.name,
          concept,
          text: inline[1] ?? "",
          address: cell.address,
          valueAddress: cell.address,
          value: { ...cell, text, value: text },
        });
        continue;
      }
      const [beside, next] = [1, 2].map((step) => {
        const other = view.shown(cell.row, cell.column + step);
        return other === cell || /^[_.…\s]+$/.test(other?.text ?? "") ? undefined : other;
      });
      const value =
        beside ??
        (next && /[:：]$/.test(cell.text) && !/[:：]$/.test(next.text) ? next : undefined);
      const isLabel = /[:：]$/.test(cell.text) || (value !== undefined && value.row === cell.row);
      if (!isLabel || (value && /[:：]$/.test(value.text))) {
        if (!/[:：]$/.test(cell.text)) continue;
      }
      const own =
        value && !/[:：]$/.test(value.text) && free(value) ? withUnitAfter(view, value) : undefined;
      labels.push({
        sheet: view.name,
        concept,
        text: cell.text,
        address: cell.address,
        valueAddress: own?.address ?? a1(cell.row, cell.column + 1),
        ...(own ? { value: own } : {}),
      });
    }
  return labels;
}
