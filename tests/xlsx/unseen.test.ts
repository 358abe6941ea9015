import { strToU8, unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import { readBook } from "../../src/xlsx/readBook";
import { isMasking } from "../../src/xlsx/unseenStyles";

// Number formats: ECMA-376 part 1, 18.8.31.
test.each([
  ["General", false],
  ["0.0", false],
  ['0.0" kΩ"', false],
  ['"R = "0', false],
  ["yyyy-mm-dd", false],
  ["[Red]0;[Blue]-0", false],
  ["0;-0;;@", false],
  ["@", false],
  ['"26.1"', true],
  ['0".5"', true],
  [";;;", true],
  ['"ok"', true],
  ['""', true],
  ['"see; below"', true],
])("the format %s hides the number: %s", (code, masks) => {
  expect(isMasking(code)).toBe(masks);
});

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";

/** One row of ten values, each in the cell style of its place. */
const book = () =>
  zipSync(
    Object.fromEntries(
      Object.entries({
        "[Content_Types].xml": `<Types xmlns="${PACKAGE}/content-types"/>`,
        "_rels/.rels": `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
        "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="Own" sheetId="1" r:id="rId1"/></sheets></workbook>`,
        "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${OFFICE}/styles" Target="styles.xml"/></Relationships>`,
        "xl/styles.xml": `<styleSheet xmlns="${MAIN}"><numFmts><numFmt numFmtId="164" formatCode="&quot;26.1&quot;"/></numFmts><fonts><font/><font><color rgb="FFFFFFFF"/></font><font><color theme="0"/></font><font><color indexed="9"/></font><font><color rgb="FFFEFEFE"/></font></fonts><fills><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FF203040"/></patternFill></fill><fill><patternFill patternType="solid"><fgColor rgb="FFFFFBEF"/></patternFill></fill></fills><cellXfs><xf fontId="0" fillId="0"/><xf fontId="1" fillId="0"/><xf fontId="2" fillId="0"/><xf fontId="3" fillId="0"/><xf fontId="4" fillId="0"/><xf fontId="1" fillId="1"/><xf fontId="0" fillId="1"/><xf numFmtId="164" fontId="0" fillId="0"/><xf fontId="1" fillId="2"/><xf fontId="0" fillId="2"/></cellXfs></styleSheet>`,
        "xl/worksheets/sheet1.xml": `<worksheet xmlns="${MAIN}"><cols><col min="2" max="3" width="9" hidden="1"/><col min="5" max="5" width="0.1"/></cols><sheetData><row r="1">${[...Array(10).keys()].map((style) => `<c s="${style}"><v>${style + 1}</v></c>`).join("")}</row><row r="2" ht="0.75" customHeight="1"><c><v>1</v></c></row><row r="3" ht="15"><c><v>1</v></c></row><row r="4"><c s="1"/></row></sheetData></worksheet>`,
      }).map(([name, xml]) => [name, strToU8(xml)]),
    ),
  );

test("values in the colour of their ground, under a masking format, in narrow rows and columns are known", async () => {
  const { cells } = (await readBook(book())).sheets[0] ?? {};
  expect([...Array(10).keys()].map((column) => cells?.unseen?.(0, column))).toEqual([
    undefined,
    "colour",
    "colour",
    "colour",
    "colour",
    undefined,
    undefined,
    "format",
    "colour",
    undefined,
  ]);
  expect(cells?.unseen?.(3, 0)).toBeUndefined();
  expect([...Array(6).keys()].filter((column) => cells?.isColumnHidden?.(column))).toEqual([
    1, 2, 4,
  ]);
  expect([...(cells?.hidden ?? [])]).toEqual([1]);
});

test("nothing is known of unseen values where all are seen", async () => {
  const parts = unzipSync(book());
  const { cells } =
    (
      await readBook(
        zipSync({
          ...parts,
          "xl/worksheets/sheet1.xml": strToU8(
            `<worksheet xmlns="${MAIN}"><sheetData><row><c><v>1</v></c></row></sheetData></worksheet>`,
          ),
        }),
      )
    ).sheets[0] ?? {};
  expect([cells?.unseen, cells?.isColumnHidden]).toEqual([undefined, undefined]);
});
