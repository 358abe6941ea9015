import fc from "fast-check";
import { expect, test } from "vitest";
import { answersFor } from "../../src/records/answersFor";
import { alikeIn, cellsOf, keepCells, rowsAlike, rowsOfCells } from "../../src/records/cellsOf";
import type { CellValue, Row } from "../../src/records/kind";

const cell = fc.constantFrom<CellValue>(null, "", "a", "b", 0, 1, true);
const rows = fc.array(fc.record({ one: cell, two: cell, three: cell, four: cell }), {
  maxLength: 300,
});

/** Which cells it reads depends on what it has read. */
const branching = (row: Row): CellValue =>
  row.one === "a"
    ? `${row.two}, ${row.two}`
    : row.one === 1
      ? `${row.three} after ${row.one}`
      : (row.one ?? null);

test("rows have the answer that each would have by itself, whichever cells it follows from", () => {
  fc.assert(
    fc.property(rows, (all) => {
      expect(answersFor(all, branching)).toEqual(all.map(branching));
    }),
  );
});

test("a cell that only a late row reads parts the rows before it", () => {
  const all: Row[] = Array.from({ length: 900 }, (_, at) => ({
    one: at === 800 ? "a" : "b",
    two: at % 3,
  }));
  const answer = (row: Row) => (row.one === "a" ? `${row.two}` : "none");
  expect(answersFor(all, answer)).toEqual(all.map(answer));
});

test("an answer that looks at the row as a whole is right for each row", () => {
  const all = Array.from({ length: 200 }, (_, at): Row => (at % 2 ? { one: 1 } : { two: 1 }));
  const names = (row: Row) => Object.keys({ ...row }).join();
  const has = (row: Row) => "one" in row;
  expect(answersFor(all, names)).toEqual(all.map(names));
  expect(answersFor(all, has)).toEqual(all.map(has));
});

test("what rows have in common is worked out once for all of them, and readings each by itself", () => {
  let worked = 0;
  const all: Row[] = Array.from({ length: 3000 }, (_, at) => ({ one: at % 4, two: at * 1.5 }));
  const counted = (read: (row: Row) => CellValue) => {
    worked = 0;
    answersFor(all, (row) => {
      worked += 1;
      return read(row);
    });
    return worked;
  };
  expect(counted(({ one }) => `${one}`)).toBeLessThan(100);
  expect(counted(({ two }) => `${two}`)).toBeLessThan(3100);
});

test("groups of rows are those of their cells taken together", () => {
  fc.assert(
    fc.property(rows, fc.subarray(["one", "two", "three", "four"]), (all, ids) => {
      const name = (row: Row) => JSON.stringify(ids.map((id) => row[id]));
      const { group, first } = alikeIn(all, ids);
      expect(first.map((row) => name(all[row] ?? {}))).toEqual([...new Set(all.map(name))]);
      all.forEach((row, at) => {
        expect(name(all[first[group[at] ?? -1] ?? -1] ?? {})).toBe(name(row));
      });
      expect(rowsAlike(all, ["one"], ({ one }) => one === "a")).toEqual(
        all.flatMap(({ one }, at) => (one === "a" ? [at] : [])),
      );
    }),
  );
});

test("rows are made of columns, and a column that is set anew is grouped anew", () => {
  const columns = new Map<string, readonly CellValue[]>([
    ["one", ["a", "a", "b"]],
    ["two", [1, 2, null]],
  ]);
  const made = rowsOfCells(columns, 3);
  expect(made).toEqual([
    { one: "a", two: 1 },
    { one: "a", two: 2 },
    { one: "b", two: null },
  ]);
  expect(cellsOf(made, "two")).toBe(columns.get("two"));
  expect(cellsOf(made, "three")).toEqual([null, null, null]);
  expect([...alikeIn(made, ["one"]).group]).toEqual([0, 0, 1]);
  keepCells(made, "one", ["a", "b", "b"]);
  expect([...alikeIn(made, ["one"]).group]).toEqual([0, 1, 1]);
});
