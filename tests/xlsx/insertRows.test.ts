import { strToU8, unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import type { TableSnapshot } from "../../src/sheets/snapshot";
import { tablesOf } from "../../src/sheets/snapshot";
import { readBook, writeCells } from "../../src/xlsx/file";
import { movedAreas, movedFormula } from "../../src/xlsx/patch/movedReference";
import { textOf } from "./richBooks";

/** What Excel does to references where rows are inserted above row 6 (from memory; the same in LibreOffice). */
const ROWS = { sheet: "Own", at: 5, count: 3 };

test.each([
  ["A5", "A5"],
  ["A6", "A9"],
  ["SUM(A2:A5)", "SUM(A2:A5)"],
  ["SUM(A2:A6)", "SUM(A2:A9)"],
  ["SUM($A$7:B$8)*C9", "SUM($A$10:B$11)*C12"],
  ["SUM(4:7)", "SUM(4:10)"],
  ["SUM(A:B)", "SUM(A:B)"],
  ["Own!A7+Other!A7", "Own!A10+Other!A7"],
  ["'Own'!A7&\"A7\"", "'Own'!A10&\"A7\""],
  ["LOG10(A7)+LOG10(2)", "LOG10(A10)+LOG10(2)"],
  ["Table1[[#This Row],[R 7]]*A7", "Table1[[#This Row],[R 7]]*A10"],
  ["A1048576", "A1048576"],
])("on the sheet itself %s becomes %s", (formula, moved) => {
  expect(movedFormula(formula, "Own", ROWS)).toBe(moved);
});

test("from another sheet only what names the sheet moves", () => {
  expect(movedFormula("A7+own!A7+'Own'!$B$9:B12", "Other", ROWS)).toBe(
    "A7+own!A10+'Own'!$B$12:B15",
  );
  expect(movedAreas("A1:B4 C6:D9  E20", ROWS)).toBe("A1:B4 C9:D12  E23");
});

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";

/** A table in A1:B3 with totals in row 4, and below it all that may refer to cells. Invented. */
const book = () => {
  const relations = (list: readonly [string, string][]) =>
    `<Relationships xmlns="${PACKAGE}/relationships">${list
      .map(
        ([type, target], at) =>
          `<Relationship Id="rId${at + 1}" Type="${OFFICE}/${type}" Target="${target}"/>`,
      )
      .join("")}</Relationships>`;
  const text = (at: string, value: string) =>
    `<c r="${at}" t="inlineStr"><is><t>${value}</t></is></c>`;
  const parts: Readonly<Record<string, string>> = {
    "[Content_Types].xml": `<Types xmlns="${PACKAGE}/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>`,
    "_rels/.rels": relations([["officeDocument", "xl/workbook.xml"]]),
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="Own" sheetId="1" r:id="rId1"/><sheet name="Other" sheetId="2" r:id="rId2"/></sheets><definedNames><definedName name="Limit">Own!$B$7</definedName></definedNames></workbook>`,
    "xl/_rels/workbook.xml.rels": relations([
      ["worksheet", "worksheets/sheet1.xml"],
      ["worksheet", "worksheets/sheet2.xml"],
      ["calcChain", "calcChain.xml"],
    ]),
    "xl/calcChain.xml": `<calcChain xmlns="${MAIN}"><c r="B4" i="1"/></calcChain>`,
    "xl/worksheets/sheet1.xml": `<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><dimension ref="A1:C9"/><sheetViews><sheetView workbookViewId="0"><selection activeCell="B7" sqref="B7"/></sheetView></sheetViews><sheetData><row r="1">${text("A1", "Panel")}${text("B1", "R")}</row><row r="2">${text("A2", "H01")}<c r="B2"><v>31</v></c></row><row r="3">${text("A3", "H02")}<c r="B3"><v>32</v></c></row><row r="4">${text("A4", "mean")}<c r="B4"><f>SUBTOTAL(101,B2:B3)</f><v>31.5</v></c></row><row r="7" ht="20" customHeight="1">${text("A7", "limit")}<c r="B7" s="0"><v>50</v></c><c r="C7"><f t="shared" ref="C7:C9" si="0">B7*2</f><v>100</v></c></row><row r="8"><c r="C8"><f t="shared" si="0"/><v>0</v></c></row><row r="9"><c r="C9"><f t="shared" si="0"/><v>0</v></c></row></sheetData><mergeCells count="1"><mergeCell ref="A8:B8"/></mergeCells><conditionalFormatting sqref="B2:B3 B7"><cfRule type="expression" priority="1"><formula>B2&gt;$B$7</formula></cfRule></conditionalFormatting><dataValidations count="1"><dataValidation type="decimal" sqref="B2:B3"><formula1>0</formula1><formula2>$B$7</formula2></dataValidation></dataValidations><hyperlinks><hyperlink ref="A7:B7" location="Own!B7"/></hyperlinks><rowBreaks count="1" manualBreakCount="1"><brk id="6" max="16383" man="1"/></rowBreaks><drawing r:id="rId2"/><legacyDrawing r:id="rId4"/><tableParts count="1"><tablePart r:id="rId1"/></tableParts></worksheet>`,
    "xl/worksheets/_rels/sheet1.xml.rels": relations([
      ["table", "../tables/table1.xml"],
      ["drawing", "../drawings/drawing1.xml"],
      ["comments", "../comments1.xml"],
      ["vmlDrawing", "../drawings/vmlDrawing1.vml"],
    ]),
    "xl/worksheets/sheet2.xml": `<worksheet xmlns="${MAIN}"><sheetData><row r="7"><c r="A7"><f>Own!B7+B7</f><v>50</v></c></row></sheetData></worksheet>`,
    "xl/tables/table1.xml": `<table xmlns="${MAIN}" id="1" name="Readings" displayName="Readings" ref="A1:B4" totalsRowCount="1"><autoFilter ref="A1:B3"/><tableColumns count="2"><tableColumn id="1" name="Panel" totalsRowLabel="mean"/><tableColumn id="2" name="R" totalsRowFunction="average"/></tableColumns></table>`,
    "xl/drawings/drawing1.xml": `<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing"><xdr:twoCellAnchor><xdr:from><xdr:col>4</xdr:col><xdr:row>1</xdr:row></xdr:from><xdr:to><xdr:col>6</xdr:col><xdr:row>8</xdr:row></xdr:to></xdr:twoCellAnchor></xdr:wsDr>`,
    "xl/drawings/vmlDrawing1.vml": `<xml xmlns:x="urn:schemas-microsoft-com:office:excel"><x:ClientData><x:Anchor>2, 15, 6, 2, 4, 15, 9, 4</x:Anchor><x:Row>6</x:Row><x:Column>1</x:Column></x:ClientData></xml>`,
    "xl/charts/chart1.xml": `<c:chartSpace xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart"><c:f>Own!$B$2:$B$7</c:f></c:chartSpace>`,
    "xl/comments1.xml": `<comments xmlns="${MAIN}"><authors><author/></authors><commentList><comment ref="B7" authorId="0"><text><t>agreed (invented)</t></text></comment></commentList></comments>`,
  };
  return zipSync(
    Object.fromEntries(Object.entries(parts).map(([name, xml]) => [name, strToU8(xml)])),
  );
};

const added = async (file: Uint8Array) => {
  const table = tablesOf(await readBook(file))[0] as TableSnapshot;
  return writeCells(file, [
    {
      table,
      added: 2,
      writes: [
        { row: 2, column: 0, value: "H03" },
        { row: 2, column: 1, value: 33 },
        { row: 3, column: 0, value: "H04" },
      ],
    },
  ]);
};

test("rows added to a table with totals move all that stands below, and all that refers to it", async () => {
  const after = await added(book());
  const [own, other] = (await readBook(after)).sheets;
  const cell = (row: number, column: number) => own?.cells?.cell(row - 1, column);
  const formula = (row: number, column: number) => own?.cells?.formula(row - 1, column);
  expect([cell(4, 0), cell(4, 1), cell(5, 0), cell(6, 0)]).toEqual(["H03", 33, "H04", "mean"]);
  expect([cell(9, 0), cell(9, 1)]).toEqual(["limit", 50]);
  expect(formula(6, 1)).toBe("SUBTOTAL(101,B2:B3)");
  expect([formula(9, 2), formula(10, 2), formula(11, 2)]).toEqual(["B9*2", "B10*2", "B11*2"]);
  expect(own?.tables[0]).toMatchObject({ top: 0, rowCount: 4, headers: ["Panel", "R"] });
  expect(own?.cells?.note?.(8, 1)).toBe("agreed (invented)");
  expect(own?.cells?.merges).toEqual([{ top: 9, left: 0, bottom: 9, right: 1 }]);
  expect(other?.cells?.formula(6, 0)).toBe("Own!B9+B7");
  for (const [part, said] of [
    ["xl/worksheets/sheet1.xml", '<selection activeCell="B9" sqref="B9"/>'],
    ["xl/worksheets/sheet1.xml", '<row r="9" ht="20" customHeight="1">'],
    ["xl/worksheets/sheet1.xml", 'sqref="B2:B5 B9"'],
    ["xl/worksheets/sheet1.xml", "<formula>B2&gt;$B$9</formula>"],
    ["xl/worksheets/sheet1.xml", 'sqref="B2:B5"><formula1>0</formula1><formula2>$B$9'],
    ["xl/worksheets/sheet1.xml", 'ref="A9:B9" location="Own!B9"'],
    ["xl/worksheets/sheet1.xml", '<brk id="8"'],
    ["xl/workbook.xml", "Own!$B$9"],
    ["xl/tables/table1.xml", 'ref="A1:B6" totalsRowCount="1"><autoFilter ref="A1:B5"/>'],
    ["xl/drawings/drawing1.xml", "<xdr:row>1</xdr:row>"],
    ["xl/drawings/drawing1.xml", "<xdr:row>10</xdr:row>"],
    ["xl/drawings/vmlDrawing1.vml", "2, 15, 8, 2, 4, 15, 11, 4</x:Anchor><x:Row>8<"],
    ["xl/charts/chart1.xml", "Own!$B$2:$B$9"],
  ] as const)
    expect(textOf(after, part)).toContain(said);
  // It named cells that now hold no formula; a spreadsheet makes it anew.
  expect(Object.keys(unzipSync(after))).not.toContain("xl/calcChain.xml");
});
