import { describe, expect, test } from "vitest";
import { cellChange, cellChanges, isSameFrame } from "../../src/standin/bench/gridChanges";
import { sheetData } from "../../src/standin/bench/sheetData";
import { addSheet, newBook, putBox } from "../../src/standin/book";

const shown = () => {
  const book = newBook();
  const sheet = addSheet(book, "Contacts");
  for (let row = 0; row < 50; row++) putBox(book, sheet, row, 0, { value: row });
  putBox(book, sheet, 1, 1, { value: "=H01 Breaker Q0" });
  putBox(book, sheet, 2, 1, { value: 3, formula: "A3+1" });
  return { book, sheet, data: () => sheetData(book, sheet) };
};

describe("what the grid is told of a workbook that has changed", () => {
  test("nothing where nothing has", () => {
    const { data } = shown();
    expect(cellChanges(data().cellData, data().cellData)).toEqual({ changes: {}, kind: "none" });
    expect(isSameFrame(data(), data())).toBe(true);
  });

  test("the cells that hold something else, and no other", () => {
    const { book, sheet, data } = shown();
    const before = data();
    putBox(book, sheet, 4, 0, { value: "> 5 GΩ" });
    putBox(book, sheet, 5, 0);
    putBox(book, sheet, 6, 0, { value: 7, formula: "A6" });
    putBox(book, sheet, 2, 1, { value: 3 });
    expect(cellChanges(before.cellData, data().cellData)).toEqual({
      changes: {
        2: { 1: { v: 3, f: null } },
        4: { 0: { v: "> 5 GΩ", f: null, t: 1 } },
        5: { 0: null },
        6: { 0: { v: 7, f: "=A6" } },
      },
      kind: "content",
    });
  });

  test("another result of the same formula is the grid's own", () => {
    expect(cellChange({ f: "=A1", v: 1 }, { f: "=A1", v: 2 })).toBeUndefined();
  });

  test("a colour that goes is taken away, and that alone is a matter of looks", () => {
    const { book, sheet, data } = shown();
    const area = { top: 1, left: 1, bottom: 1, right: 1 };
    sheet.looks.push({ area, property: "font.bold", value: true });
    const plain = data();
    sheet.looks.push({ area, property: "fill.color", value: "#ffffff" });
    const filled = data();
    expect(cellChanges(plain.cellData, filled.cellData)).toEqual({
      changes: { 1: { 1: { s: { bl: 1, bg: { rgb: "#ffffff" } } } } },
      kind: "looks",
    });
    expect(cellChanges(filled.cellData, plain.cellData).changes).toEqual({
      1: { 1: { s: { bl: 1, bg: null } } },
    });
    expect(book.sheets).toHaveLength(1);
  });

  test("the sheet is shown anew where more than cells has changed, or it has outgrown its room", () => {
    const { book, sheet, data } = shown();
    const before = data();
    putBox(book, sheet, 69, 0, { value: 1 });
    expect(isSameFrame(before, data())).toBe(true);
    putBox(book, sheet, 70, 0, { value: 1 });
    expect(isSameFrame(before, data())).toBe(false);
    const merged = shown();
    merged.sheet.merges.push({ top: 0, left: 0, bottom: 0, right: 1 });
    expect(isSameFrame(before, merged.data())).toBe(false);
  });
});
