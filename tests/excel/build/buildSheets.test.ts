import { describe, expect, test } from "vitest";
import { applyPlan, readExcel } from "../../../src/excel/workbook";
import { pageOf } from "../../../src/look/page";
import { FURTHER_KINDS, KINDS } from "../../../src/records/kinds";
import { storedKindWords } from "../../../src/records/kindWords";
import { planFor } from "../../../src/sheets/plan/plan";
import { recordTables } from "../../../src/sheets/recordTable";
import { addSheet, boxAt, newId, putBox, sheetNamed, tableNamed } from "../../../src/standin/book";
import { snapshotOfBook } from "../../../src/standin/calculate";
import { deleteColumns, renameSheet } from "../../../src/standin/edits";
import type { StandInHost } from "../../../src/standin/host";
import { filledPlan } from "../../support/fill";
import { equippedInFull, longLineup } from "../../support/lineups";
import { builtExcel, contents, entries, inExcel, newExcel, state } from "../excelSupport";

const build = (
  host: StandInHost,
  ...rest: [Parameters<typeof applyPlan>[1], Parameters<typeof applyPlan>[2]?]
) => inExcel(host, (context) => applyPlan(context, ...rest));

const inFull = {
  ...equippedInFull(longLineup(3)),
  furtherRecords: FURTHER_KINDS.map((kind) => ({ kind })),
};

test("a sheet of the plan is laid out as in a file: title, cautions, header, frozen panes, page, validations, colours", async () => {
  const { book } = await builtExcel(planFor(inFull));
  for (const kind of KINDS) {
    const sheet = sheetNamed(book, kind.sheet);
    const { table } = tableNamed(book, kind.table);
    expect([table.area.top, table.area.left, table.properties.style]).toEqual([
      3,
      0,
      "TableStyleLight1",
    ]);
    const { across, repeated } = pageOf(kind.columns);
    const words = storedKindWords(kind.id);
    expect(boxAt(sheet, 0, 0)?.value).toBe(words.title);
    expect(boxAt(sheet, 1, repeated)?.value).toBe(words.purpose);
    for (const line of words.cautions) expect(boxAt(sheet, 2, repeated)?.value).toContain(line);
    const keys = kind.columns.filter(({ role }) => role === "key").length;
    expect(sheet.frozen).toEqual({ top: 0, left: 0, bottom: 3, right: keys - 1 });
    expect(sheet.properties).toMatchObject({
      gridlines: false,
      "pageLayout.orientation": "Landscape",
      "pageLayout.printTitleRows": "$4:$4",
      "pageLayout.zoom": { horizontalFitToPages: across },
      "pageLayout.rightFooter": "Page &P of &N",
    });
    expect(sheet.properties["pageLayout.printTitleColumns"]).toBe(
      across > 1 ? `$A:${["$A", "$B", "$C", "$D"][repeated - 1]}` : undefined,
    );
    expect(sheet.merges.map(({ top, bottom, left }) => [top, bottom, left])).toEqual([
      ...(repeated > 1 ? [[0, 0, 0]] : []),
      [1, 1, repeated],
      [2, 2, repeated],
    ]);
    const asking = kind.columns.filter(
      ({ accepts, role }) => role === "entry" && accepts && accepts.type !== "text",
    );
    expect(sheet.validations.length).toBeGreaterThanOrEqual(asking.length);
    for (const { properties } of sheet.validations)
      expect(properties).toMatchObject({ errorAlert: { style: "Warning", showAlert: true } });
    expect(
      sheet.formats.map(({ type, properties }) => [
        type,
        (properties.rule as { formula1: string }).formula1,
      ]),
    ).toEqual(
      ["Fail", "Missing", "Inconclusive", "Pass"].map((word) => ["CellValue", `="${word}"`]),
    );
    const styled = (property: string) => sheet.looks.filter((look) => look.property === property);
    expect(styled("columnWidth").length).toBeGreaterThan(2);
    expect(styled("numberFormat").map(({ value }) => value)).toContain("yyyy-mm-dd");
  }
});

test("designations that begin with an equals sign stay text", async () => {
  const { book } = await builtExcel(planFor(longLineup(1)));
  expect(boxAt(sheetNamed(book, "Panels"), 4, 0)).toEqual({ value: "=K0001" });
});

test("a workbook that was opened before the add-in had loaded is built onto without a write", async () => {
  const plan = planFor(longLineup(2));
  const host = await builtExcel(plan);
  for (const { cells } of host.book.sheets)
    for (const row of cells)
      for (const box of row)
        if (box?.formula) box.formula = box.formula.replaceAll("GEAR.", "_xldudf_GEAR_");
  const before = state(host.book);
  const done = await build(host, plan);
  expect(done.change.every(({ writes }) => writes.length === 0)).toBe(true);
  expect(state(host.book)).toEqual(before);
});

test("a cell with the right formula is not written because Excel has not worked it out yet", async () => {
  const plan = planFor(longLineup(2));
  const host = await builtExcel(plan);
  for (const { cells } of host.book.sheets)
    for (const row of cells) for (const box of row) if (box?.formula) box.value = "#BUSY!";
  const before = state(host.book);
  const done = await build(host, plan);
  expect(done.change.every(({ writes }) => writes.length === 0)).toBe(true);
  expect(state(host.book)).toEqual(before);
});

test("what people put into the workbook stays: formats, names, filters, hidden rows, merged cells, extra columns, notes, other tables", async () => {
  const host = await builtExcel(filledPlan(longLineup(2), 1));
  const { book } = host;
  const { sheet, table } = tableNamed(book, "GearContact");
  const crew = table.area.right + 1;
  putBox(book, sheet, 3, crew, { value: "Crew" });
  for (let row = 4; row <= table.area.bottom; row++)
    putBox(book, sheet, row, crew, { value: `crew ${row}` });
  table.area.right = crew;
  const below = table.area.bottom + 2;
  putBox(book, sheet, below, 0, { value: "a note of the user's" });
  const [left, right] = [crew + 3, crew + 4];
  for (const [row, column, value] of [
    [2, left, "merged header over an own table"],
    [3, left, "Own"],
    [3, right, "More"],
    [4, left, 1],
    [4, right, 2],
  ] as const)
    putBox(book, sheet, row, column, { value });
  sheet.merges.push({ top: 2, left, bottom: 2, right });
  sheet.tables.push({
    id: newId(book),
    name: "OwnTable",
    area: { top: 3, left, bottom: 4, right },
    showTotals: false,
    properties: { style: "TableStyleDark1" },
  });
  sheet.formats.push({
    id: newId(book),
    type: "ColorScale",
    areas: [{ top: 4, left: 5, bottom: 9, right: 5 }],
    stopIfTrue: false,
    properties: {},
  });
  const named = { top: 4, left: 5, bottom: 4, right: 5 };
  sheet.names.push({ name: "OwnName", area: { ...named }, visible: true });
  sheet.filter = { ...table.area };
  sheet.hiddenRows.add(6).add(7);
  sheet.looks.push({
    area: { top: 5, left: 5, bottom: 5, right: 5 },
    property: "fill.color",
    value: "#ABCDEF",
  });

  const before = state(book);
  const readings = entries(snapshotOfBook(book));
  const was = before.sheets.find(({ name }) => name === "Contacts");
  await build(host, planFor(longLineup(4)));
  const now = state(book).sheets.find(({ name }) => name === "Contacts");
  const rows = table.area.bottom - 3;
  expect(rows).toBeGreaterThan(below - 5);
  const grown = rows - (below - 5);

  for (const [name, all] of Object.entries(entries(snapshotOfBook(book))))
    expect(all.slice(0, readings[name]?.length)).toEqual(readings[name]);
  const cells = (row: number) => now?.cells[row]?.[crew];
  expect([4, 5, below - 2].map(cells)).toEqual(
    [4, 5, below - 2].map((row) => [`crew ${row}`, undefined]),
  );
  expect(JSON.stringify(now?.cells)).toContain("a note of the user's");
  expect(sheet.names).toEqual([{ name: "OwnName", area: named, visible: true }]);
  expect([...sheet.hiddenRows]).toEqual([6, 7]);
  expect(sheet.filter?.top).toBe(3);
  expect(now?.merges.length).toBe(was?.merges.length);
  expect(now?.formats.filter(({ type }) => type === "ColorScale")).toEqual(
    was?.formats.filter(({ type }) => type === "ColorScale"),
  );
  expect(
    book.sheets.flatMap(({ tables }) => tables).find(({ name }) => name === "OwnTable")?.area,
  ).toEqual({ top: 3, left, bottom: 4, right });
  expect(sheet.looks.some(({ value }) => value === "#ABCDEF")).toBe(true);
  // Colours and validations of ours go on over the rows that were added.
  const result = was?.formats.find(({ type }) => type === "CellValue")?.areas[0];
  expect(now?.formats.find(({ type }) => type === "CellValue")?.areas[0]?.bottom).toBe(
    (result?.bottom ?? 0) + grown,
  );
});

test("a renamed sheet and a renamed table are known again", async () => {
  const host = await builtExcel(filledPlan(longLineup(2), 2));
  renameSheet(host.book, "Insulation", "IR, main circuit");
  tableNamed(host.book, "GearInsulation").table.name = "OwnName";
  const done = await build(host, planFor(longLineup(3)));
  expect(done.create).toEqual([]);
  expect(done.change.find(({ table }) => table.name === "OwnName")?.added).toBeGreaterThan(0);
  expect(host.book.sheets.map(({ name }) => name)).not.toContain("Insulation");
  const table = tableNamed(host.book, "OwnName");
  const kind = recordTables(snapshotOfBook(host.book)).find(({ kind }) => kind.id === "insulation");
  expect(kind?.rows.every(({ result }) => typeof result === "string")).toBe(true);
  expect(table.sheet.name).toBe("IR, main circuit");
});

describe("what is in the way is said, and nothing is changed", () => {
  const refused = async (host: StandInHost, words: RegExp, plan = planFor(longLineup(3))) => {
    const before = state(host.book);
    await expect(build(host, plan)).rejects.toThrow(words);
    expect(state(host.book)).toEqual(before);
  };

  test("a protected sheet that would be changed", async () => {
    const host = await builtExcel(filledPlan(longLineup(2), 3));
    sheetNamed(host.book, "Insulation").protected = true;
    await refused(
      host,
      /The sheet "Insulation" would be changed and is protected.*Unprotect Sheet.*Nothing was changed/,
    );
  });

  test("a protected sheet that needs no change is no hindrance", async () => {
    const host = await builtExcel(filledPlan(longLineup(2), 3));
    sheetNamed(host.book, "Cover").protected = true;
    addSheet(host.book, "Own").protected = true;
    await build(host, planFor(longLineup(3)));
    expect(entries(snapshotOfBook(host.book)).GearContact?.length).toBe(9 + 6);
  });

  test("a protected workbook", async () => {
    const host = newExcel();
    host.book.structureProtected = true;
    await refused(host, /structure is protected.*Protect Workbook.*Nothing was changed/);
  });
});

describe("a sheet of the user's with the name of one of ours stays, and ours has another name", () => {
  const built = async (host: Awaited<ReturnType<typeof newExcel>>, name: string) => {
    await build(host, planFor(longLineup(3)));
    return snapshotOfBook(host.book).sheets.find(({ tables }) =>
      tables.some((table) => table.name === name),
    )?.name;
  };

  test("from the first build on, also where it is cut short and taken up again", async () => {
    const host = newExcel();
    for (const name of ["contacts", "Instruments"])
      putBox(host.book, addSheet(host.book, name), 0, 0, { value: "phone numbers" });
    host.fault = { batch: 3, when: "midway" };
    await expect(build(host, planFor(longLineup(3)))).rejects.toThrow();
    host.fault = undefined;
    expect(await built(host, "GearContact")).toBe("Contacts (Gearproof)");
    expect(await built(host, "GearInstruments")).toBe("Instruments (Gearproof)");
    expect(sheetNamed(host.book, "contacts").cells.flat().filter(Boolean)).toHaveLength(1);
    const names = host.book.sheets.map(({ name }) => name.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
  });

  test("where it took the name of one that a cut-short build had begun", async () => {
    const host = newExcel();
    host.fault = { batch: 2, when: "midway" };
    await expect(build(host, planFor(longLineup(3)))).rejects.toThrow();
    host.fault = undefined;
    host.book.sheets = host.book.sheets.filter(({ name }) => name !== "Withstand");
    putBox(host.book, addSheet(host.book, "Withstand"), 0, 0, { value: "my own list" });
    expect(await built(host, "GearWithstand")).toBe("Withstand (Gearproof)");
  });
});

test("a build that is stopped leaves off between two batches and is taken up again", async () => {
  const plan = planFor(longLineup(3));
  const host = newExcel();
  const stop = new AbortController();
  const told: [number, number][] = [];
  const work = build(host, plan, {
    most: 40_000,
    signal: stop.signal,
    progress: (done, total) => {
      told.push([done, total]);
      if (told.length === 3) stop.abort();
    },
  });
  await expect(work).rejects.toMatchObject({ name: "AbortError" });
  expect(told).toHaveLength(3);
  expect(told[2]?.[0]).toBeLessThan(told[2]?.[1] ?? 0);
  await build(host, plan);
  expect(state(host.book)).toEqual(state((await builtExcel(plan)).book));
  expect(contents(await inExcel(host, (context) => readExcel(context)))).toEqual(
    contents(await inExcel(await builtExcel(plan), (context) => readExcel(context))),
  );
});

test("a build that was cut short between making a table and naming it is taken up again", async () => {
  const plan = planFor(longLineup(2));
  const whole = await builtExcel(plan);
  const host = await builtExcel(plan);
  tableNamed(host.book, "GearInsulation").table.name = "Table1";
  host.book.parts.push({
    id: newId(host.book),
    xml: '<building xmlns="urn:gearproof:building:1">Insulation</building>',
  });
  await build(host, plan);
  expect(state(host.book)).toEqual(state(whole.book));
});

test("the user edits readings while a grown plan is being built: they stay", async () => {
  const host = await builtExcel(filledPlan(longLineup(2), 4));
  const { sheet, table } = tableNamed(host.book, "GearContact");
  const remarks = Array.from({ length: table.area.right + 1 }, (_, at) => at).find(
    (at) => boxAt(sheet, 3, at)?.value === "Remarks",
  );
  host.between = (batch) =>
    putBox(host.book, sheet, 3 + batch, remarks ?? 0, { value: `typed ${batch}` });
  await build(host, planFor(longLineup(4, { basis: "IEC" })), { most: 20_000 });
  const typed = host.batches.length;
  expect(typed).toBeGreaterThan(4);
  for (let batch = 1; batch <= Math.min(typed, 6); batch++)
    expect(boxAt(sheet, 3 + batch, remarks ?? 0)?.value).toBe(`typed ${batch}`);
});

test("a table of ours without a column that names its rows is not built beside: that is said, and nothing is changed", async () => {
  const host = await builtExcel(planFor(longLineup(1)));
  const { sheet, table } = tableNamed(host.book, "GearContact");
  deleteColumns(host.book, sheet, table.area.left, 1);
  const before = state(host.book);
  await expect(build(host, planFor(longLineup(2)))).rejects.toThrow(
    /table GearContact on "Contacts" has no column "Panel".*Nothing was changed/,
  );
  expect(state(host.book)).toEqual(before);
});
