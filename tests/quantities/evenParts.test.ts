import { expect, test } from "vitest";
import { evenParts } from "../../src/quantities/evenParts";

test.each([
  [0, 8, [0]],
  [1, 8, [1]],
  [8, 8, [8]],
  [9, 8, [5, 4]],
  [22, 8, [8, 7, 7]],
  [22, 1, Array(22).fill(1)],
])("%i in parts of at most %i", (count, most, sizes) => {
  const items = Array.from({ length: count }, (_, at) => at);
  const parts = evenParts(items, most);
  expect(parts.map(({ length }) => length)).toEqual(sizes);
  expect(parts.flat()).toEqual(items);
});
