import { deflateRawSync } from "node:zlib";
import { strFromU8, unzipSync } from "fflate";
import { afterEach, expect, test } from "vitest";
import type { Finding } from "../../src/check/findings/finding";
import { readMemoryXml, readRememberedXml } from "../../src/memory/memory";
import { EXCEL_LIMITS } from "../../src/sheets/plan/excelLimits";
import { limitOf } from "../../src/sheets/plan/limits";
import type { SheetCells } from "../../src/sheets/snapshot";
import { readBook } from "../../src/xlsx/file";
import { markFile } from "../../src/xlsx/writeMarks";
import { readXml } from "../../src/xlsx/xml/readXml";
import { attackBook, cell } from "../support/attackBook";

/** Workbooks that are small as files and would take all the time or memory there is. */
const SLOW = 5_000;
const inTime = async <T>(run: () => T | Promise<T>): Promise<T> => {
  const before = process.cpuUsage();
  const done = await run();
  const { user, system } = process.cpuUsage(before);
  expect((user + system) / 1000).toBeLessThan(SLOW);
  return done;
};
const firstSheet = async (file: Uint8Array): Promise<SheetCells> => {
  const cells = (await readBook(file)).sheets[0]?.cells;
  if (!cells) throw new Error("no cells");
  return cells;
};

afterEach(() => {
  delete process.env.GEARPROOF_LIMITS;
});

test("more texts than are read are refused, with the limit and how it is raised", async () => {
  const strings = (count: number) =>
    attackBook({ sharedStrings: `<sst>${"<si/>".repeat(count)}</sst>` });
  await inTime(() =>
    expect(readBook(strings(limitOf("texts") + 1))).rejects.toThrow(
      /has more than 2,000,000 texts, .*; split it, or raise the limits \(GEARPROOF_LIMITS=2\)/,
    ),
  );
  const before = limitOf("texts");
  process.env.GEARPROOF_LIMITS = "3";
  expect(limitOf("texts")).toBe(3 * before);
  // What is no sensible number raises nothing, and lowers nothing.
  for (const said of ["0", "-1", "x", "1e9"]) {
    process.env.GEARPROOF_LIMITS = said;
    expect(limitOf("texts")).toBe(before);
  }
});

test("more elements than are read whole are refused", async () => {
  const xml = `<a>${"<b/>".repeat(limitOf("elements"))}</a>`;
  await inTime(() => expect(() => readXml(xml)).toThrow(/has more than 500,000 elements/));
});

test("what is remembered is unpacked up to its limit", async () => {
  const packed = (length: number) =>
    `<gearproof xmlns="urn:gearproof:remembered:1">deflate:${deflateRawSync(Buffer.alloc(length, 32)).toString("base64")}</gearproof>`;
  expect(packed(200_000_000).length).toBeLessThan(300_000);
  await inTime(() =>
    expect(() => readRememberedXml(packed(200_000_000))).toThrow(
      /has more than 50,000,000 bytes to remember/,
    ),
  );
  // Blanks are no memory, and no reason not to open the workbook.
  expect(readRememberedXml(packed(1_000))).toBeUndefined();
});

test("custom XML that begins again and again is gone through once", async () => {
  const xml = `<a xmlns="urn:gearproof:memory:1">${"<gearproof >".repeat(200_000)}</a>`;
  expect(await inTime(() => readMemoryXml(xml))).toBeUndefined();
});

test("a stray cell at the far end is no part of what is gone through, and still can be read", async () => {
  const cells = await firstSheet(
    attackBook({
      rows: `<row r="1">${cell("A1", "Panel")}${cell("C1", "R")}</row><row r="1048576">${cell("XFD1048576", "stray")}</row>`,
    }),
  );
  expect([cells.rowCount, cells.columnCount]).toEqual([1, 3]);
  expect(cells.cell(1_048_575, 16_383)).toBe("stray");
});

test("a long sheet without gaps stays as long as it is, also where its rows are wide apart", async () => {
  const row = (at: number) => `<row r="${at}">${cell(`A${at}`, "x")}${cell(`CV${at}`, "y")}</row>`;
  const apart = Array.from({ length: 120 }, (_, at) => row(1 + at * 1_000)).join("");
  const cells = await firstSheet(attackBook({ rows: apart }));
  // 119,001 rows by 100 columns are more places than are gone through for 240 cells.
  expect([cells.rowCount, cells.columnCount]).toEqual([100_000, 100]);
  const fewer = await firstSheet(
    attackBook({ rows: apart.slice(0, apart.indexOf('<row r="90001"')) }),
  );
  expect([fewer.rowCount, fewer.columnCount]).toEqual([89_001, 100]);
});

test("joins reach as far as the sheet, and those that lie over one another are left out", async () => {
  const joins = `<mergeCells>${'<mergeCell ref="A1:XFD1048576"/>'.repeat(10_000)}</mergeCells>`;
  const cells = await inTime(() => firstSheet(attackBook({ inSheet: joins })));
  expect(cells.merges).toEqual([{ top: 0, left: 0, bottom: 4, right: 2 }]);
});

test("array formulas: each cell has that of its own area; a heap of them over one another is refused", async () => {
  const rows = (count: number, ref: (row: number) => string) =>
    Array.from(
      { length: count },
      (_, at) =>
        `<row r="${at + 1}"><c r="A${at + 1}"><f t="array" ref="${ref(at + 1)}">${at}+1</f><v>2</v></c><c r="B${at + 1}"><v>2</v></c></row>`,
    ).join("");
  const all = ({ rowCount, formula }: SheetCells) =>
    Array.from({ length: rowCount }, (_, row) => formula(row, 1));
  const apart = await firstSheet(attackBook({ rows: rows(30_000, (row) => `A${row}:B${row}`) }));
  expect((await inTime(() => all(apart))).slice(0, 3)).toEqual(["0+1", "1+1", "2+1"]);
  const heaped = await firstSheet(attackBook({ rows: rows(30_000, () => "C1:D1048576") }));
  await inTime(() => expect(() => all(heaped)).toThrow(/steps to its array formulas/));
});

test("a mark of more areas than one conditional format has is parted, and taken off as one", async () => {
  const most = EXCEL_LIMITS.conditionalFormatAreas.most;
  // Every second cell of a column, so that none joins another.
  const findings = Array.from(
    { length: most + 5 },
    (_, at): Finding => ({
      rule: "out-of-limits",
      weight: "query",
      sheet: "Own",
      address: `A${2 * at + 1}`,
      message: "Invented.",
    }),
  );
  const blank = attackBook({});
  const sheetOf = (file: Uint8Array) =>
    strFromU8(unzipSync(file)["xl/worksheets/sheet1.xml"] ?? new Uint8Array());
  const areasIn = (file: Uint8Array) =>
    Array.from(sheetOf(file).matchAll(/sqref="([^"]*)"/g), ([, list = ""]) => list.split(" "));
  const marked = await markFile(blank, findings);
  expect(areasIn(marked).map(({ length }) => length)).toEqual([most, 5]);
  expect(areasIn(marked).flat().sort()).toEqual(findings.map(({ address }) => address).sort());
  expect(areasIn(await markFile(marked, []))).toEqual([]);
});
