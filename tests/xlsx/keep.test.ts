import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import type { Finding } from "../../src/check/findings/finding";
import { a1 } from "../../src/sheets/cells/address";
import { planFor } from "../../src/sheets/plan/plan";
import type { Snapshot, TableSnapshot } from "../../src/sheets/snapshot";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { markFile } from "../../src/xlsx/writeMarks";
import { longLineup } from "../support/lineups";
import { BOOK, RICH, SHEET, textOf } from "./richBooks";

/**
 * Nothing of somebody's workbook is lost: of workbooks of several writers (openpyxl, LibreOffice, packages
 * made by hand) every part that was not meant is byte for byte the same after a change, and a change that is
 * changed back leaves no trace. Parts are unpacked by fflate, which reads and writes none of them here.
 */
const FOLDERS = ["tests/xlsx/fixtures", "tests/judged/writers"];
const CORPUS: readonly (readonly [name: string, file: Uint8Array])[] = [
  ...FOLDERS.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => /\.xls[xm]$/.test(name) && !name.startsWith("records"))
      .map((name): [string, Uint8Array] => [name, readFileSync(join(folder, name))]),
  ),
  ...Object.entries(RICH).map(([name, make]): [string, Uint8Array] => [name, make().file]),
];

const changed = (before: Uint8Array, after: Uint8Array): string[] => {
  const [was, is] = [unzipSync(before), unzipSync(after)];
  return [...new Set([...Object.keys(was), ...Object.keys(is)])]
    .filter((part) => !equal(was[part], is[part]))
    .sort();
};
const equal = (one: Uint8Array | undefined, other: Uint8Array | undefined) =>
  one !== undefined && other !== undefined && Buffer.compare(one, other) === 0;

/** A sheet of somebody's as a table of one cell, wherever that is. */
const cellOf = (sheet: string, row: number, column: number): TableSnapshot => ({
  name: "any",
  sheet,
  top: 0,
  left: 0,
  headers: ["any"],
  rowCount: 1,
  cell: () => null,
  formula: () => undefined,
  ownLayout: {
    place: () => ({ row, column }),
    holds: () => ({ row, column, value: null }),
    written: (_row, _column, value) => value,
  },
});

const put = (
  file: Uint8Array,
  [sheet, row, column]: Place,
  value: string | number | boolean | null,
) =>
  writeCells(file, [{ table: cellOf(sheet, row, column), writes: [{ row: 0, column: 0, value }] }]);

type Place = readonly [sheet: string, row: number, column: number];

/** Every cell that holds a plain value. */
const plainCells = ({ sheets }: Snapshot): Place[] =>
  sheets.flatMap(({ name, cells }) =>
    Array.from({ length: cells?.rowCount ?? 0 }, (_, row) =>
      Array.from({ length: cells?.columnCount ?? 0 }, (_, column): Place[] =>
        (cells?.cell(row, column) ?? null) !== null && cells?.formula(row, column) === undefined
          ? [[name, row, column]]
          : [],
      ).flat(),
    ).flat(),
  );

const cellsOf = ({ sheets }: Snapshot) =>
  sheets.map(({ name, cells, tables }) => ({
    name,
    tables: tables.map(({ name, top, left, headers, rowCount }) => ({
      name,
      top,
      left,
      headers,
      rowCount,
    })),
    cells: Array.from({ length: cells?.rowCount ?? 0 }, (_, row) =>
      Array.from({ length: cells?.columnCount ?? 0 }, (_, column) => [
        cells?.cell(row, column) ?? null,
        cells?.formula(row, column),
        cells?.note?.(row, column),
      ]),
    ),
  }));

const value = fc.oneof(
  // No spreadsheet knows a negative nought.
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => number + 0),
  fc.boolean(),
  fc.constantFrom("", "> 5.2 GΩ", " blanks ", "_x000D_", "two\nlines", "=1+1", "<&>\"'", "0\u0001"),
  fc.string(),
);

test("the corpus has workbooks of several writers", () => {
  expect(CORPUS.length).toBeGreaterThanOrEqual(17);
});

describe.each(CORPUS)("%s", (_name, file) => {
  test("a change of nothing is the same file, byte for byte", async () => {
    expect(Buffer.compare(await writeCells(file, []), file)).toBe(0);
    expect(Buffer.compare(await markFile(file, []), file)).toBe(0);
  });

  test("a cell written anywhere changes its sheet's part alone, and the cell alone in it", async () => {
    const before = await readBook(file);
    const parts = Object.keys(unzipSync(file));
    const cells = plainCells(before);
    await fc.assert(
      fc.asyncProperty(fc.nat(), value, async (at, value) => {
        const place = cells[at % cells.length] as Place;
        const written = await put(file, place, value);
        const [part = "", ...others] = changed(file, written);
        expect(others).toEqual([]);
        expect(part === "" || parts.includes(part)).toBe(true);
        const wanted = cellsOf(before);
        const cell = wanted.find(({ name }) => name === place[0])?.cells[place[1]]?.[place[2]];
        if (cell) cell[0] = typeof value === "string" ? value.replace(/\r\n?/g, "\n") : value;
        const found = cellsOf(await readBook(written));
        const read = found.find(({ name }) => name === place[0])?.cells[place[1]]?.[place[2]];
        if (read && cell && typeof value === "string") expect(read[0]).toBe(cell[0]);
        expect(found).toEqual(wanted);
      }),
      { numRuns: 15 },
    );
  });

  test("what is changed back leaves no trace", async () => {
    const before = await readBook(file);
    for (const place of plainCells(before).slice(0, 12)) {
      const cell = before.sheets.find(({ name }) => name === place[0])?.cells;
      const back = await put(
        await put(file, place, "something else"),
        place,
        cell?.cell(place[1], place[2]) ?? null,
      );
      expect(cellsOf(await readBook(back))).toEqual(cellsOf(before));
      expect(textsBut(place, back)).toEqual(textsBut(place, file));
    }
  });

  test("marks change their sheets and the styles alone; taken off, the sheets are as they were", async () => {
    const before = await readBook(file);
    const findings = before.sheets.map(
      ({ name }): Finding => ({
        rule: "future-date",
        weight: "query",
        sheet: name,
        address: "B2",
        message: "invented",
      }),
    );
    const marked = await markFile(file, findings);
    const parts = changed(file, marked);
    expect(parts.length).toBeGreaterThan(1);
    expect(parts.filter((part) => !/worksheets\/[^/]+\.xml$|styles\.xml$/.test(part))).toEqual([]);
    expect(Buffer.compare(await markFile(marked, findings), marked)).toBe(0);
    expect(changed(file, await markFile(marked, []))).toEqual([]);
  });

  test("a lineup built onto it adds parts and changes none of its sheets; built again it changes nothing", async () => {
    const plan = planFor(longLineup(1));
    const built = await writeBook(plan, file);
    const was = unzipSync(file);
    const others = changed(file, built.file).filter((part) => was[part] !== undefined);
    expect(others.filter((part) => !LISTS.test(part))).toEqual([]);
    const again = await writeBook(plan, built.file);
    expect(Buffer.compare(again.file, built.file)).toBe(0);
    const own = cellsOf(await readBook(built.file)).slice(0, (await readBook(file)).sheets.length);
    expect(own).toEqual(cellsOf(await readBook(file)));
  }, 120_000);
});

/** Parts that list what a workbook has. */
const LISTS =
  /^(\[Content_Types\]\.xml|xl\/_rels\/workbook\.xml\.rels|xl\/(workbook|styles|sharedStrings|calcChain)\.xml)$/;

/** All parts as text but for one cell, which may say the same in other words, such as `&#937;` for Ω. */
const textsBut = ([, row, column]: Place, file: Uint8Array) => {
  const cell = new RegExp(`<c r="${a1(row, column)}"[^>]*?(?:/>|>.*?</c>)`, "gs");
  return Object.entries(unzipSync(file)).map(([name, bytes]) => {
    const text = new TextDecoder("latin1").decode(bytes);
    return [name, /worksheets\//.test(name) ? text.replace(cell, "") : text];
  });
};

test.each([
  ["a pivot table", ["pivotTable1", "pivotCacheDefinition1", "pivotCacheRecords1"]],
  ["macros", ["vbaProject"]],
  ["slicers", ["slicer1", "slicerCache1", "drawing1"]],
  ["form controls", ["ctrlProp1", "vmlDrawing1"]],
  ["threaded comments", ["threadedComment1", "person"]],
])("%s stay in the package with their types, and what relates them", async (name, kept) => {
  const file = RICH[name]?.().file ?? new Uint8Array();
  const written = await put(file, ["Own", 1, 2], 33);
  const [was, is] = [unzipSync(file), unzipSync(written)];
  for (const part of Object.keys(was).filter((one) => kept.some((word) => one.includes(word))))
    expect(equal(was[part], is[part]), part).toBe(true);
  expect(changed(file, written)).toEqual([SHEET]);
  expect(textOf(written, BOOK)).toBe(textOf(file, BOOK));
});
