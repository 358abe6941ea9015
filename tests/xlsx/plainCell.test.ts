import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BookError } from "../../src/sheets/bookError";
import { bytesOf } from "../../src/xlsx/package/partText";
import { plainStyles } from "../../src/xlsx/scan/plainStyles";
import { scanSheet } from "../../src/xlsx/scan/scanSheet";

// A cell's attributes and content: ECMA-376 part 1, 18.3.1.4 (c), 18.3.1.40 (f), 18.3.1.96 (v).
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const shared = (index: number) => ["one", "two", "three"][index] ?? "";
const texts = { count: 3, text: shared, plain: shared };

const CONTENTS: readonly (readonly [kind: string, inside: string])[] = [
  ["", ""],
  ["", "<v>21.6</v>"],
  ["", "<v>-3e-7</v>"],
  ["", "<v> 7 </v>"],
  ["", "<v></v>"],
  ["", "<v/>"],
  ["n", "<v>12</v>"],
  ["s", "<v>2</v>"],
  ["b", "<v>1</v>"],
  ["e", "<v>#N/A</v>"],
  ["str", "<v>a &lt; b</v>"],
  ["str", "<v></v>"],
  ["d", "<v>2026-03-01</v>"],
  ["inlineStr", "<is><t>beside</t></is>"],
];

const written = fc.record({
  style: fc.option(fc.integer({ min: 0, max: 900 }), { nil: undefined }),
  formula: fc.constantFrom("", "<f>A1&amp;B1</f>", "<f>SUM(A1:A9)</f>", "<f></f>", "<f/>"),
  content: fc.constantFrom(...CONTENTS),
});

type Written = typeof written extends fc.Arbitrary<infer T> ? T : never;

const LETTERS = ["A", "B", "C", "AA"];

/** Rows of cells; with a second blank behind their names no cell is of the plain form. */
const sheet = (rows: readonly (readonly Written[])[], blank: string) =>
  bytesOf(
    `<worksheet xmlns="${MAIN}"><sheetData>${rows
      .map((cells, row) => `<row r="${row + 1}">${cells.map(cellIn(row, blank)).join("")}</row>`)
      .join("")}</sheetData></worksheet>`,
  );

const cellIn =
  (row: number, blank: string) =>
  ({ style, formula, content: [kind, content] }: Written, at: number): string => {
    const s = style === undefined ? "" : ` s="${style}"`;
    const t = kind === "" ? "" : ` t="${kind}"`;
    const inside = `${formula}${content}`;
    const head = `<c${blank} r="${LETTERS[at]}${row + 1}"${s}${t}`;
    return inside === "" ? `${head}/>` : `${head}>${inside}</c>`;
  };

const anyRows = fc.array(fc.array(written, { maxLength: LETTERS.length }), { maxLength: 6 });

describe("a cell of the plain form", () => {
  it("is read as it is tag by tag", () => {
    fc.assert(
      fc.property(anyRows, (rows) => {
        const [plain, byTag] = ["", " "].map((blank) =>
          scanSheet(sheet(rows, blank), "sheet1.xml", { texts }),
        );
        expect(plain?.cells).toEqual(byTag?.cells);
        expect(plain?.formulas).toEqual(byTag?.formulas);
      }),
      { numRuns: 2000 },
    );
  });

  it("breaks off where it is cut off, at whatever byte", () => {
    const cell: Written = { style: 3, formula: "<f>SUM(A1:A9)</f>", content: ["str", "<v></v>"] };
    const whole = sheet([[cell, cell]], "");
    const last = new TextDecoder().decode(whole).indexOf("</sheetData>");
    for (let end = 0; end <= last; end++)
      expect(() => scanSheet(whole.subarray(0, end), "sheet1.xml", { texts })).toThrow(BookError);
  });

  it("tells its style without the rest of its row", () => {
    const row =
      '<row r="2" ht="28"><c r="A2" s="5"/><c r="C2" s="12"><v>1</v></c><c r="D2"/></row>';
    const bytes = bytesOf(`<x/>${row}`);
    expect(plainStyles(bytes)(4, bytes.length)).toEqual(
      new Map([
        [0, 5],
        [2, 12],
        [3, 0],
      ]),
    );
  });

  it("of another form leaves its row to be read tag by tag", () => {
    const bytes = bytesOf('<row r="2"><c r="A2" s="5"/><c s="6" r="B2"/></row>');
    expect(plainStyles(bytes)(0, bytes.length)).toBeUndefined();
  });
});
