import { writeXlsx } from "hucre/xlsx";
import { beforeAll, expect, test } from "vitest";
import { readShared } from "../../src/cli/readShared";
import type { SheetCells, Snapshot } from "../../src/sheets/snapshot";
import { readBook } from "../../src/xlsx/file";
import { random } from "../support/random";

const ROWS = 18_000;
let file: Uint8Array;

beforeAll(async () => {
  const next = random(11);
  // Digits that hardly pack, so that the file is long enough for a second thread.
  const sheets = ["First", "Second", "Third", "Fourth", "Fifth", "Sixth"].map((name, at) => ({
    name,
    hidden: at === 3,
    rows: Array.from({ length: ROWS }, (_, row) => [
      `${name} ${row}`,
      next(),
      next(),
      next(),
      row % 2 === 0,
    ]),
    cells: new Map([
      ["5,5", { value: 7, formula: `${at + 1}+6`, comment: { text: `note of ${name}` } }],
    ]),
    merges: [{ startRow: 2, startCol: 0, endRow: 2, endCol: at }],
  }));
  file = await writeXlsx({ sheets });
});

const cellsOf = ({ rowCount, columnCount, cell, formula, note }: SheetCells) =>
  Array.from({ length: rowCount }, (_, row) =>
    Array.from({ length: columnCount }, (_, column) => [
      cell(row, column),
      formula(row, column),
      note?.(row, column),
    ]),
  );

const contents = ({ sheets }: Snapshot) =>
  sheets.map(({ name, hidden, cells }) => ({ name, hidden, merges: cells?.merges }));

test("a workbook read by two threads is the same as by one", async () => {
  expect(file.length).toBeGreaterThan(4_000_000);
  const [shared, alone] = await Promise.all([readShared(file, 1), readBook(file)]);
  expect(contents(shared)).toEqual(contents(alone));
  expect(shared.sheets.map(({ hidden }) => hidden)).toEqual(
    [0, 1, 2, 3, 4, 5].map((at) => at === 3),
  );
  for (const [at, { cells }] of shared.sheets.entries()) {
    expect(cells?.note?.(5, 5)).toMatch(/^note of /);
    expect(cells?.formula(5, 5)).toBe(`${at + 1}+6`);
    const [these, those] = [cells, alone.sheets[at]?.cells].map((one) => one && cellsOf(one));
    expect(JSON.stringify(these) === JSON.stringify(those)).toBe(true);
  }
});

test.each([0.2, 0.4, 0.6, 0.8])(
  "a workbook damaged at %d of its length is refused in words, whichever thread comes upon it",
  async (share) => {
    const damaged = file.slice();
    const at = Math.floor(share * damaged.length);
    damaged.fill(0, at, at + 1000);
    await expect(readShared(damaged, 1)).rejects.toThrow(/is damaged or not a workbook/);
  },
);
