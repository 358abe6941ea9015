import { strFromU8, unzipSync } from "fflate";
import { openXlsx, readXlsx, saveXlsx, writeXlsx } from "hucre/xlsx";
import { expect, test } from "vitest";
import { pageOf } from "../../src/look/page";
import { FURTHER_KINDS, KINDS } from "../../src/records/kinds";
import { storedKindWords } from "../../src/records/kindWords";
import { rowsOf } from "../../src/records/rowsOf";
import { planFor } from "../../src/sheets/plan/plan";
import { recordTables } from "../../src/sheets/recordTable";
import { tablesOf } from "../../src/sheets/snapshot";
import { readBook, writeBook } from "../../src/xlsx/file";
import { filledPlan } from "../support/fill";
import { equippedInFull, longLineup, sampleLineup } from "../support/lineups";
import { random } from "../support/random";

const contents = async (file: Uint8Array) =>
  tablesOf(await readBook(file)).map((table) => ({
    name: table.name,
    headers: table.headers,
    cells: Array.from({ length: table.rowCount }, (_, row) =>
      table.headers.map((_, column) => [table.cell(row, column), table.formula(row, column)]),
    ),
  }));

test("a built workbook has a sheet for each record kind, with every row that the lineup needs", async () => {
  const lineup = sampleLineup();
  const { file } = await writeBook(planFor(lineup));
  const snapshot = await readBook(file);
  expect(snapshot.lineup).toEqual(lineup);
  const tables = recordTables(snapshot);
  const asked = KINDS.filter((kind) => rowsOf(kind, lineup).length > 0);
  expect(asked.length).toBeGreaterThan(20);
  expect(tables.map(({ kind }) => kind.id).sort()).toEqual(asked.map(({ id }) => id).sort());
  // Nine circuits have breakers less the two panels without: 8 × 3 poles; 8 joints on two sections and the link between them.
  expect(tables.find(({ kind }) => kind.id === "contact")?.rows).toHaveLength(8 * 3 + 9 * 3);
  expect(tables.find(({ kind }) => kind.id === "insulation")?.rows).toHaveLength(
    2 * (2 * 6 + 8 * 6),
  );
  expect(tables.find(({ kind }) => kind.id === "withstand")?.rows).toHaveLength(2 * 3 + 8 * 3);
});

const inFull = {
  ...equippedInFull(longLineup(3)),
  furtherRecords: FURTHER_KINDS.map((kind) => ({ kind })),
};

test("record sheets: cautions at the head, frozen header, landscape, repeated header row, page numbers, validations", async () => {
  const { file } = await writeBook(planFor(inFull));
  const workbook = await readXlsx(file, { readStyles: true });
  for (const kind of KINDS) {
    const sheet = workbook.sheets.find(({ name }) => name === kind.sheet);
    const { across, repeated } = pageOf(kind.columns);
    expect(String(sheet?.rows[2]?.[repeated])).toContain(storedKindWords(kind.id).cautions[0]);
    expect(sheet?.freezePane?.rows).toBe(4);
    expect(sheet?.pageSetup?.orientation).toBe("landscape");
    expect(sheet?.pageSetup).toMatchObject({ printTitlesRow: "$4:$4", fitToWidth: across });
    expect(sheet?.pageSetup?.printTitlesColumn !== undefined).toBe(across > 1);
    // Rows that are added to the table are printed too.
    expect(sheet?.pageSetup?.printArea).toBeUndefined();
    expect(sheet?.headerFooter?.oddFooter).toContain("Page &P of &N");
    const entries = kind.columns.filter(
      ({ accepts, role }) => role === "entry" && accepts && accepts.type !== "text",
    );
    expect(sheet?.dataValidations?.length ?? 0).toBeGreaterThanOrEqual(entries.length);
  }
});

test("computed columns are stored as functions of ours with cached results, and nothing asks for a recalculation", async () => {
  const { file } = await writeBook(filledPlan(sampleLineup(), 1));
  const parts = unzipSync(file);
  expect(strFromU8(parts["xl/workbook.xml"] ?? new Uint8Array())).not.toContain("fullCalcOnLoad");
  const insulation = recordTables(await readBook(file)).find(
    ({ kind }) => kind.id === "insulation",
  );
  const at = insulation?.at.get("corrected") ?? -1;
  expect(insulation?.table.formula(0, at)).toContain(
    "_xldudf_GEAR_IRCORRECT(GearInsulation[[#This Row],[R 1 min MΩ]]",
  );
  expect(insulation?.table.cell(0, at)).toBeGreaterThan(0);
  const tables = Object.keys(parts).filter((name) => name.startsWith("xl/tables/"));
  const xml = tables.map((name) => strFromU8(parts[name] ?? new Uint8Array())).join("");
  expect(xml).toMatch(/<calculatedColumnFormula>IF\(.*_xldudf_GEAR_IRCORRECT\(GearInsulation/);
});

test("building twice changes nothing", async () => {
  const plan = filledPlan(sampleLineup(), 2);
  const first = await writeBook(plan);
  const second = await writeBook(planFor(sampleLineup()), first.file);
  expect(second.done.create).toEqual([]);
  expect(
    second.done.change.map(({ added, writes, aside }) => [added, writes.length, aside.length]),
  ).toEqual(second.done.change.map(() => [0, 0, 0]));
  expect(await contents(second.file)).toEqual(await contents(first.file));
});

test("a sheet of somebody's own with the name of one of ours stays, and ours has another name", async () => {
  const own = await writeXlsx({
    sheets: ["CONTACTS", "Cover", "Instruments"].map((name) => ({ name, rows: [["my own"]] })),
  });
  const { file } = await writeBook(planFor(longLineup(1)), own);
  const { sheets } = await readBook(file);
  expect(sheets.slice(0, 3).map(({ name, cells }) => [name, cells?.cell(0, 0)])).toEqual([
    ["CONTACTS", "my own"],
    ["Cover", "my own"],
    ["Instruments", "my own"],
  ]);
  const named = (table: string) =>
    sheets.find(({ tables }) => tables.some(({ name }) => name === table))?.name;
  expect(["GearContact", "GearProject", "GearInstruments"].map(named)).toEqual([
    "Contacts (Gearproof)",
    "Cover (Gearproof)",
    "Instruments (Gearproof)",
  ]);
  // Entries offer the instruments of our sheet, not what stands on theirs.
  const parts = Object.values(unzipSync(file)).map((part) => strFromU8(part));
  expect(parts.join("")).toContain("'Instruments (Gearproof)'!");
  const again = await writeBook(planFor(longLineup(1)), file);
  expect(again.done.create).toEqual([]);
});

test("a grown lineup keeps every reading, the order of rows, and the user's extra columns and notes below", async () => {
  const before = await writeBook(filledPlan(longLineup(3), 3));
  const workbook = await openXlsx(before.file, { readStyles: true });
  const sheet = workbook.sheets.find(({ name }) => name === "Contacts");
  const table = sheet?.tables?.[0];
  if (!sheet || !table?.range) throw new Error("no contact table");
  const width = table.columns.length;
  const header = sheet.rows[3] as (string | null)[];
  header[width] = "Crew";
  sheet.rows.slice(4).forEach((row, index) => {
    row[width] = `crew ${index}`;
  });
  table.columns.push({ name: "Crew" });
  table.range = table.range.replace(/:[A-Z]+/, `:${String.fromCharCode(65 + width)}`);
  // The file library drops cached text of formulas on saving, unless it is told again.
  for (const { cells } of workbook.sheets)
    for (const cell of cells?.values() ?? [])
      if (cell.formula !== undefined) cell.formulaResult ??= cell.value;
  sheet.rows.push([], ["a note of the user's below the table"]);
  const own = await saveXlsx(workbook);

  const grown = await writeBook(planFor(longLineup(4)), own);
  const [was, is] = [await contents(own), await contents(grown.file)];
  for (const old of was.filter(({ name }) => /Gear(Contact|Insulation|Withstand)/.test(name))) {
    const now = is.find(({ name }) => name === old.name);
    expect(now?.headers).toEqual(old.headers);
    expect(now?.cells.slice(0, old.cells.length)).toEqual(old.cells);
    expect(now?.cells.length).toBeGreaterThan(old.cells.length);
  }
  const rows =
    (await readXlsx(grown.file)).sheets.find(({ name }) => name === "Contacts")?.rows ?? [];
  expect(rows.flat()).toContain("a note of the user's below the table");
});

test("a panel taken out leaves its rows and readings where they are, and says so", async () => {
  const before = await writeBook(filledPlan(longLineup(3), 4));
  const after = await writeBook(planFor(longLineup(2)), before.file);
  const contact = after.done.change.find(({ table }) => table.name === "GearContact");
  expect(contact?.aside).toContain("=K0003 · Breaker Q0 · L1");
  const readings = async (file: Uint8Array) =>
    recordTables(await readBook(file)).map(({ rows }) =>
      rows.map(({ reading, applied }) => [reading, applied]),
    );
  expect(await readings(after.file)).toEqual(await readings(before.file));
});

test("a changed basis brings limits and sources up to date and leaves readings alone", async () => {
  const before = await writeBook(filledPlan(longLineup(2), 5));
  const after = await writeBook(planFor(longLineup(2, { basis: "IEC" })), before.file);
  const table = recordTables(await readBook(after.file)).find(
    ({ kind }) => kind.id === "withstand",
  );
  expect(table?.rows[0]?.basekV).toBeCloseTo(22.4, 12);
  expect(String(table?.rows[0]?.sources)).toContain("IEC 62271");
});

test("a computed cell that somebody typed over is left for the check to find", async () => {
  const before = await writeBook(filledPlan(longLineup(1), 6));
  const workbook = await openXlsx(before.file, { readStyles: true });
  const sheet = workbook.sheets.find(({ name }) => name === "Insulation");
  const at = sheet?.rows[3]?.indexOf("R corrected MΩ") ?? -1;
  sheet?.cells?.set(`4,${at}`, { value: 123, type: "number" });
  (sheet?.rows[4] as unknown[])[at] = 123;
  const own = await saveXlsx(workbook);
  const after = await writeBook(planFor(longLineup(1)), own);
  const table = recordTables(await readBook(after.file)).find(
    ({ kind }) => kind.id === "insulation",
  );
  expect(table?.rows[0]?.corrected).toBe(123);
});

test.each([
  ["nothing", new Uint8Array(), /is empty/],
  ["text", new TextEncoder().encode("Panel;R\n1;2\n"), /is not a workbook; give an \.xlsx/],
  [
    "half a workbook",
    new Uint8Array([0x50, 0x4b, 3, 4, 0, 0, 0, 0]),
    /is damaged or not a workbook/,
  ],
  [
    "an encrypted or old workbook",
    new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...Array(600).fill(0)]),
    /is encrypted or an old \.xls file/,
  ],
])("%s is refused in words", async (_name, bytes, message) => {
  await expect(readBook(bytes)).rejects.toThrow(message);
  await expect(writeBook(planFor(longLineup(1)), bytes)).rejects.toThrow(message);
});

test("a long file is read part by part, every sheet in its place", async () => {
  const next = random(7);
  // Digits that hardly pack, so that the file is longer than one part.
  const sheets = ["First", "Second", "Third", "Fourth", "Fifth"].map((name, at) => ({
    name,
    hidden: at === 3,
    rows: Array.from({ length: 12_000 }, (_, row) => [`${name} ${row}`, next(), next(), next()]),
  }));
  const file = await writeXlsx({ sheets });
  expect(file.length).toBeGreaterThan(1_500_000);
  const read = await readBook(file);
  expect(read.sheets.map(({ name, hidden = false }) => [name, hidden])).toEqual(
    sheets.map(({ name, hidden }) => [name, hidden]),
  );
  for (const [at, { cells }] of read.sheets.entries())
    for (const row of [0, 5_000, 11_999])
      expect([0, 1, 2, 3].map((column) => cells?.cell(row, column))).toEqual(sheets[at]?.rows[row]);
});
