import { builtNow } from "../memory/memory";
import type { CellWrite } from "../sheets/cells/cell";
import { columnFormulas } from "../sheets/cells/columnFormulas";
import type { Remembered } from "../sheets/kept/remembered";
import type { Plan } from "../sheets/plan/plan";
import { planOnto } from "../sheets/plan/planOnto";
import {
  instrumentSheetIn,
  type Reconciled,
  reconcile,
  type TableChange,
} from "../sheets/plan/reconcile";
import type { TableSnapshot } from "../sheets/snapshot";
import { openFile } from "./book";
import { draftSheet } from "./draftSheet";
import { fillTable, giveFormulas } from "./fillTable";
import { BookEdit } from "./patch/bookEdit";
import { readBook, understood } from "./readBook";
import { remember } from "./remembered";
import { newBook } from "./write/newBook";

/** A workbook file built, and what was done to make it. */
export interface Built {
  readonly file: Uint8Array;
  readonly done: Reconciled;
}

/** Writes the record workbook of a plan: a new one, or onto one that exists, keeping what people put there. */
export async function writeBook(planned: Plan, existing?: Uint8Array): Promise<Built> {
  const snapshot = existing && (await readBook(existing));
  return understood(async () => {
    const plan = planOnto(planned, snapshot);
    const done = reconcile(plan, snapshot);
    const book = new BookEdit(
      existing ? openFile(existing) : newBook(`Test records, ${plan.lineup.project.name}`),
    );
    const formulas = columnFormulas(plan);
    for (const change of done.change) {
      const sheet = plannedFor(plan, change);
      fillTable(book, change, sheet);
      giveFormulas(book, change.table, sheet && formulas.get(sheet.table));
    }
    const instruments = instrumentSheetIn(done);
    for (const { planned, writes } of done.create)
      book.addSheet(draftSheet(planned, writes, formulas.get(planned.table), instruments));
    remember(book.pack, book.bookPart, { memory: builtNow(plan.lineup) });
    return { file: book.save(), done };
  });
}

const plannedFor = (plan: Plan, { table }: TableChange) =>
  plan.sheets.find(
    (sheet) =>
      sheet.table === table.name ||
      sheet.columns.every(({ header, aside }) => aside === true || table.headers.includes(header)),
  );

/** What is written besides cells: sheets that the workbook lacks, and what it shall remember. */
export interface WrittenBesides {
  readonly create?: Reconciled["create"];
  readonly remembered?: Remembered;
}

/** Writes single cells of existing tables into a workbook file, and rows at their foot; everything else stays. */
export async function writeCells(
  existing: Uint8Array,
  changes: readonly { table: TableSnapshot; writes: readonly CellWrite[]; added?: number }[],
  { create = [], remembered }: WrittenBesides = {},
): Promise<Uint8Array> {
  return understood(async () => {
    const book = new BookEdit(openFile(existing));
    for (const { table, writes, added = 0 } of changes) fillTable(book, { table, writes, added });
    for (const { planned, writes } of create) book.addSheet(draftSheet(planned, writes));
    remember(book.pack, book.bookPart, { remembered });
    return book.save();
  });
}

export { readBook } from "./readBook";
