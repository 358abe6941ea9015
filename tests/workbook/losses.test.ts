import { readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import { planFor } from "../../src/sheets/plan";
import { writeBook } from "../../src/workbook/file";
import { inventoryOf } from "../../src/workbook/inventory";
import { lossesOf, lossWords } from "../../src/workbook/losses";
import { sampleLineup } from "../support/lineups";

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
