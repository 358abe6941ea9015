import { readFileSync } from "node:fs";
import { a1 } from "../../src/sheets/cells/address";
import type { Snapshot, TableSnapshot } from "../../src/sheets/snapshot";
import { readBook } from "../../src/xlsx/readBook";
import {
  type NamedCase,
  type NamedEdit,
  SECOND_FAULTS,
  SECOND_HARMLESS,
} from "./audit/secondCases";
import { type AuditCase, auditRun } from "./auditRun";

/** The workbook that the second auditor's cases are put into: the filled sample of metal-clad gear. */
const secondBook = (): Promise<Snapshot> =>
  readBook(readFileSync("sample-workbooks/mesa-tested.xlsx"));

/** How many cells at the start of a row name it. */
const NAMING = 4;

function rowIn(table: TableSnapshot, { row, sheet }: NamedEdit): number {
  if (typeof row === "number") return row;
  const found = Array.from({ length: table.rowCount }, (_, at) => at).find((at) => {
    const names = Array.from({ length: NAMING }, (_, column) => String(table.cell(at, column)));
    return row.every((word) => names.some((name) => name === word || name.endsWith(` ${word}`)));
  });
  if (found === undefined) throw new Error(`no row ${row.join(" · ")} on ${sheet}`);
  return found;
}

function asCase(book: Snapshot, { id, sort, edits, or = [] }: NamedCase): AuditCase {
  const placed = edits.map((edit) => {
    const table = book.sheets.find(({ name }) => name === edit.sheet)?.tables[0];
    const column = table?.headers.indexOf(edit.header) ?? -1;
    if (!table || column < 0) throw new Error(`no column ${edit.header} on ${edit.sheet}`);
    const row = table.top + 1 + rowIn(table, edit);
    return { sheet: edit.sheet, cell: a1(row, table.left + column), value: edit.value, row };
  });
  return {
    id,
    sort,
    why: sort,
    edits: placed.map(({ sheet, cell, value }) => ({ sheet, cell, value })),
    tellAt: [
      ...placed.map(({ sheet, row }) => ({ sheet, rows: [String(row + 1)] })),
      ...or.map((sheet) => ({ sheet, rows: ["*"] })),
    ],
  };
}

/** Each fault of the second auditor's by itself, and each of his harmless differences. */
export async function secondRun(
  part: (all: readonly NamedCase[]) => readonly NamedCase[] = (all) => all,
) {
  const book = await secondBook();
  const cases = (all: readonly NamedCase[]) => part(all).map((one) => asCase(book, one));
  return auditRun({ faults: cases(SECOND_FAULTS), harmless: cases(SECOND_HARMLESS) }, book);
}
