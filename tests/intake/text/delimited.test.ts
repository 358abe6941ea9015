import fc from "fast-check";
import { writeCsv } from "hucre/csv";
import { expect, test } from "vitest";
import { delimited } from "../../../src/intake/text/delimited";

const rows = (text: string, delimiter = ";") =>
  Array.from(delimited(text, delimiter), ({ line, cells }) => ({ line, cells }));

test("lines are counted in the file, also past cells that span several", () => {
  expect(rows('a;"b\r\nc"\r\n\r\nd;e')).toEqual([
    { line: 1, cells: ["a", "b\r\nc"] },
    { line: 3, cells: [""] },
    { line: 4, cells: ["d", "e"] },
  ]);
  expect(rows("a;b\rc;d")).toEqual([
    { line: 1, cells: ["a", "b"] },
    { line: 2, cells: ["c", "d"] },
  ]);
});

test("a quotation mark that never closes costs its line, not the file", () => {
  const text = `a;"open\n${"x;1\n".repeat(20_000)}`;
  expect(rows(text)).toHaveLength(20_001);
});

test("what the CSV library writes is read back", () => {
  const cell = fc.string({ unit: fc.constantFrom("a", '"', ";", "\n", "1", ","), maxLength: 6 });
  fc.assert(
    fc.property(
      fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1 }),
      (table) => {
        const plain = table.map((row) => row.map((text) => text.trim()));
        const read = rows(writeCsv(plain, { delimiter: ";", lineSeparator: "\n" }));
        expect(read.map(({ cells }) => cells)).toEqual(plain);
      },
    ),
  );
});

test.each([
  ["to the end of the file", 'a;"b\nc;d\ne;f\n', [1], 3],
  ["with another that does not", 'a;"b\nc;d\ne;"f\ng;h\n', [1, 3], 4],
  ["as a sign in a cell", 'a;12" pipe\nc;d\n', [], 2],
  ["over two lines", 'a;"b\nc"\nd;e\n', [], 2],
  ["beside one that does", 'a;"b";"c\nd;e\n', [1], 2],
])("a quotation mark that does not close, %s, is of its line alone", (_how, text, torn, count) => {
  const read = [...delimited(text, ";")];
  expect(read.flatMap(({ line, unclosed }) => (unclosed ? [line] : []))).toEqual(torn);
  expect(read).toHaveLength(count);
});
