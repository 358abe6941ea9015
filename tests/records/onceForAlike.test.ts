import fc from "fast-check";
import { expect, test } from "vitest";
import type { CellValue, Row } from "../../src/records/kind";
import { onceForAlike } from "../../src/records/onceForAlike";

const cell = fc.constantFrom<CellValue>(null, "", "a", "b", 0, 1, true);
const rows = fc.array(fc.record({ one: cell, two: cell, three: cell, four: cell }), {
  maxLength: 300,
});

/** Which cells it reads depends on what it has read. */
const branching = (row: Row) =>
  row.one === "a"
    ? `${row.two}, ${row.two}`
    : row.one === 1
      ? `${row.three} after ${row.one}`
      : row.one;

test("rows have the answer that each would have by itself, whichever cells it follows from", () => {
  fc.assert(
    fc.property(rows, (all) => {
      const once = onceForAlike(branching);
      expect(all.map(once)).toEqual(all.map(branching));
    }),
  );
});

test("an answer that looks at the row as a whole is right for each row", () => {
  const names = (row: Row) => Object.keys({ ...row }).join();
  const has = (row: Row) => "one" in row;
  const all: Row[] = [{ one: 1 }, { two: 1 }, { one: 1 }];
  expect(all.map(onceForAlike(names))).toEqual(["one", "two", "one"]);
  expect(all.map(onceForAlike(has))).toEqual([true, false, true]);
});

test("what rows have in common is worked out once for all of them", () => {
  let worked = 0;
  const once = onceForAlike((row: Row) => {
    worked += 1;
    return `${row.one} ${row.two}`;
  });
  for (let at = 0; at < 1000; at++) once({ one: at % 3, two: "a", three: at });
  expect(worked).toBe(3);
});

test("where every row has an answer of its own, none is remembered, and each is right", () => {
  const once = onceForAlike((row: Row) => `${row.one}`);
  const all = Array.from({ length: 1000 }, (_, one) => ({ one }));
  expect(all.map(once)).toEqual(all.map(({ one }) => String(one)));
});
