import { expect } from "vitest";
import type { Row } from "../../src/records/kind";
import { isView, withCells } from "../../src/records/rowsOfCells";

// Rows are views on the cells of columns: two are equal where their cells are, which no property of their own tells.
const whole = (row: unknown) => (isView(row) ? withCells(row as Row, {}) : row);

expect.addEqualityTesters([
  function sameCells(one: unknown, other: unknown) {
    return isView(one) || isView(other) ? this.equals(whole(one), whole(other)) : undefined;
  },
]);
