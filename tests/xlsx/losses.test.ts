import { readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import { planFor } from "../../src/sheets/plan";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { inventoryOf } from "../../src/xlsx/inventory";
import { lossesOf, lossWords } from "../../src/xlsx/losses";
import { sampleLineup } from "../support/lineups";
import { BOOK, RICH, SHEET, textOf, typeOf } from "./richBooks";

/** Made by fixtures/make.py with openpyxl, which is no library of ours. */
const fixture = (name: string) => readFileSync(join(__dirname, "fixtures", `${name}.xlsx`));
const lost = async (name: string) => lossWords(await lossesOf(fixture(name))).split("\n");

test("nothing is lost of looks, widths, merges, validations, plain formats, notes and a lone chart", async () => {
  expect(await lossesOf(fixture("plain"))).toEqual([]);
  expect(await lossesOf(fixture("chart"))).toEqual([]);
});

test("nothing is lost of a workbook that was built here", async () => {
  const { file } = await writeBook(planFor(sampleLineup()));
  expect(await lossesOf(file)).toEqual([]);
});

test.each([
  ["chart-and-picture", ["charts (1)"]],
  ["extensions", ["newer conditional formats (1)", "data validations (1)"]],
  [
    "rare",
    ["ranges with a password of their own (1)", "scenarios (1)", "error warnings switched off (1)"],
  ],
  ["threaded-and-control", ["threaded comments (1)", "properties of form controls (1)"]],
])("what %s would lose is told by sheet", async (name, features) => {
  expect(await lost(name)).toEqual(features.map((feature) => `  sheet "IR own": ${feature}`));
});

test("headers without text and settings that are off, as other programs write them, are no loss", async () => {
  const parts = unzipSync(fixture("plain"));
  const sheet = "xl/worksheets/sheet1.xml";
  const withEnd = (end: string) =>
    zipSync({
      ...parts,
      [sheet]: strToU8(
        strFromU8(parts[sheet] ?? new Uint8Array()).replace("</worksheet>", `${end}</worksheet>`),
      ),
    });
  const said =
    '<printOptions headings="false" gridLines="false" gridLinesSet="true"/><headerFooter differentFirst="false"><oddHeader></oddHeader><oddFooter/></headerFooter>';
  expect(await lossesOf(withEnd(said))).toEqual([]);
  const meant = inventoryOf(
    withEnd("<headerFooter><oddHeader>&amp;A</oddHeader><oddFooter></oddFooter></headerFooter>"),
  );
  expect(meant.get("IR own")?.get("headerFooter")).toBe(1);
});

test("an element that nobody has a name for is told as the file calls it", () => {
  expect(
    lossWords([
      { sheet: "A", feature: "smartTags", had: 3, left: 1 },
      { feature: "part connections", had: 1, left: 0 },
    ]),
  ).toBe(
    '  sheet "A": "smartTags" of the file format (2 of 3)\n  the workbook: "part connections" of the file format (1)',
  );
});

test("an inventory counts what stands in a sheet, its rules one by one", () => {
  expect(Object.fromEntries(inventoryOf(fixture("plain")).get("IR own") ?? [])).toMatchObject({
    conditionalFormatting: 2,
    dataValidations: 1,
    mergeCells: 1,
    comments: 1,
  });
});

const rich = (name: string) => {
  const made = RICH[name]?.();
  if (!made) throw new Error(`no workbook with ${name}`);
  return made;
};

test.each([
  [
    "sparklines with a limit and a colour of their own",
    ['sparklines, their "sparklineGroup manualMax" (1)', 'sparklines, their "colorNegative" (1)'],
  ],
  ["slicers", ["slicers (1)"]],
  ["form controls", ["controls (1)", "form controls (1)", "properties of form controls (1)"]],
])("%s would be lost, and the guard names them by sheet", async (name, features) => {
  const { file } = rich(name);
  expect(lossWords(await lossesOf(file)).split("\n")).toEqual(
    features.map((feature) => `  sheet "Own": ${feature}`),
  );
});

test.each([
  ["sparklines", []],
  ["a pivot table", ["pivotTable1", "pivotCacheDefinition1", "pivotCacheRecords1"]],
  ["macros", ["vbaProject"]],
  ["threaded comments", ["threadedComment1", "person"]],
])("%s outlast a cell that is written, byte for byte", async (name, kept) => {
  const { file, parts } = rich(name);
  expect(await lossesOf(file)).toEqual([]);
  const [table] = (await readBook(file)).sheets.map((sheet) => ({
    name: "Own",
    sheet: sheet.name,
    top: 0,
    left: 0,
    headers: ["Panel", "Pole", "R µΩ"],
    rowCount: 2,
    cell: sheet.cells?.cell ?? (() => null),
    formula: () => undefined,
    ownLayout: {
      place: (row: number, column: number) => ({ row: row + 1, column }),
      holds: (row: number, column: number) => ({ row: row + 1, column, value: null }),
      written: (_row: number, _column: number, value: string | number | boolean | null) => value,
    },
  }));
  if (!table) throw new Error("no sheet");
  const saved = await writeCells(file, [{ table, writes: [{ row: 1, column: 2, value: 33 }] }]);
  expect((await readBook(saved)).sheets[0]?.cells?.cell(2, 2)).toBe(33);
  const [was, is] = [unzipSync(file), unzipSync(saved)];
  const same = parts.filter((part) => kept.some((one) => part.includes(`/${one}.`)));
  expect(same).toHaveLength(kept.length);
  for (const part of same) {
    expect(is[part], part).toEqual(was[part]);
    expect(typeOf(saved, part), part).toBe(typeOf(file, part));
  }
  expect(typeOf(saved, BOOK)).toBe(typeOf(file, BOOK));
  expect(await lossesOf(saved)).toEqual([]);
  // The file library adds an identity to sparklines; it takes nothing off the sheet.
  const own = (book: Uint8Array) => Object.fromEntries(inventoryOf(book).get("Own") ?? []);
  expect(own(saved)).toMatchObject(own(file));
});

test("a sparkline that outlasts keeps its cells and its look", async () => {
  const saved = textOf(await writeCells(rich("sparklines").file, []), SHEET);
  for (const said of ["Own!C2:C3", "<xm:sqref>D2<", 'type="column"', 'rgb="FF376092"'])
    expect(saved).toContain(said);
});

// ECMA-376 Part 1, from memory: cacheId of pivotTableDefinition is that of a pivotCache of the workbook.
test("a pivot table finds its cache in the workbook by its number", async () => {
  const saved = await writeCells(rich("a pivot table").file, []);
  const id = /<pivotCache [^>]*r:id="([^"]*)"/.exec(textOf(saved, BOOK))?.[1];
  expect(textOf(saved, BOOK)).toMatch(/<pivotCache [^>]*cacheId="7"/);
  expect(textOf(saved, "xl/pivotTables/pivotTable1.xml")).toContain('cacheId="7"');
  expect(textOf(saved, "xl/_rels/workbook.xml.rels")).toMatch(
    new RegExp(`Id="${id}"[^>]*Target="pivotCache/pivotCacheDefinition1.xml"`),
  );
});

test("a comment that others may answer keeps its text and its tie to the note beside it", async () => {
  const saved = await writeCells(rich("threaded comments").file, []);
  const thread = /<threadedComment [^>]*\bid="([^"]*)"/.exec(
    textOf(saved, "xl/threadedComments/threadedComment1.xml"),
  )?.[1];
  expect(textOf(saved, "xl/comments1.xml")).toContain(`<author>tc=${thread}</author>`);
  expect((await readBook(saved)).sheets[0]?.cells?.note?.(1, 2)).toBe("after cleaning (invented)");
});
