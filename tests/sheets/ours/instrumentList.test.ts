import { expect, test } from "vitest";
import type { CellValue } from "../../../src/records/kind";
import { instrumentList } from "../../../src/sheets/ours/instrumentList";
import { instrumentsOf } from "../../../src/sheets/ours/instrumentSheet";
import type { SheetCells, Snapshot } from "../../../src/sheets/snapshot";

/** Invented lists. */
const sheet = (rows: readonly (readonly CellValue[])[]): SheetCells => ({
  rowCount: rows.length,
  columnCount: Math.max(...rows.map((row) => row.length)),
  cell: (row, column) => rows[row]?.[column] ?? null,
  formula: () => undefined,
});

const LIST = sheet([
  ["Test equipment"],
  [],
  ["Instrument No.", "Description", "S/N", "Calibration date", "Cal. due"],
  ["MEG-07", "Insulation tester", "Z-1", 46_054, 46_419],
  ["MOM-02", "Micro-ohmmeter", "Z-2", 45_899, 46_264],
  [null, "spare"],
  ["not of the list"],
]);

test("a list below its titles is read to the first row without an instrument", () => {
  expect(instrumentList(LIST)).toEqual([
    { id: "MEG-07", kind: "Insulation tester", serial: "Z-1", calibrated: 46_054, due: 46_419 },
    { id: "MOM-02", kind: "Micro-ohmmeter", serial: "Z-2", calibrated: 45_899, due: 46_264 },
  ]);
});

test.each([
  [
    "titles without a due date",
    [
      ["Instrument", "Serial"],
      ["A", "1"],
    ],
  ],
  [
    "a fact above a block of readings",
    [
      ["Instrument", "MEG-07"],
      ["Panel", "R (MΩ)"],
      ["H01", 5],
    ],
  ],
  ["an empty sheet", [[]]],
])("no list: %s", (_what, rows) => {
  expect(instrumentList(sheet(rows))).toEqual([]);
});

test("a workbook without our table knows its own list, by Id without regard to case", () => {
  const snapshot: Snapshot = { sheets: [{ name: "Instr", tables: [], cells: LIST }] };
  expect(instrumentsOf(snapshot)?.get("mom-02")).toEqual({
    id: "MOM-02",
    kind: "Micro-ohmmeter",
    serial: "Z-2",
    calibrated: 45_899,
    due: 46_264,
  });
});
