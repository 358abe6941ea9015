import { expect, test } from "vitest";
import { findingsSheet } from "../../src/check/findings/findingsSheet";
import type { ReadSheets } from "../../src/excel/read/readSheets";
import { applyChanges, applyFills, readExcel } from "../../src/excel/workbook";
import { guessMaps } from "../../src/intake/ownLayout/guessMaps";
import { mappedTables } from "../../src/intake/ownLayout/mappedTables";
import type { CellValue } from "../../src/records/kind";
import { NOTHING_REMEMBERED } from "../../src/sheets/kept/remembered";
import { FINDINGS_SHEET } from "../../src/sheets/ours/findingsTable";
import { writesOf } from "../../src/sheets/plan/appended";
import { addSheet, newBook, putBox } from "../../src/standin/book";
import { calculateRecords } from "../../src/standin/calculate";
import { standIn } from "../../src/standin/host";
import { check, TEXT } from "../support/checkBook";
import { longLineup } from "../support/lineups";
import { inExcel } from "./excelSupport";

const lineup = longLineup(2, { basis: "IEC" });

/** A sheet as an engineer keeps it: a title, units in the titles, phases side by side, a total below. */
const OWN: readonly (readonly CellValue[])[] = [
  ["Invented works, contact resistance"],
  [],
  ["Bay", "Test current (A)", "L1 (mΩ)", "L2 (mΩ)", "L3 (mΩ)", "Temp (°C)", "Tester"],
  ["=K0001", 100, 0.041, 0.042, null, 20, "A. N. Other"],
  ["=K0002", 100, 0.04, 0.043, 0.044, 20, "A. N. Other"],
  ["Average", null, 0.0405, 0.0425, 0.044],
];

const MAP = {
  sheet: "Resistances",
  kind: "contact",
  titles: 3,
  last: 5,
  shape: "wide",
  facts: { Part: "Breaker Q0" },
} as const;

/** Excel with that sheet, set in by two rows and a column from the corner. */
function ownExcel() {
  const book = newBook();
  addSheet(book, "Cover");
  const sheet = addSheet(book, "Resistances");
  OWN.forEach((row, at) => {
    row.forEach((value, column) => {
      if (value !== null) putBox(book, sheet, at, column, { value });
    });
  });
  return standIn(book, calculateRecords);
}

const changed = async (
  host: ReturnType<typeof ownExcel>,
  changes: Parameters<typeof applyChanges>[1],
) => inExcel(host, (context) => applyChanges(context, changes));
const read = (host: ReturnType<typeof ownExcel>, sheets: ReadSheets = "mapped") =>
  inExcel(host, (context) => readExcel(context, { sheets }));

test("a sheet in somebody's own layout is guessed, mapped, filled and checked in Excel as in a file", async () => {
  const host = ownExcel();
  expect((await read(host)).sheets.every(({ cells }) => cells === undefined)).toBe(true);
  const whole = await read(host, "plain");
  expect(guessMaps(whole, lineup).map(({ map }) => map)).toMatchObject([
    { sheet: "Resistances", kind: "contact", titles: 3 },
  ]);

  await changed(host, { lineup, remembered: { ...NOTHING_REMEMBERED, maps: [MAP] } });
  const snapshot = await read(host);
  expect(snapshot.lineup).toEqual(lineup);
  expect(snapshot.maps).toEqual([MAP]);
  const [table] = mappedTables(snapshot, lineup).tables;
  if (!table) throw new Error("nothing mapped");
  expect(table.rows.map(({ object, pole, reading }) => [object, pole, reading ?? null])).toEqual([
    ["=K0001", "L1", 41],
    ["=K0001", "L2", 42],
    ["=K0001", "L3", null],
    ["=K0002", "L1", 40],
    ["=K0002", "L2", 43],
    ["=K0002", "L3", 44],
  ]);

  // A reading in µΩ comes into the layout in its own mΩ; one that changed since is left.
  const cell = (row: number, old: number | null, value: number) => ({
    table,
    row,
    column: "reading",
    old,
    value,
    source: { file: "invented.csv", line: 2 },
  });
  const sheet = host.book.sheets[1];
  const box = sheet?.cells[4]?.[2];
  if (!box) throw new Error("no cell");
  box.value = 0.05;
  const filled = await inExcel(host, (context) =>
    applyFills(context, [cell(2, null, 45), cell(3, 40, 39), cell(4, 43, 43)]),
  );
  expect(filled.written.map(({ row }) => row)).toEqual([2]);
  expect(filled.heldBack.map(({ row }) => row)).toEqual([3]);
  expect(filled.same.map(({ row }) => row)).toEqual([4]);
  expect(sheet?.cells[3]?.[4]?.value).toBeCloseTo(0.045, 12);
  expect(sheet?.cells[4]?.[2]?.value).toBe(0.05);

  const checked = check(await read(host), 46_400);
  if (!checked.ok) throw new Error(checked.reason);
  expect(checked.report.counts).toMatchObject({ pass: 6, fail: 0 });
});

test("findings stand on a sheet of ours, which a later check replaces; a sheet of the user's stays", async () => {
  const host = ownExcel();
  await changed(host, { lineup, remembered: { ...NOTHING_REMEMBERED, maps: [MAP] } });
  const findings = async () => {
    const checked = check(await read(host), 46_400);
    if (!checked.ok) throw new Error(checked.reason);
    const planned = findingsSheet(checked.report, TEXT);
    await changed(host, { renew: [{ planned, writes: writesOf(planned) }] });
    return checked.report.findings.length;
  };
  const first = await findings();
  const rows = () =>
    (host.book.sheets.find(({ name }) => name === FINDINGS_SHEET)?.tables[0]?.area.bottom ?? 0) - 3;
  expect(rows()).toBe(first);
  const box = host.book.sheets[1]?.cells[3]?.[2];
  if (box) box.value = 5;
  const second = await findings();
  expect(rows()).toBe(second);
  expect(host.book.sheets.filter(({ name }) => name === FINDINGS_SHEET)).toHaveLength(1);

  const other = ownExcel();
  // An empty sheet of that name may be one that was begun and cut short; this one is somebody's.
  addSheet(other.book, FINDINGS_SHEET).cells[0] = [{ value: "mine" }];
  const planned = findingsSheet({ findings: [] }, TEXT);
  await expect(changed(other, { renew: [{ planned, writes: writesOf(planned) }] })).rejects.toThrow(
    /a sheet "Findings" of its own.*rename that sheet.*Nothing was changed/s,
  );
});
