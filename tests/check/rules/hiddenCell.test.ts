import { expect, test } from "vitest";
import type { SheetCells, Snapshot, TableSnapshot } from "../../../src/sheets/snapshot";
import { CONTACT, ofRule, sound } from "../support";

/** The workbook with what its reader tells of the cells of a table's sheet. */
const shown = (cells: (table: TableSnapshot) => Partial<SheetCells>): Snapshot => {
  const { snapshot } = sound();
  return {
    ...snapshot,
    sheets: snapshot.sheets.map((one) => {
      const [table] = one.tables;
      if (table?.name !== CONTACT) return one;
      const nothing: SheetCells = {
        rowCount: 0,
        columnCount: 0,
        cell: () => null,
        formula: () => undefined,
      };
      return { ...one, cells: { ...nothing, ...one.cells, ...cells(table) } };
    }),
  };
};
const columnOf = ({ headers, left }: TableSnapshot, header: string) =>
  left + headers.indexOf(header);

test("readings in the colour of their ground are told once a column, at the first", () => {
  const found = ofRule(
    shown((table) => ({
      unseen: (row, column) =>
        column === columnOf(table, "R µΩ") && [6, 8].includes(row) ? "colour" : undefined,
    })),
    "hidden-cell",
  );
  expect(found.map(({ column, weight }) => [column, weight])).toEqual([["R µΩ", "query"]]);
  expect(found[0]?.message).toMatch(/ and 1 more row: "R µΩ" is written in the colour/);
});

test("a format that shows another result is told at its cell", () => {
  const found = ofRule(
    shown((table) => ({
      unseen: (row, column) =>
        column === columnOf(table, "Result") && row === 6 ? "format" : undefined,
    })),
    "hidden-cell",
  );
  expect(found.map(({ column }) => column)).toEqual(["Result"]);
  expect(found[0]?.message).toContain("does not show the value that is stored");
});

test("a hidden column of readings is told once; a hidden key or limit is not", () => {
  const hiding = (header: string) =>
    ofRule(
      shown((table) => ({ isColumnHidden: (column) => column === columnOf(table, header) })),
      "hidden-cell",
    );
  expect(hiding("R µΩ").map(({ message }) => message)).toEqual([
    expect.stringMatching(/^The column "R µΩ", with \d+ values, is hidden; show it\.$/),
  ]);
  expect(hiding("Panel")).toEqual([]);
});

test("nothing is said where the way in tells nothing of it", () => {
  expect(ofRule(sound().snapshot, "hidden-cell")).toEqual([]);
});

test("a column that a table itself says is hidden, as Excel tells, is told like one of a file", () => {
  const { snapshot } = sound();
  const hiding = (header: string): Snapshot => ({
    ...snapshot,
    sheets: snapshot.sheets.map((one) => ({
      ...one,
      tables: one.tables.map((table) =>
        table.name === CONTACT
          ? { ...table, hiddenColumns: new Set([table.headers.indexOf(header)]) }
          : table,
      ),
    })),
  });
  expect(ofRule(hiding("R µΩ"), "hidden-cell").map(({ column }) => column)).toEqual(["R µΩ"]);
  expect(ofRule(hiding("Panel"), "hidden-cell")).toEqual([]);
});
