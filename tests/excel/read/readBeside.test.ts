import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, expect, test, vi } from "vitest";
import { readExcel } from "../../../src/excel/workbook";
import type { SheetCells } from "../../../src/sheets/snapshot";
import { bookOfFile, fileOfBook } from "../../../src/standin/bench/bookFile";
import { addSheet, newBook, newId, putBox, type Sheet } from "../../../src/standin/book";
import { type StandInHost, standIn } from "../../../src/standin/host";
import { readBook } from "../../../src/xlsx/file";
import { inExcel } from "../excelSupport";

/** Made by tests/xlsx/fixtures/make.py with openpyxl, which is no library of ours. */
const fixture = (name: string) =>
  readFileSync(join(__dirname, "../../xlsx/fixtures", `${name}.xlsx`));
const read = (host: StandInHost) =>
  inExcel(host, (context) => readExcel(context, { sheets: "plain" }));

/** All that a sheet's cells say, blank cells beyond the last one left out. */
const told = ({ rowCount, columnCount, cell, formula, merges, note }: SheetCells) => ({
  cells: Array.from({ length: rowCount }, (_, row) =>
    Array.from({ length: columnCount }, (_, column) => [
      cell(row, column),
      formula(row, column),
      note?.(row, column),
    ]),
  ),
  merges: [...(merges ?? [])].sort((one, other) => one.top - other.top || one.left - other.left),
});

test.each(["own-layout", "plain", "threaded-and-control"])(
  "%s: a sheet without tables is told alike by the file and by Excel, joined cells and notes with it",
  async (name) => {
    const file = await readBook(fixture(name));
    const excel = await read(standIn(await bookOfFile(fixture(name))));
    const sheets = file.sheets.flatMap(({ cells }) => (cells ? [told(cells)] : []));
    expect(excel.sheets.flatMap(({ cells }) => (cells ? [told(cells)] : []))).toEqual(sheets);
    const texts = sheets.flatMap(({ cells }) => cells.flat().flatMap(([, , note]) => note ?? []));
    expect(texts.length + sheets.flatMap(({ merges }) => merges).length).toBeGreaterThan(0);
  },
);

test("what the bench writes to a file has the notes that it was opened with", async () => {
  const again = await readBook(fileOfBook(await bookOfFile(fixture("plain"))));
  expect(again.sheets[0]?.cells?.note?.(1, 4)).toBe(
    (await readBook(fixture("plain"))).sheets[0]?.cells?.note?.(1, 4),
  );
});

/** Excel with one sheet that is no table, and so many pairs of cells joined below each other. */
function joined(pairs: number): { host: StandInHost; sheet: Sheet } {
  const book = newBook();
  const sheet = addSheet(book, "Own");
  for (let pair = 0; pair < pairs; pair++) {
    putBox(book, sheet, 2 * pair + 1, 0, { value: `H${pair}` });
    putBox(book, sheet, 2 * pair + 1, 1, { value: pair });
    putBox(book, sheet, 2 * pair + 2, 1, { value: pair });
    sheet.merges.push({ top: 2 * pair + 1, left: 0, bottom: 2 * pair + 2, right: 0 });
  }
  return { host: standIn(book), sheet };
}

test("joined cells cost one round trip, notes and comments one more", async () => {
  const { host, sheet } = joined(2);
  await read(host);
  const bare = host.batches.length;
  expect(bare).toBe(5);
  const at = (row: number) => ({ top: row, left: 1, bottom: row, right: 1 });
  sheet.notes.push({ id: newId(host.book), area: at(1), content: "after drying (invented)" });
  sheet.comments.push({ id: newId(host.book), area: at(3), content: "again? (invented)" });
  host.reset();
  const { sheets } = await read(host);
  expect(host.batches.length).toBe(bare + 1);
  const note = sheets[0]?.cells?.note;
  expect([1, 2, 3].map((row) => note?.(row, 1))).toEqual([
    "after drying (invented)",
    undefined,
    "again? (invented)",
  ]);
});

test("more joined cells than Excel gives of one range are read in parts", async () => {
  const { host, sheet } = joined(600);
  const { sheets } = await read(host);
  const merges = sheets[0]?.cells?.merges ?? [];
  // Where a part's edge runs through joined cells, they may come twice.
  expect(new Set(merges.map(({ top }) => top)).size).toBe(sheet.merges.length);
});

afterEach(() => vi.unstubAllGlobals());

test.each([
  ["1.9", 0, false],
  ["1.12", 0, true],
  ["1.13", 2, true],
])("an Excel up to set %s is asked only for what it has", async (last, merges, hasComments) => {
  const minor = (version: string) => Number(version.split(".")[1]);
  vi.stubGlobal("Office", {
    context: {
      requirements: {
        isSetSupported: (name: string, version: string) =>
          name === "ExcelApi" && minor(version) <= minor(last),
      },
    },
  });
  const { host, sheet } = joined(2);
  const area = { top: 1, left: 1, bottom: 1, right: 1 };
  sheet.comments.push({ id: newId(host.book), area, content: "again? (invented)" });
  sheet.notes.push({
    id: newId(host.book),
    area: { ...area, top: 2, bottom: 2 },
    content: "not asked for",
  });
  const { sheets } = await read(host);
  const cells = sheets[0]?.cells;
  expect(cells?.merges?.length).toBe(merges);
  expect(cells?.note?.(1, 1)).toBe(hasComments ? "again? (invented)" : undefined);
  expect(cells?.note?.(2, 1)).toBeUndefined();
});
