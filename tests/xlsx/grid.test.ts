import fc from "fast-check";
import { expect, test } from "vitest";
import type { CellValue } from "../../src/records/kind";
import { buffersOf, cellIn, gridOf } from "../../src/xlsx/grid";

const cell = fc.oneof(
  fc.constant(null),
  fc.double({ noNaN: true }),
  fc.boolean(),
  fc.constantFrom("", "Pass", "#REF!"),
  fc.string(),
);
const rows = fc.array(fc.option(fc.array(cell, { maxLength: 6 }), { nil: undefined }), {
  maxLength: 8,
});
const asItIs = (value: CellValue | undefined) => value ?? null;

test("a grid holds every cell of its rows, and nothing beyond them", () => {
  fc.assert(
    fc.property(rows, (rows) => {
      const cell = cellIn(gridOf(rows, asItIs));
      for (let row = -1; row <= rows.length; row++)
        for (let column = -1; column <= 6; column++)
          expect(cell(row, column)).toBe(rows[row]?.[column] ?? null);
    }),
  );
});

test("a grid that was handed to another thread is the same there and gone here", () => {
  fc.assert(
    fc.property(rows, (rows) => {
      const grid = gridOf(rows, asItIs);
      const there = structuredClone(grid, { transfer: buffersOf(grid) });
      expect(grid.starts).toHaveLength(0);
      const cell = cellIn(there);
      for (const [row, cells = []] of rows.entries())
        for (const [column, value] of cells.entries()) expect(cell(row, column)).toBe(value);
    }),
  );
});

test("equal texts are kept once, also among many", () => {
  const many = Array.from({ length: 1000 }, (_, row) => [`L${row % 3}`, true, row]);
  expect(gridOf(many, asItIs).values).toEqual([null, "L0", true, "L1", "L2"]);
});
