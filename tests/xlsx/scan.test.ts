import fc from "fast-check";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { readBook } from "../../src/xlsx/file";
import { formulasOf } from "../../src/xlsx/scan/formulasOf";
import { cellIn } from "../../src/xlsx/scan/grid";
import { readNumber } from "../../src/xlsx/scan/readNumber";
import { scanSheet } from "../../src/xlsx/scan/scanSheet";
import { NO_TEXTS, sharedTexts } from "../../src/xlsx/scan/sharedTexts";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";

/** A workbook of one sheet; parts that are given take the place of its own. */
const book = (given: Readonly<Record<string, string>>) => {
  const parts: Readonly<Record<string, string>> = {
    "[Content_Types].xml": `<Types xmlns="${PACKAGE}/content-types"/>`,
    "_rels/.rels": `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="Own" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${OFFICE}/sharedStrings" Target="sharedStrings.xml"/></Relationships>`,
    "xl/sharedStrings.xml": `<sst xmlns="${MAIN}"><si><t>first</t></si></sst>`,
    ...given,
  };
  return zipSync(
    Object.fromEntries(Object.entries(parts).map(([name, xml]) => [name, strToU8(xml)])),
  );
};
const withCells = (cells: string, given: Readonly<Record<string, string>> = {}) =>
  book({
    "xl/worksheets/sheet1.xml": `<worksheet xmlns="${MAIN}"><sheetData>${cells}</sheetData></worksheet>`,
    ...given,
  });
const row = async (cells: string, given: Readonly<Record<string, string>> = {}) => {
  const { sheets } = await readBook(withCells(`<row r="1">${cells}</row>`, given));
  const found = sheets[0]?.cells;
  return Array.from({ length: found?.columnCount ?? 0 }, (_, column) => found?.cell(0, column));
};

// What a cell holds: ECMA-376 part 1, 18.3.1.4 (c) and 18.18.11 (ST_CellType).
test.each<[string, string, unknown]>([
  ["a number", "<c><v>52.5</v></c>", 52.5],
  ["blanks around a number", "<c><v>\n 52.5 </v></c>", 52.5],
  ["a number with an exponent", "<c><v>1.5E-7</v></c>", 1.5e-7],
  ["more digits than a double holds", "<c><v>0.1234567890123456789</v></c>", 0.12345678901234568],
  ["a shared text", '<c t="s"><v>0</v></c>', "first"],
  ["a text of a formula", '<c t="str"><f>A2</f><v>Pass</v></c>', "Pass"],
  [
    "a text in the cell",
    '<c t="inlineStr"><is><t>5.2 G&#937; &amp;&#x20;more</t></is></c>',
    "5.2 GΩ & more",
  ],
  [
    "a text of two looks",
    '<c t="inlineStr"><is><r><rPr><b/></rPr><t>one </t></r><r><t>two</t></r></is></c>',
    "one two",
  ],
  [
    "a text and how it is spoken",
    '<c t="inlineStr"><is><t>東</t><rPh sb="0" eb="1"><t>ひがし</t></rPh></is></c>',
    "東",
  ],
  ["plain text", "<c t='str'><v><![CDATA[a < b & c]]></v></c>", "a < b & c"],
  ["a comment in between", "<c><!-- <v>1</v> --><v>2</v></c>", 2],
  ["a character by its number", '<c t="str"><v>a_x000D_b_x005F_x000D_</v></c>', "a\rb_x000D_"],
  ["truth", '<c t="b"><v>1</v></c>', true],
  ["what is not true", '<c t="b"><v>0</v></c>', false],
  ["an error", '<c t="e"><v>#DIV/0!</v></c>', "#DIV/0!"],
  ["a day", '<c t="d"><v>2026-11-30</v></c>', 46_356],
  ["a moment", '<c t="d"><v>2026-11-30T12:00:00Z</v></c>', 46_356.5],
  ["a prefix", "<x:c xmlns:x='y'><x:v>7</x:v></x:c>", 7],
])("%s", async (_what, cell, value) => {
  expect(await row(`${cell}<c><v>1</v></c>`)).toEqual([value, 1]);
});

test.each(["<c/>", '<c t="s"/>', '<c t="s"><v></v></c>', "<c><v/></c>", '<c t="inlineStr"/>'])(
  "%s is blank",
  async (cell) => {
    expect(await row(`${cell}<c><v>1</v></c>`)).toEqual([null, 1]);
  },
);

test("cells and rows that do not say where they are follow each other; others are where they say", async () => {
  const { sheets } = await readBook(
    withCells(
      '<row><c><v>1</v></c><c r="D1"><v>2</v></c><c><v>3</v></c></row><row/><row><c><v>4</v></c></row>',
    ),
  );
  const cell = sheets[0]?.cells?.cell;
  expect([cell?.(0, 0), cell?.(0, 3), cell?.(0, 4), cell?.(2, 0)]).toEqual([1, 2, 3, 4]);
});

test("formulas: each its own, shared, over several cells", () => {
  const xml = `<worksheet><sheetData><row r="1"><c r="A1"><f>B1*2</f><v>0</v></c><c r="C1"><f t="shared" ref="C1:C3" si="4">A1+$B$1</f></c></row><row r="2"><c r="A2"><f>B1*2</f></c><c r="C2"><f t="shared" si="4"/></c></row><row r="3"><c r="A3"><f t="array" ref="A3:B4">SUM(D1:D9)</f></c><c r="B3"><v>1</v></c></row></sheetData></worksheet>`;
  const { cells, formulas } = scanSheet(strToU8(xml), "sheet", { texts: NO_TEXTS });
  const formula = formulasOf(cells, formulas);
  expect([formula(0, 0), formula(1, 0)]).toEqual(["B1*2", "B1*2"]);
  expect([formula(0, 2), formula(1, 2)]).toEqual(["A1+$B$1", "A2+$B$1"]);
  expect([formula(2, 0), formula(2, 1), formula(3, 1), formula(4, 0)]).toEqual([
    "SUM(D1:D9)",
    "SUM(D1:D9)",
    "SUM(D1:D9)",
    undefined,
  ]);
  // A cell that holds nothing but a formula has no value.
  expect(cellIn(cells)(1, 0)).toBe(null);
});

test("every number is read as the language itself reads it", () => {
  fc.assert(
    fc.property(
      fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer()),
      fc.nat(17),
      (number, digits) => {
        for (const text of [String(number), number.toFixed(digits), number.toExponential()]) {
          const bytes = strToU8(`<v>${text}</v>`);
          expect(readNumber(bytes, 3, bytes.length - 4)).toBe(Number(text));
        }
      },
    ),
  );
});

test.each(["", "-", ".", "abc", "1,5", "0x10", "Infinity", "1e", "--1"])(
  "%j is no number",
  (text) => {
    const bytes = strToU8(text);
    expect(readNumber(bytes, 0, bytes.length)).toBeNaN();
  },
);

test("shared texts: of one look or several, blank, each by its number", () => {
  const texts = sharedTexts(
    strToU8(
      '<sst><si><t>a</t></si><si/><si><t/></si><si><r><t>b</t></r><r><t xml:space="preserve"> c</t></r></si><si><t>d</t></si></sst>',
    ),
    "strings",
  );
  expect(texts.count).toBe(5);
  expect([0, 1, 2, 3, 4].map(texts.text)).toEqual(["a", "", "", "b c", "d"]);
  expect([0, 3].map(texts.plain)).toEqual(["a", undefined]);
  expect(() => texts.text(5)).toThrow(/the text number 5 of 5 in its part strings/);
});

test("sheets of charts, dialogs and macros are passed over; a workbook of other namespaces is read alike", async () => {
  const strict = "http://purl.oclc.org/ooxml/officeDocument/relationships";
  const file = book({
    "_rels/.rels": `<p:Relationships xmlns:p="${PACKAGE}/relationships"><p:Relationship Id="x" Type="${strict}/officeDocument" Target="/xl/workbook.xml"/></p:Relationships>`,
    "xl/workbook.xml": `<w:workbook xmlns:w="http://purl.oclc.org/ooxml/spreadsheetml/main" xmlns:rel="${strict}"><w:sheets><w:sheet name="Chart" sheetId="2" rel:id="c"/><w:sheet name="Own" sheetId="1" state="veryHidden" rel:id="s"/><w:sheet name="Macro" sheetId="3" rel:id=""/></w:sheets></w:workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="c" Type="${strict}/chartsheet" Target="chartsheets/sheet1.xml"/><Relationship Id="s" Type="${strict}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    "xl/worksheets/sheet1.xml":
      '<w:worksheet xmlns:w="http://purl.oclc.org/ooxml/spreadsheetml/main"><w:sheetData><w:row r="1"><w:c r="A1"><w:v>5</w:v></w:c></w:row></w:sheetData></w:worksheet>',
  });
  const { sheets } = await readBook(file);
  expect(sheets.map(({ name, hidden }) => [name, hidden])).toEqual([["Own", true]]);
  expect(sheets[0]?.cells?.cell(0, 0)).toBe(5);
});

describe("what is damaged or hostile ends at once, in words that name the part", () => {
  const sheet = (xml: string) => book({ "xl/worksheets/sheet1.xml": xml });
  const entities = `<!DOCTYPE x [<!ENTITY a "${"b".repeat(50)}">]>`;
  test.each<[string, () => Uint8Array, RegExp]>([
    [
      "a row beyond the last",
      () => withCells('<row r="1048577"/>'),
      /sheet1\.xml has a row that no sheet has/,
    ],
    ["row 0", () => withCells('<row r="0"/>'), /has a row that no sheet has/],
    ["a row of no number", () => withCells('<row r="x"/>'), /has a row that no sheet has/],
    [
      "a column beyond the last",
      () => withCells('<row><c r="XFE1"><v>1</v></c></row>'),
      /has a column that no sheet has/,
    ],
    [
      "a kind that is unknown",
      () => withCells('<row><c t="z"><v>1</v></c></row>'),
      /cell of an unknown kind/,
    ],
    [
      "a text that is not there",
      () => withCells('<row><c t="s"><v>9</v></c></row>'),
      /the text number 9 of 1/,
    ],
    [
      "a text of no number",
      () => withCells('<row><c t="s"><v>x</v></c></row>'),
      /a text without a number, in row 1/,
    ],
    [
      "cells that break off",
      () => sheet("<worksheet><sheetData><row><c><v>1</v>"),
      /sheet1\.xml breaks off/,
    ],
    [
      "a tag that breaks off",
      () => sheet('<worksheet><sheetData><row r="1'),
      /sheet1\.xml breaks off/,
    ],
    ["no cells at all", () => sheet("<worksheet></worksheet>"), /has no cells, not even none/],
    ["nothing in the part", () => sheet(""), /sheet1\.xml holds nothing/],
    ["another part in its place", () => sheet("<sst/>"), /sheet1\.xml is no worksheet/],
    [
      "entities in a sheet",
      () => sheet(`${entities}<worksheet><sheetData/></worksheet>`),
      /declares a document type/,
    ],
    [
      "entities in the workbook",
      () => book({ "xl/workbook.xml": `${entities}<workbook>&a;</workbook>` }),
      /workbook\.xml.*document type/,
    ],
    [
      "a sheet whose part is missing",
      () => book({}),
      /its part xl\/worksheets\/sheet1\.xml is missing/,
    ],
    [
      "a sheet that is related to nothing",
      () =>
        book({
          "xl/workbook.xml": '<workbook><sheets><sheet name="A" id="rId9"/></sheets></workbook>',
        }),
      /its sheet "A" is missing/,
    ],
    [
      "no sheets",
      () => book({ "xl/workbook.xml": "<workbook><sheets/></workbook>" }),
      /has no sheets/,
    ],
    [
      "another document",
      () => book({ "xl/workbook.xml": "<document/>" }),
      /is not a workbook but another kind of document/,
    ],
    ["no workbook", () => book({ "_rels/.rels": "<Relationships/>" }), /it names no workbook/],
    [
      "rows called otherwise, which would leave an empty sheet",
      () => withCells('<roq r="1"><c r="A1"><v>31.5</v></c></roq>'),
      /has something else among its rows/,
    ],
    [
      "cells called otherwise",
      () => withCells('<row r="1"><q r="A1"><v>31.5</v></q></row>'),
      /has something else among its cells/,
    ],
    [
      "values called otherwise",
      () => withCells('<row r="1"><c r="A1"><q>31.5</q></c></row>'),
      /has something else among its values/,
    ],
    [
      "relationships that break off",
      () => book({ "xl/_rels/workbook.xml.rels": "<Relationships><Rel" }),
      /workbook\.xml\.rels/,
    ],
  ])("%s", async (_what, make, message) => {
    const file = make();
    const before = performance.now();
    await expect(readBook(file)).rejects.toThrow(message);
    await expect(readBook(file)).rejects.toMatchObject({ name: "BookError" });
    expect(performance.now() - before).toBeLessThan(2000);
  });

  test.each<[string, () => Uint8Array]>([
    [
      "one cell at the far end",
      () => withCells('<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'),
    ],
    ["a million rows that hold nothing", () => withCells("<row/>".repeat(1_000_000))],
    ["a hundred thousand instructions", () => withCells("<?x?>".repeat(100_000))],
    [
      "elements in elements, 100,000 deep",
      () =>
        withCells(`<row><extLst>${"<a>".repeat(100_000)}${"</a>".repeat(100_000)}</extLst></row>`),
    ],
    [
      "names that a program has itself",
      () =>
        withCells('<row><c t="str"><v>__proto__</v></c></row>', {
          "xl/_rels/__proto__.rels": "<x/>",
        }),
    ],
    [
      "a part that is related to itself",
      () =>
        withCells("", {
          "xl/worksheets/_rels/sheet1.xml.rels": `<Relationships><Relationship Id="1" Type="${OFFICE}/worksheet" Target="sheet1.xml"/></Relationships>`,
        }),
    ],
  ])("%s is read at once", async (_what, make) => {
    const file = make();
    const before = process.cpuUsage();
    expect((await readBook(file)).sheets).toHaveLength(1);
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1000).toBeLessThan(5000);
  });
});
