import fc from "fast-check";
import { expect, test } from "vitest";
import type { CellValue } from "../../src/records/kind";
import { buffersOf, cellIn, GridBuilder, widthOf } from "../../src/xlsx/scan/grid";

const cell = fc.oneof(
  fc.double({ noNaN: true }),
  fc.boolean(),
  fc.constantFrom("", "Pass", "#REF!"),
  fc.string(),
);
/** Cells as a file may write them: rows and cells left out, also in no order. */
const cells = fc.uniqueArray(fc.tuple(fc.nat(20), fc.nat(12), cell), {
  selector: ([row, column]) => `${row},${column}`,
  maxLength: 60,
});
type Cells = readonly (readonly [row: number, column: number, value: string | number | boolean])[];

const built = (cells: Cells) => {
  const builder = new GridBuilder();
  let before = -1;
  for (const [row, column, value] of cells) {
    if (row !== before) builder.row(row);
    before = row;
    if (typeof value === "number") builder.number(column, value);
    else builder.cell(column, builder.code(value));
  }
  return builder.grid();
};

const holds = (grid: ReturnType<typeof built>, cells: Cells) => {
  const at = new Map<string, CellValue>(
    cells.map(([row, column, value]) => [`${row},${column}`, value]),
  );
  const cell = cellIn(grid);
  for (let row = -1; row <= 21; row++)
    for (let column = -1; column <= 13; column++)
      expect(cell(row, column)).toBe(at.get(`${row},${column}`) ?? null);
  expect(grid.starts).toHaveLength(Math.max(-1, ...cells.map(([row]) => row)) + 2);
  expect(widthOf(grid)).toBe(Math.max(-1, ...cells.map(([, column]) => column)) + 1);
};

test("a grid holds every cell at its place and nothing else, in whatever order they came", () => {
  fc.assert(fc.property(cells, (cells) => holds(built(cells), cells)));
});

test("of a cell that is written twice the later stands", () => {
  const grid = built([
    [3, 1, "first"],
    [1, 0, 7],
    [3, 1, "second"],
  ]);
  expect(cellIn(grid)(3, 1)).toBe("second");
});

test("more cells than a grid begins with", () => {
  const many = Array.from({ length: 5000 }, (_, at): [number, number, number] => [
    at >> 3,
    at & 7,
    at / 7,
  ]);
  const cell = cellIn(built(many));
  for (const [row, column, value] of many) expect(cell(row, column)).toBe(value);
});

test("a grid that was handed to another thread is the same there and gone here", () => {
  fc.assert(
    fc.property(cells, (cells) => {
      const grid = built(cells);
      const there = structuredClone(grid, { transfer: buffersOf(grid) });
      expect(grid.starts).toHaveLength(0);
      holds(there, cells);
    }),
  );
});

test("equal texts are kept once, also among many", () => {
  const many = Array.from({ length: 1000 }, (_, row): [number, number, string] => [
    row,
    0,
    `L${row % 3}`,
  ]);
  expect(built(many).values).toEqual([null, "L0", "L1", "L2"]);
});

test("one cell in the last row and column takes no more room than its row needs", () => {
  const grid = built([[1_048_575, 16_383, "far"]]);
  expect(grid.codes).toHaveLength(1);
  expect(cellIn(grid)(1_048_575, 16_383)).toBe("far");
});
