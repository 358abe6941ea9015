import { expect, test } from "vitest";
import { editedRows } from "../../src/sheets/editedRows";
import type { Snapshot, TableSnapshot } from "../../src/sheets/snapshot";

const table: TableSnapshot = {
  name: "T",
  sheet: "S",
  top: 3,
  left: 1,
  headers: ["a", "b", "c"],
  rowCount: 10,
  cell: () => null,
  formula: () => undefined,
};
const snapshot: Snapshot = { sheets: [{ id: "{1}", name: "S", tables: [table] }] };

test.each([
  ["a cell of the body", "C5", [0]],
  ["a block that reaches over the table", "A6:D7", [1, 2]],
  ["two areas", "B5,D14", [0, 9]],
  ["a whole row beside it", "F5", []],
  ["a cell far away", "Z99", []],
])("%s", (_what, address, rows) => {
  expect(editedRows(snapshot, "{1}", address)?.flatMap((one) => one.rows)).toEqual(rows);
});

test.each([
  ["a header", "{1}", "B4"],
  ["the line under the table, into which it grows", "{1}", "B15"],
  ["the column beside it, into which it grows", "{1}", "E6"],
  ["an unknown sheet", "{2}", "B5"],
  ["what is no address", "{1}", "?"],
])("%s asks for the whole workbook", (_what, sheet, address) => {
  expect(editedRows(snapshot, sheet, address)).toBeUndefined();
});
