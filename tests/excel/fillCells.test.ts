import { expect, test } from "vitest";
import { applyFills, type FillOptions, readExcel } from "../../src/excel/workbook";
import { recordTables } from "../../src/sheets/recordTable";
import { tableNamed } from "../../src/standin/book";
import { snapshotOfBook } from "../../src/standin/calculate";
import { insertRows, typeInto } from "../../src/standin/edits";
import type { StandInHost } from "../../src/standin/host";
import { filledPlan } from "../support/fill";
import { longLineup } from "../support/lineups";
import { builtExcel, inExcel, placed, state } from "./excelSupport";

const start = () => builtExcel(filledPlan(longLineup(2), 1));
const read = (host: StandInHost) => inExcel(host, (context) => readExcel(context));
const fill = (host: StandInHost, cells: ReturnType<typeof placed>, options?: FillOptions) =>
  inExcel(host, (context) => applyFills(context, cells, options));
const contact = ({ book }: StandInHost) =>
  recordTables(snapshotOfBook(book)).find(({ kind }) => kind.id === "contact")?.rows ?? [];

test("a cell that the user changed since it was read is held back, the others are written", async () => {
  const host = await start();
  const snapshot = await read(host);
  typeInto(host.book, "GearContact", 1, "Remarks", "seen on site");
  const cells = placed(snapshot, "GearContact", [
    [0, "remarks", "from the export"],
    [1, "remarks", "from the export"],
    [2, "remarks", "from the export"],
  ]);
  const filled = await fill(host, cells);
  expect(filled.heldBack.map(({ row }) => row)).toEqual([1]);
  expect(filled.written.map(({ row }) => row)).toEqual([0, 2]);
  expect(
    contact(host)
      .slice(0, 3)
      .map(({ remarks }) => remarks),
  ).toEqual(["from the export", "seen on site", "from the export"]);
});

test.each([
  ["looked at first", {}, 2],
  ["just read", { fresh: true }, 1],
])(
  "a change between the last look and the writing is put back: %s",
  async (_name, options, batch) => {
    const host = await start();
    const snapshot = await read(host);
    const cells = placed(snapshot, "GearContact", [
      [0, "remarks", "one"],
      [1, "remarks", "two"],
      [2, "remarks", "three"],
    ]);
    host.reset();
    host.between = (number) => {
      if (number === batch) typeInto(host.book, "GearContact", 1, "Remarks", "=K07");
    };
    const filled = await fill(host, cells, options);
    expect(filled.heldBack.map(({ row }) => row)).toEqual([1]);
    expect(
      contact(host)
        .slice(0, 3)
        .map(({ remarks }) => remarks),
    ).toEqual(["one", "=K07", "three"]);
  },
);

test.each([
  ["before the last look", 1],
  ["between the last look and the writing", 2],
])("a row put in %s: the reading comes onto its own row", async (_name, batch) => {
  const host = await start();
  const snapshot = await read(host);
  const keys = ({ object, part, pole }: ReturnType<typeof contact>[number]) => [object, part, pole];
  const own = keys(contact(host)[3] ?? {});
  host.reset();
  host.between = (number) => {
    if (number === batch) insertRows(host.book, tableNamed(host.book, "GearContact").sheet, 5, 1);
  };
  const filled = await fill(host, placed(snapshot, "GearContact", [[3, "remarks", "moved"]]));
  expect([filled.written.length, filled.heldBack.length]).toEqual([1, 0]);
  const said = contact(host).filter(({ remarks }) => remarks !== null);
  expect(said.map(keys)).toEqual([own]);
});

test("placing the same readings again writes nothing", async () => {
  const host = await start();
  const snapshot = await read(host);
  const cells = placed(snapshot, "GearContact", [[0, "remarks", "007"]]);
  await fill(host, cells);
  const before = state(host.book);
  const again = await fill(host, cells);
  expect([again.written.length, again.same.length]).toEqual([0, 1]);
  expect(state(host.book)).toEqual(before);
});

test("a protected sheet: locked cells are refused, unlocked ones are filled", async () => {
  const host = await start();
  const snapshot = await read(host);
  const cells = placed(snapshot, "GearContact", [
    [0, "remarks", "one"],
    [1, "remarks", "two"],
  ]);
  const { sheet } = tableNamed(host.book, "GearContact");
  sheet.protected = true;
  const before = state(host.book);
  await expect(fill(host, cells)).rejects.toThrow(/"Contacts" is protected.*Nothing was changed/);
  expect(state(host.book)).toEqual(before);
  sheet.unlocked.push({ top: 4, left: 0, bottom: 60, right: 40 });
  expect((await fill(host, cells)).written).toHaveLength(2);
});

test("progress is told, and the work can be stopped between two batches", async () => {
  const host = await start();
  const snapshot = await read(host);
  const cells = placed(
    snapshot,
    "GearInsulation",
    Array.from({ length: 20 }, (_, row) => [row * 2, "remarks", `line ${row}`] as const),
  );
  const told: number[] = [];
  const stop = new AbortController();
  const work = fill(host, cells, {
    most: 8_000,
    signal: stop.signal,
    progress: (done) => {
      told.push(done);
      if (told.length === 2) stop.abort();
    },
  });
  await expect(work).rejects.toMatchObject({ name: "AbortError" });
  expect(told).toHaveLength(2);
  const rows =
    recordTables(snapshotOfBook(host.book)).find(({ kind }) => kind.id === "insulation")?.rows ??
    [];
  expect(rows.filter(({ remarks }) => remarks !== null)).toHaveLength(told[1] ?? -1);
  const rest = await fill(host, cells);
  expect(rest.written.length + rest.same.length).toBe(20);
});
