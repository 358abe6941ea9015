import { builtNow, memoryXml } from "../memory/memory";
import type { Plan } from "../sheets/plan/plan";
import { reconcile } from "../sheets/plan/reconcile";
import { addSheet, newBook, newId, putBox, type StandInBook } from "./book";
import { shown } from "./entered";

/** A workbook that holds what a plan comes to, with no look: tables, formulas and our memory. */
export function bookOfPlan(plan: Plan): StandInBook {
  const book = newBook();
  for (const { planned, writes } of reconcile(plan).create) {
    const sheet = addSheet(book, planned.sheet);
    const top = 3;
    planned.columns.forEach(({ header }, column) => {
      putBox(book, sheet, top, column, { value: header });
    });
    for (const { row, column, value, formula } of writes)
      if (formula !== undefined)
        putBox(book, sheet, top + 1 + row, column, {
          value,
          formula: shown(formula, planned.table),
        });
      else if (value !== null) putBox(book, sheet, top + 1 + row, column, { value });
    sheet.tables.push({
      id: newId(book),
      name: planned.table,
      area: {
        top,
        left: 0,
        bottom: top + Math.max(planned.rows.length, 1),
        right: planned.columns.length - 1,
      },
      showTotals: false,
      properties: {},
    });
  }
  book.parts.push({ id: newId(book), xml: memoryXml(builtNow(plan.lineup)) });
  book.dirty = false;
  return book;
}
