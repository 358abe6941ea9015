import fc from "fast-check";
import { expect, test } from "vitest";
import type { Report } from "../../src/check/check";
import { applyChanges, readExcel, rereadRows } from "../../src/excel/workbook";
import type { CellValue } from "../../src/records/kind";
import { a1 } from "../../src/sheets/cells/address";
import { editedRows } from "../../src/sheets/editedRows";
import { NOTHING_REMEMBERED } from "../../src/sheets/kept/remembered";
import type { Snapshot } from "../../src/sheets/snapshot";
import { addSheet, boxAt, newBook, newId, putBox } from "../../src/standin/book";
import { type StandInHost, standIn } from "../../src/standin/host";
import { check, recheck, reportOf } from "../support/checkBook";
import { longLineup } from "../support/lineups";
import { inExcel } from "./excelSupport";

const lineup = longLineup(2, { basis: "IEC" });
const TODAY = 46_400;

/** Two sheets as somebody keeps them; all of it invented. */
const SHEETS: Readonly<Record<string, readonly (readonly CellValue[])[]>> = {
  Resistances: [
    ["Invented works, contact resistance"],
    ["Bay", "Test current (A)", "L1 (mΩ)", "L2 (mΩ)", "L3 (mΩ)", "Temp (°C)", "Note"],
    ["=K0001", 100, 0.041, 0.042, null, 20, null],
    ["=K0002", 100, 0.04, 0.043, 0.044, 20, "dry"],
    ["Average", null, 0.0405, 0.0425, 0.044, null, null],
  ],
  Insulation: [
    ["Panel", "Part", "Combination", "Stage", "R (GΩ)", "Temperature (°C)", "Date"],
    ["=K0001", "Circuit", "L1-E", "before", 52, 20, 46_340],
    ["=K0001", "Circuit", "L2-E", "before", 51, 20, 46_340],
    ["=K0002", "Circuit", "L1-E", "before", null, 21, 46_340],
  ],
};
const MAPS = [
  {
    sheet: "Resistances",
    kind: "contact",
    titles: 2,
    last: 4,
    shape: "wide" as const,
    facts: { Part: "Breaker Q0" },
    columns: { Note: "left out" },
  },
  { sheet: "Insulation", kind: "insulation", titles: 1 },
];

async function ownExcel(): Promise<{ host: StandInHost; snapshot: Snapshot; report: Report }> {
  const book = newBook();
  for (const [name, rows] of Object.entries(SHEETS)) {
    const sheet = addSheet(book, name);
    rows.forEach((row, at) => {
      row.forEach((value, column) => {
        if (value !== null) putBox(book, sheet, at, column, { value });
      });
    });
  }
  const host = standIn(book);
  await inExcel(host, (context) =>
    applyChanges(context, { lineup, remembered: { ...NOTHING_REMEMBERED, maps: MAPS } }),
  );
  const snapshot = await read(host);
  host.reset();
  return { host, snapshot, report: reportOf(snapshot, TODAY) };
}

const read = (host: StandInHost) => inExcel(host, (context) => readExcel(context));
const rechecked = (report: Report, after: Snapshot): Report => {
  const checked = recheck(report, after);
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report;
};
const sheetOf = ({ book }: StandInHost, name: string) => {
  const sheet = book.sheets.find((sheet) => sheet.name === name);
  if (!sheet) throw new Error(`no sheet ${name}`);
  return sheet;
};
/** What a person types, and what the pane reads again of it; undefined where it has to read the whole. */
const typed = async (
  host: StandInHost,
  snapshot: Snapshot,
  name: string,
  row: number,
  column: number,
  value: CellValue,
) => {
  const sheet = sheetOf(host, name);
  putBox(host.book, sheet, row, column, value === null ? undefined : { value });
  const rows = editedRows(snapshot, sheet.id, a1(row, column));
  return rows && inExcel(host, (context) => rereadRows(context, snapshot, rows));
};

test("an edited row of a mapped sheet is read again in one round trip, and only its table is judged again", async () => {
  const { host, snapshot, report } = await ownExcel();
  const after = await typed(host, snapshot, "Resistances", 2, 4, 0.043);
  expect(host.batches.length).toBe(1);
  expect(host.batches[0]?.down).toBeLessThan(1_500);
  if (!after) throw new Error("the whole is asked for");
  const again = rechecked(report, after);
  const wanted = reportOf(await read(host), TODAY);
  expect(again.findings).toEqual(wanted.findings);
  expect(again.counts).toEqual(wanted.counts);
  expect(again.counts.pass).toBe(report.counts.pass + 1);
  const same = report.context.tables.map((table, at) => table === again.context.tables[at]);
  expect(
    Object.fromEntries(report.context.tables.map(({ kind }, at) => [kind.id, same[at]])),
  ).toEqual({ contact: false, insulation: true });
});

test("any edits of mapped sheets come to what reading and checking the whole comes to", async () => {
  const edit = fc.record({
    sheet: fc.constantFrom(...Object.keys(SHEETS)),
    row: fc.nat({ max: 5 }),
    column: fc.nat({ max: 7 }),
    value: fc.constantFrom(
      null,
      0.05,
      60,
      "> 2 TΩ",
      "=K0002",
      "=K0009",
      "L3-E",
      "after",
      "?",
      "R (MΩ)",
    ),
  });
  let partly = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 4 }), async (edits) => {
      let { host, snapshot, report } = await ownExcel();
      for (const { sheet, row, column, value } of edits) {
        const next = await typed(host, snapshot, sheet, row, column, value);
        const whole = await read(host);
        const wanted = check(whole, TODAY);
        const again = next ? recheck(report, next) : wanted;
        if (next) partly++;
        expect(again.ok).toBe(wanted.ok);
        if (!again.ok || !wanted.ok) return;
        expect(again.report.findings).toEqual(wanted.report.findings);
        expect(again.report.counts).toEqual(wanted.report.counts);
        [snapshot, report] = [next ?? whole, again.report];
      }
    }),
    { numRuns: 60 },
  );
  expect(partly).toBeGreaterThan(20);
}, 60_000);

test("readings by formula are read again with every edit, since they may come to something else", async () => {
  const { host } = await ownExcel();
  const sheet = sheetOf(host, "Insulation");
  putBox(host.book, sheet, 2, 4, { value: 51, formula: "Resistances!L2*1000" });
  const snapshot = await read(host);
  const report = reportOf(snapshot, TODAY);
  // What Excel works out when the other sheet is typed into.
  const box = boxAt(sheet, 2, 4);
  if (box) box.value = 0.001;
  const after = await typed(host, snapshot, "Resistances", 3, 2, 0.039);
  if (!after) throw new Error("the whole is asked for");
  const again = rechecked(report, after);
  expect(again.findings).toEqual(reportOf(await read(host), TODAY).findings);
  const insulation = again.context.tables.find(({ kind }) => kind.id === "insulation");
  expect(insulation?.rows[1]?.reading).toBe(1);
});

test.each([
  ["a cell below what is used", 9, 0],
  ["a cell beside what is used", 2, 9],
])("%s asks for the whole workbook", async (_what, row, column) => {
  const { host, snapshot } = await ownExcel();
  expect(await typed(host, snapshot, "Resistances", row, column, 1)).toBeUndefined();
});

test("what is used of a sheet grew in the meantime: the whole workbook is asked for", async () => {
  const { host, snapshot } = await ownExcel();
  putBox(host.book, sheetOf(host, "Resistances"), 9, 0, { value: "=K0003" });
  expect(await typed(host, snapshot, "Resistances", 2, 4, 0.04)).toBeUndefined();
});

test("joined cells and notes outlast a row read again", async () => {
  const { host } = await ownExcel();
  const sheet = sheetOf(host, "Insulation");
  sheet.merges.push({ top: 1, left: 0, bottom: 2, right: 0 });
  sheet.notes.push({
    id: newId(host.book),
    area: { top: 1, left: 4, bottom: 1, right: 4 },
    content: "after drying (invented)",
  });
  const after = await typed(host, await read(host), "Insulation", 1, 4, 53);
  const cells = after?.sheets.find(({ name }) => name === "Insulation")?.cells;
  expect(cells?.merges).toEqual([{ top: 1, left: 0, bottom: 2, right: 0 }]);
  expect(cells?.note?.(1, 4)).toBe("after drying (invented)");
});
