import { strFromU8, unzipSync } from "fflate";
import { writeXlsx } from "hucre/xlsx";
import { expect, test } from "vitest";
import { planFor } from "../../src/sheets/plan";
import { finish } from "../../src/xlsx/correctPackage";
import { writeBook, writeCells } from "../../src/xlsx/file";
import { sampleLineup } from "../support/lineups";

const namesIn = (file: Uint8Array) =>
  Array.from(
    strFromU8(unzipSync(file)["xl/workbook.xml"] ?? new Uint8Array()).matchAll(
      /name="_xlnm\.Print_\w+"[^>]*>([^<]*)</g,
    ),
    ([, text]) => text,
  );

const saved = async (name: string, printArea: string, columns?: string) =>
  finish(
    await writeXlsx({
      sheets: [
        { name: "First", rows: [["a"]] },
        {
          name,
          rows: [["a", "b"]],
          pageSetup: { printArea, printTitlesRow: "$1:$1", printTitlesColumn: columns },
        },
      ],
    }),
    [],
    undefined,
    new Map(),
  );

/** How Excel writes such names: from memory; the form is that of ECMA-376 Part 1, 18.17.2.2 and 18.2.5. */
test.each<[string, string, string | undefined, string[]]>([
  ["Plain", "$A$1:$B$2", undefined, ["'Plain'!$A$1:$B$2", "'Plain'!$1:$1"]],
  [
    "Site tests",
    "$A$1:$B$2",
    "$A:$A",
    ["'Site tests'!$A$1:$B$2", "'Site tests'!$A:$A,'Site tests'!$1:$1"],
  ],
  [
    "North's",
    "$A$1:$A$2,$B$1:$B$2",
    undefined,
    ["'North''s'!$A$1:$A$2,'North''s'!$B$1:$B$2", "'North''s'!$1:$1"],
  ],
  ["A & B, old", "$A$1:$B$2", undefined, ["'A &amp; B, old'!$A$1:$B$2", "'A &amp; B, old'!$1:$1"]],
])("of the sheet %s", async (name, area, columns, expected) => {
  const file = await saved(name, area, columns);
  expect(namesIn(file).map((text) => text?.replaceAll("&apos;", "'"))).toEqual(expected);
  expect(namesIn(await writeCells(file, []))).toEqual(namesIn(file));
});

test("every sheet of a record workbook has its print titles under its quoted name", async () => {
  const { file } = await writeBook(planFor(sampleLineup()));
  const names = namesIn(file).map((text) => text?.replaceAll("&apos;", "'"));
  expect(names.length).toBeGreaterThan(20);
  expect(names.filter((text) => !/^'[^']+'!\$/.test(text ?? ""))).toEqual([]);
  expect(names).toContain("'Control wiring'!$A:$B,'Control wiring'!$4:$4");
});
