import { expect, test, vi } from "vitest";
import { readExcel } from "../../src/excel/workbook";
import { sentBytes } from "../../src/excel/write/chunks";
import type { Snapshot } from "../../src/sheets/snapshot";
import { addSheet, newId, putBox } from "../../src/standin/book";
import { check } from "../support/checkBook";
import { filledPlan } from "../support/fill";
import { longLineup } from "../support/lineups";
import {
  buildJob,
  type Cost,
  checkJob,
  cost,
  costOf,
  fillJob,
  markJob,
  repeatedRows,
} from "./excelJobs";
import { bigExcel, inExcel } from "./excelSupport";

const MOST = 4_000_000;
/** The fewest batches that so many bytes fit into, at what a batch is filled up to, and a few round trips before. */
const bounded = ({ batches, up, down, greatest }: Cost, before: number) => {
  expect(greatest).toBeLessThan(MOST);
  expect(batches).toBeLessThanOrEqual(before + Math.ceil((1.25 * Math.max(up, down)) / 3_300_000));
};

test("building: 5 panels take three batches, 200 as many more as their bytes need, and building again writes nothing", async () => {
  const few = await buildJob(5);
  const many = await buildJob(200);
  expect(few.first.cost.batches).toBe(3);
  bounded(many.first.cost, 2);
  bounded(many.again.cost, 3);
  expect(many.again.value.change.every(({ writes }) => writes.length === 0)).toBe(true);
});

test("reading 100,000 rows takes as many batches as its bytes need, none over 4 MB", async () => {
  const host = repeatedRows(100_000);
  const read = await cost(host, (context) => readExcel(context));
  const rows = read.value.sheets.flatMap(({ tables }) => tables).map(({ rowCount }) => rowCount);
  expect(Math.max(...rows)).toBe(100_000);
  bounded(read.cost, 2);
});

test("the first findings take the bytes of the values and little more, and are those of the whole", async () => {
  const host = bigExcel(filledPlan(longLineup(60), 1));
  let early: { snapshot: Snapshot; down: number } | undefined;
  const whole = await cost(host, (context) =>
    readExcel(context, {
      valuesRead: async (snapshot) => {
        early = { snapshot, down: costOf(host).down };
      },
    }),
  );
  const values = whole.value.sheets
    .flatMap(({ tables }) => tables)
    .reduce((sum, table) => {
      const lines = Array.from({ length: table.rowCount }, (_, row) =>
        table.headers.map((_header, column) => table.cell(row, column) ?? ""),
      );
      return sum + sentBytes(lines);
    }, 0);
  expect(early?.down).toBeLessThan(1.2 * values);
  expect(whole.cost.down).toBeGreaterThan(2 * values);
  bounded(whole.cost, 3);
  const told = [early?.snapshot, whole.value].map((snapshot) => {
    const checked = check(snapshot as Snapshot, 46_400);
    return checked.ok ? [checked.report.counts, checked.report.findings] : [];
  });
  expect(told[0]).toEqual(told[1]);
});

test("a workbook that one answer holds is read in one go", async () => {
  const host = bigExcel(filledPlan(longLineup(2), 1));
  const valuesRead = vi.fn();
  await inExcel(host, (context) => readExcel(context, { valuesRead }));
  expect(valuesRead).not.toHaveBeenCalled();
});

test("reading many small tables takes no more batches than reading one", async () => {
  const host = repeatedRows(200);
  const one = await checkJob(host);
  for (let index = 0; index < 100; index++) {
    const sheet = addSheet(host.book, `Own ${index}`);
    for (const row of [0, 1, 2, 3]) putBox(host.book, sheet, row, 0, { value: `text ${row}` });
    sheet.tables.push({
      id: newId(host.book),
      name: `Own${index}`,
      area: { top: 0, left: 0, bottom: 3, right: 0 },
      showTotals: false,
      properties: {},
    });
  }
  const hundred = await checkJob(host);
  expect(hundred.cost.batches).toBe(one.cost.batches);
});

test("marking: 5,000 rows take as many batches as 50, and few formats", async () => {
  const host = repeatedRows(12_000);
  const few = await markJob(host, 50);
  const many = await markJob(host, 5_000);
  expect(many.marked.value.cells).toBe(5_000);
  expect(many.marked.cost.batches).toBe(few.marked.cost.batches);
  expect(many.marked.value.formats).toBeLessThan(40);
  bounded(many.marked.cost, 3);
  bounded(many.cleared.cost, 4);
});

/** Excel keeps the ranges that are written; the client has it forget them in one batch more, when all is done. */
const RELEASE = 1;

test("an edit of one cell costs one batch where it was just read, else one to look and one to write", async () => {
  const host = repeatedRows(12_000);
  const snapshot = await inExcel(host, (context) => readExcel(context));
  const fresh = await fillJob(host, snapshot, 1, { fresh: true });
  expect([fresh.cost.batches, fresh.value.written.length]).toEqual([1 + RELEASE, 1]);
  expect(fresh.cost.up).toBeLessThan(5_000);
  const again = await inExcel(host, (context) => readExcel(context));
  const looked = await fillJob(host, again, 2);
  expect([looked.cost.batches, looked.value.written.length]).toEqual([2 + RELEASE, 1]);
});

test("writing 14 cells takes one round trip where they were just read, and less than half a second of the processor", async () => {
  const host = repeatedRows(2_000);
  const snapshot = await inExcel(host, (context) => readExcel(context));
  const before = process.cpuUsage();
  const { cost, value } = await fillJob(host, snapshot, 14, { fresh: true });
  const { user, system } = process.cpuUsage(before);
  expect([cost.batches, value.written.length]).toEqual([1 + RELEASE, 14]);
  expect(cost.up).toBeLessThan(30_000);
  expect((user + system) / 1e6).toBeLessThan(0.5);
});

test("placing 5,000 readings takes one batch to look and one to write", async () => {
  const host = repeatedRows(12_000);
  const snapshot = await inExcel(host, (context) => readExcel(context));
  const filled = await fillJob(host, snapshot, 5_000);
  expect(filled.value.written).toHaveLength(5_000);
  expect(filled.cost.batches).toBe(2 + RELEASE);
  expect(filled.cost.greatest).toBeLessThan(MOST);
});
