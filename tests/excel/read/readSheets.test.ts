import { expect, test } from "vitest";
import { goTo, readExcel } from "../../../src/excel/workbook";
import { planFor } from "../../../src/sheets/plan/plan";
import { recordTables } from "../../../src/sheets/recordTable";
import { type Snapshot, tablesOf } from "../../../src/sheets/snapshot";
import { addSheet, newBook, newId, putBox, tableNamed } from "../../../src/standin/book";
import { snapshotOfBook } from "../../../src/standin/calculate";
import { insertRows, typeInto } from "../../../src/standin/edits";
import { standIn } from "../../../src/standin/host";
import { filledPlan } from "../../support/fill";
import { longLineup } from "../../support/lineups";
import { builtExcel, contents, inExcel } from "../excelSupport";

test("a plain table: text that looks like a formula, blanks, a formula of the user's, a total row", async () => {
  const book = newBook();
  const sheet = addSheet(book, "Own");
  const rows = [
    ["Panel", "R", "Twice"],
    ["=K01", 5, 10],
    ["007", null, true],
    ["Total", 5, null],
  ];
  rows.forEach((row, at) => {
    row.forEach((value, column) => {
      if (value !== null) putBox(book, sheet, at + 6, column + 2, { value });
    });
  });
  putBox(book, sheet, 7, 4, { value: 10, formula: "[@R]*2" });
  sheet.tables.push({
    id: newId(book),
    name: "Mine",
    area: { top: 6, left: 2, bottom: 9, right: 4 },
    showTotals: true,
    properties: {},
  });
  const snapshot = await inExcel(standIn(book), (context) => readExcel(context));
  expect(snapshot.lineup).toBeUndefined();
  expect(contents(snapshot)).toEqual([
    {
      name: "Mine",
      sheet: "Own",
      top: 6,
      left: 2,
      headers: ["Panel", "R", "Twice"],
      cells: [
        [
          ["=K01", undefined],
          [5, undefined],
          [10, "Mine[[#This Row],[R]]*2"],
        ],
        [
          ["007", undefined],
          [null, undefined],
          [true, undefined],
        ],
      ],
    },
  ]);
});

test("a workbook without tables, and one with nothing of ours", async () => {
  const book = newBook();
  addSheet(book, "Sheet1");
  book.parts.push({ id: newId(book), xml: '<own xmlns="urn:somebody:else">x</own>' });
  const snapshot = await inExcel(standIn(book), (context) => readExcel(context));
  expect(snapshot).toEqual({
    sheets: [{ id: book.sheets[0]?.id, name: "Sheet1", tables: [] }],
    lineup: undefined,
  });
});

test("however it is cut into pieces, the same is read", async () => {
  const host = await builtExcel(filledPlan(longLineup(4), 1));
  const whole = contents(await inExcel(host, (context) => readExcel(context)));
  for (const most of [100_000, 20_000, 3_000]) {
    host.reset();
    const told: number[] = [];
    const pieces = await inExcel(host, (context) =>
      readExcel(context, { most, progress: (done, total) => told.push(done / total) }),
    );
    expect(contents(pieces)).toEqual(whole);
    expect(told.at(-1)).toBe(1);
    expect(told).toEqual([...told].sort((one, other) => one - other));
    expect(told.length).toBeGreaterThan(1);
  }
});

test("rows far longer than those before them are asked for in smaller pieces", async () => {
  const host = await builtExcel(filledPlan(longLineup(30), 2));
  const { sheet, table } = tableNamed(host.book, "GearInsulation");
  for (let row = table.area.bottom - 200; row <= table.area.bottom; row++)
    putBox(host.book, sheet, row, 20, { value: "x".repeat(12_000) });
  host.reset();
  const snapshot = await inExcel(host, (context) => readExcel(context));
  expect(host.batches.map(({ error }) => error)).toContain("ResponsePayloadSizeLimitExceeded");
  const read = tablesOf(snapshot).find(({ name }) => name === "GearInsulation");
  expect(read?.rowCount).toBe(table.area.bottom - 3);
  expect(String(read?.cell(read.rowCount - 1, 20))).toHaveLength(12_000);
});

test("a table that changes while it is read is refused, not read half old and half new", async () => {
  const host = await builtExcel(planFor(longLineup(3)));
  host.between = (batch) => {
    if (batch === 4) insertRows(host.book, tableNamed(host.book, "GearInsulation").sheet, 10, 1);
  };
  await expect(inExcel(host, (context) => readExcel(context, { most: 20_000 }))).rejects.toThrow(
    /GearInsulation was changed while it was read.*read the workbook again/,
  );
});

test("reading can be stopped between two batches", async () => {
  const host = await builtExcel(planFor(longLineup(3)));
  const stop = new AbortController();
  const reading = inExcel(host, (context) =>
    readExcel(context, { most: 20_000, signal: stop.signal, progress: () => stop.abort() }),
  );
  await expect(reading).rejects.toMatchObject({ name: "AbortError" });
  expect(host.batches).toHaveLength(3);
});

test("goes to a cell in one batch", async () => {
  const host = await builtExcel(planFor(longLineup(1)));
  await inExcel(host, (context) => goTo(context, "Contacts", "F6"));
  expect(host.book.active).toEqual({
    sheet: "Contacts",
    area: { top: 5, left: 5, bottom: 5, right: 5 },
  });
  expect(host.batches).toHaveLength(1);
  await expect(inExcel(host, (context) => goTo(context, "Gone", "F6"))).rejects.toThrow(
    /Going to Gone!F6.*has gone in the meantime/,
  );
});

test("columns that are not shown are told, for one round trip more where there are any", async () => {
  const host = await builtExcel(planFor(longLineup(2)));
  const contacts = async () => {
    const before = host.batches.length;
    const { sheets } = await inExcel(host, (context) => readExcel(context));
    const [table] = sheets.find(({ name }) => name === "Contacts")?.tables ?? [];
    return { hidden: [...(table?.hiddenColumns ?? [])], trips: host.batches.length - before };
  };
  const shown = await contacts();
  expect(shown.hidden).toEqual([]);
  const sheet = host.book.sheets.find(({ name }) => name === "Contacts");
  sheet?.hiddenColumns.add(6).add(7);
  expect(await contacts()).toEqual({ hidden: [6, 7], trips: shown.trips + 1 });
});

test("rows and sheets that are not shown are told", async () => {
  const host = await builtExcel(planFor(longLineup(2)));
  const named = async () =>
    Object.fromEntries(
      (await inExcel(host, (context) => readExcel(context))).sheets.map((sheet) => [
        sheet.name,
        [sheet.hidden === true, [...(sheet.tables[0]?.hidden ?? [])]],
      ]),
    );
  expect((await named()).Contacts).toEqual([false, []]);
  const sheetOf = (name: string) => host.book.sheets.find((sheet) => sheet.name === name);
  const first = (sheetOf("Contacts")?.tables[0]?.area.top ?? 0) + 1;
  sheetOf("Contacts")
    ?.hiddenRows.add(first + 1)
    .add(first + 2);
  for (let row = 0; row < 60; row++) sheetOf("Earthing")?.hiddenRows.add(row);
  const gas = sheetOf("Gas");
  if (gas) gas.properties.visibility = "Hidden";
  const found = await named();
  expect(found.Contacts).toEqual([false, [1, 2]]);
  expect(found.Earthing?.[1]).toHaveLength((sheetOf("Earthing")?.tables[0]?.area.bottom ?? 0) - 3);
  expect(found.Gas?.[0]).toBe(true);
});

test("where Excel calculates by hand, what is read is worked out first", async () => {
  const host = await builtExcel(filledPlan(longLineup(1), 1));
  const results = (snapshot: Snapshot) =>
    recordTables(snapshot)
      .find(({ kind }) => kind.id === "contact")
      ?.rows.map(({ result }) => result);
  const before = await inExcel(host, (context) => readExcel(context));
  host.book.isManual = true;
  typeInto(host.book, "GearContact", 0, "R µΩ", 9000);
  expect(results(snapshotOfBook(host.book))).toEqual(results(before));
  const after = await inExcel(host, (context) => readExcel(context));
  expect(after.isManual).toBe(true);
  expect(results(after)?.[0]).toBe("Fail");
  expect(results(before)?.[0]).toBe("Pass");
});
