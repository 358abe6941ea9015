import { strFromU8, unzipSync } from "fflate";
import { expect, test } from "vitest";
import { planFor } from "../../src/sheets/plan/plan";
import { tablesOf } from "../../src/sheets/snapshot";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { linesIn, rowHeight, type WrappedCell } from "../../src/xlsx/rowHeight";
import { sampleLineup } from "../support/lineups";

test.each([
  ["", 10, 1],
  ["Pass", 10, 1],
  ["maximum: data sheet", 14, 2],
  ["one\ntwo\nthree", 30, 3],
  // A word longer than the column is parted where the column ends.
  ["x".repeat(40), 18, 2],
  ["12345678901234567890 x", 18, 2],
])("%j in a column of %i characters: %i", (text, width, lines) => {
  expect(linesIn(text, width)).toBe(lines);
});

test.each<[string, readonly WrappedCell[], number | undefined]>([
  ["no text that goes on in further lines", [], undefined],
  ["a text of one line", [{ value: "Pass, measured", width: 20 }], undefined],
  ["a number, which no spreadsheet parts", [{ value: 123_456_789, width: 3 }], undefined],
  [
    "the cell with most lines",
    [
      { value: "a source of a limit that needs two lines", width: 20 },
      { value: "one\ntwo\nthree", width: 20 },
    ],
    3 * 12 + 4,
  ],
])("a row is as high as %s asks", (_what, cells, height) => {
  expect(rowHeight(cells)).toBe(height);
});

test("rows with long sources of limits are high enough for them, new and saved again, and grow with what is typed", async () => {
  const { file } = await writeBook(planFor(sampleLineup()));
  const snapshot = await readBook(file);
  const at = snapshot.sheets.findIndex(({ name }) => name === "Withstand") + 1;
  const table = tablesOf(snapshot).find(({ name }) => name === "GearWithstand");
  if (!table) throw new Error("no table");
  const remarks = table.headers.indexOf("Remarks");
  const typed = await writeCells(file, [
    { table, writes: [{ row: 0, column: remarks, value: "repeated after drying. ".repeat(20) }] },
  ]);
  const rows = (bytes: Uint8Array) =>
    [
      ...strFromU8(unzipSync(bytes)[`xl/worksheets/sheet${at}.xml`] ?? new Uint8Array()).matchAll(
        /<row r="(\d+)"([^>]*)>/g,
      ),
    ].filter(([, row]) => Number(row) > 4);
  const heightOf = (row: RegExpMatchArray | undefined) =>
    Number(/ ht="([\d.]+)"/.exec(row?.[2] ?? "")?.[1]);
  for (const bytes of [file, typed])
    for (const row of rows(bytes)) {
      expect(heightOf(row)).toBeGreaterThanOrEqual(28);
      // A spreadsheet may change it: nobody set it.
      expect(row[2]).not.toContain("customHeight");
    }
  expect(heightOf(rows(typed)[0])).toBeGreaterThan(heightOf(rows(file)[0]) + 12);
});
