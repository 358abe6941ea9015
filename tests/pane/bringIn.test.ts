import { describe, expect, test } from "vitest";
import { applyChanges } from "../../src/excel/workbook";
import { historyPlace } from "../../src/intake/historyRows";
import { openBook } from "../../src/intake/openBook";
import { takeIn } from "../../src/intake/takeIn";
import { bringBack, bringIn } from "../../src/pane/readings/bringIn";
import { type CellValue, isBlank } from "../../src/records/kind";
import { isSameStored } from "../../src/sheets/cells/cell";
import { filledRows } from "../../src/sheets/filledRows";
import { NOTHING_REMEMBERED, rememberedOf, withRemembered } from "../../src/sheets/kept/remembered";
import { HISTORY_TABLE } from "../../src/sheets/ours/historySheet";
import type { RecordBook } from "../../src/sheets/recordBook";
import { tablesOf } from "../../src/sheets/snapshot";
import { addSheet, newBook, putBox } from "../../src/standin/book";
import { calculateRecords } from "../../src/standin/calculate";
import type { Fault, StandInHost } from "../../src/standin/host";
import { standIn } from "../../src/standin/host";
import { builtExcel, contents, copied, inExcel } from "../excel/excelSupport";
import { filledPlan } from "../support/fill";
import { english } from "../support/inWords";
import { CONTACTS_ALONE, longLineup } from "../support/lineups";
import { standInHost, WATCH } from "./standInHost";

/** Few sheets, since every batch is broken several times over. */
const lineup = longLineup(2, {
  leaveOut: CONTACTS_ALONE,
});
/** Batches made small, so that the work takes many of them. */
const SMALL = 30_000;
const CUTS: readonly Omit<Fault, "batch">[] = [
  { when: "before" },
  ...[0.4, 0.8].map((share) => ({ when: "midway" as const, share })),
  { when: "after" },
];

const HEAD = "Panel,Part,Pole,R (µΩ),Date";
const POLES = ["=K0001", "=K0002"].flatMap((panel) =>
  ["L1", "L2", "L3"].map((pole) => `${panel},Breaker Q0,${pole}`),
);
/** An invented export: a reading for each pole. */
const exported = (first: number, day: string) =>
  [HEAD, ...POLES.map((pole, at) => `${pole},${first + at / 10},${day}`)].join("\n");
const A = { name: "a.csv", text: exported(31, "2026-11-20") };
const B = { name: "b.csv", text: exported(41, "2026-11-24") };

const TODAY = 46_351;

const read = async (host: StandInHost): Promise<RecordBook> =>
  openBook(await standInHost(host).read(WATCH));
const intakeOf = (known: RecordBook, { name, text }: typeof A) => {
  const intake = takeIn(known, [{ name, content: text }], { replace: true }, TODAY);
  if (!intake.ok) throw new Error(intake.reason(english));
  return intake;
};
/** Brings an export in as it is to come into what is known of the workbook. */
const bring = (host: StandInHost, known: RecordBook, file: typeof A, most?: number) =>
  bringIn(standInHost(host, most), known, intakeOf(known, file), WATCH);
const back = async (host: StandInHost, most?: number) => {
  const known = await read(host);
  if (!known.remembered.last) throw new Error("no intake is remembered");
  return bringBack(standInHost(host, most), known, WATCH);
};

const readings = ({ tables }: RecordBook) =>
  tables
    .filter(({ kind }) => kind.id === "contact")
    .map(({ rows }) => rows.map(({ reading, date }) => [reading, date]));
const historyOf = ({ snapshot }: RecordBook): CellValue[][] => {
  const table = tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);
  return Array.from({ length: table?.rowCount ?? 0 }, (_, row) =>
    [0, 1, 2, 3].map((column) => table?.cell(row, column) ?? null),
  ).filter((row) => row.some((cell) => !isBlank(cell)));
};
const files = ({ snapshot }: RecordBook) => [snapshot.last?.files[0], snapshot.before?.files[0]];

/** Each reading that an intake was to take the place of stands on its record or in the history. */
const expectNothingLost = (start: RecordBook, file: typeof A, now: RecordBook, name: string) => {
  const history = historyOf(now);
  for (const { table, row, column, old } of intakeOf(start, file).cells) {
    // Where a reading came from is told by the history beside it.
    if (isBlank(old) || column === "origin") continue;
    const held = now.tables.find((one) => one.table.name === table.table.name)?.rows[row]?.[column];
    const place = historyPlace(table, row, column);
    const isKept = history.some(
      ([sheet, key, header, value = null]) =>
        sheet === place.sheet && key === place.row && header === place.column && value === old,
    );
    expect(isKept || isSameStored(held ?? null, old), `${name}: ${place.row} ${place.column}`).toBe(
      true,
    );
  }
};

/** Excel with record sheets of ours, readings in them, and one intake from before. */
async function built(): Promise<StandInHost> {
  const host = await builtExcel(filledPlan(lineup, 1));
  await bring(host, await read(host), A);
  host.reset();
  return host;
}

/** Excel with a sheet in somebody's own layout (invented) and no sheet of ours. */
async function own(): Promise<StandInHost> {
  const book = newBook();
  const sheet = addSheet(book, "Resistances");
  [
    ["Bay", "Device", "L1 (mΩ)", "L2 (mΩ)", "L3 (mΩ)", "Day"],
    ["=K0001", "Breaker Q0", 0.021, 0.022, 0.023, null],
    ["=K0002", "Breaker Q0", 0.024, 0.025, null, null],
  ].forEach((row, at) => {
    row.forEach((value, column) => {
      if (value !== null) putBox(book, sheet, at, column, { value });
    });
  });
  const host = standIn(book, calculateRecords);
  const map = {
    sheet: "Resistances",
    kind: "contact",
    titles: 1,
    shape: "wide" as const,
    columns: { Bay: "object", Device: "part" },
  };
  await inExcel(host, (context) =>
    applyChanges(context, { lineup, remembered: { ...NOTHING_REMEMBERED, maps: [map] } }),
  );
  host.reset();
  return host;
}

const failing = async (work: () => Promise<unknown>) => work().catch((error: unknown) => error);

describe.each([
  ["sheets of ours", built],
  ["somebody's own layout", own],
])("%s", (_name, make) => {
  test("an intake cut short in any batch loses no reading and is taken back whole", async () => {
    const start = await make();
    const before = await read(start);
    expect(intakeOf(before, B).history.length).toBeGreaterThan(4);
    const clean = copied(start);
    await bring(clean, before, B, SMALL);
    const count = clean.batches.length;
    expect(count).toBeGreaterThan(4);
    const wanted = readings(await read(clean));
    for (let batch = 1; batch <= count; batch++)
      for (const cut of CUTS) {
        const name = `batch ${batch} of ${count}, ${cut.when} ${cut.share ?? ""}`;
        const host = copied(start);
        const known = await read(host);
        host.reset();
        host.fault = { batch, ...cut };
        await failing(() => bring(host, known, B, SMALL));
        host.fault = undefined;
        const cutShort = await read(host);
        expectNothingLost(before, B, cutShort, name);

        const undone = copied(host);
        if (files(cutShort)[0] === B.name) await back(undone);
        const after = await read(undone);
        expect(readings(after), name).toEqual(readings(before));
        expect(files(after)[0], name).toEqual(files(before)[0]);
        for (const entry of historyOf(before)) expect(historyOf(after), name).toContainEqual(entry);

        // Brought in once more, and all of it taken back.
        await bring(host, cutShort, B);
        let last = await read(host);
        expect(readings(last), name).toEqual(wanted);
        while (files(last)[0] === B.name) {
          await back(host);
          last = await read(host);
        }
        expect(readings(last), name).toEqual(readings(before));
        if (files(cutShort)[0] === B.name) expect(historyOf(last), name).toEqual(historyOf(before));
      }
  });

  test("a taking back cut short in any batch loses no reading and can be gone on with", async () => {
    const start = await make();
    const before = await read(start);
    await bring(start, before, B);
    start.reset();
    const clean = copied(start);
    await back(clean, SMALL);
    const count = clean.batches.length;
    for (let batch = 1; batch <= count; batch++)
      for (const cut of CUTS) {
        const name = `batch ${batch} of ${count}, ${cut.when} ${cut.share ?? ""}`;
        const host = copied(start);
        host.fault = { batch, ...cut };
        await failing(() => back(host, SMALL));
        host.fault = undefined;
        const cutShort = await read(host);
        expectNothingLost(before, B, cutShort, name);
        if (files(cutShort)[0] === B.name) await back(host);
        const after = await read(host);
        expect(readings(after), name).toEqual(readings(before));
        expect(historyOf(after), name).toEqual(historyOf(before));
        expect(files(after)[0], name).toEqual(files(before)[0]);
      }
  });
});

test("an intake takes two round trips for history and memory and two for the readings", async () => {
  const host = await built();
  const known = await read(host);
  host.reset();
  await bring(host, known, B);
  // And one in which the client has Excel forget the ranges that it kept.
  expect(host.batches.length).toBe(4 + 1);
});

const contactBox = (host: StandInHost, row: number, header: string) => {
  const sheet = host.book.sheets.find(({ tables }) => tables[0]?.name === "GearContact");
  const top = sheet?.tables[0]?.area.top ?? 0;
  const column = sheet?.cells[top]?.findIndex((box) => box?.value === header) ?? -1;
  return { sheet, row: top + 1 + row, column };
};
/** What a person types over some readings while the workbook is being written. */
const typed = (host: StandInHost, rows: readonly number[], header: string, value: CellValue) => {
  for (const one of rows) {
    const { sheet, row, column } = contactBox(host, one, header);
    if (sheet) putBox(host.book, sheet, row, column, { value });
  }
};

test("what is held back leaves history and memory again", async () => {
  const host = await built();
  const known = await read(host);
  host.reset();
  host.between = (batch) => {
    if (batch === 3) typed(host, [0], "R µΩ", 99);
  };
  const { heldBack } = await bring(host, known, B);
  host.between = undefined;
  expect(heldBack).toBe(1);
  const after = await read(host);
  const first = after.snapshot.last?.cells.filter(({ column }) => column === "reading");
  expect(first?.map(({ row }) => row)).toEqual([1, 2, 3, 4, 5]);
  const replaced = historyOf(after).filter(([, , header]) => header === "R µΩ");
  expect(replaced.map(([, row, , value]) => [row, value])).not.toContainEqual([
    "=K0001 · Breaker Q0 · L1",
    31,
  ]);
  expect(replaced).toContainEqual(["Contacts", "=K0001 · Breaker Q0 · L2", "R µΩ", 31.1]);
});

test("an intake that is held back whole leaves the memory of the one before it, and no history", async () => {
  const host = await built();
  const known = await read(host);
  const { snapshot } = known;
  host.reset();
  const { cells: placed } = intakeOf(known, B);
  host.between = (batch) => {
    if (batch !== 3) return;
    for (const { table, row, column } of placed)
      typed(host, [row], historyPlace(table, row, column).column, 99);
  };
  const { written, heldBack } = await bring(host, known, B);
  host.between = undefined;
  expect([written, heldBack]).toEqual([0, placed.length]);
  const after = await read(host);
  expect(after.snapshot.last).toEqual(snapshot.last);
  expect(after.snapshot.before).toEqual(snapshot.before);
  expect(historyOf(after)).toEqual(historyOf(known));
});

test("what a reading that stays had replaced stays in the history when its intake is taken back", async () => {
  const host = await built();
  await bring(host, await read(host), B);
  typed(host, [0], "R µΩ", 99);
  const { stay } = await back(host);
  expect(stay).toBe(1);
  const after = await read(host);
  expect(
    readings(after)[0]
      ?.slice(0, 2)
      .map(([reading]) => reading),
  ).toEqual([99, 31.1]);
  const values = historyOf(after).filter(([, row]) => row === "=K0001 · Breaker Q0 · L1");
  expect(values).toContainEqual(["Contacts", "=K0001 · Breaker Q0 · L1", "R µΩ", 31]);
});

test("what was read before another wrote into the history is refused, and nothing is changed", async () => {
  const host = await built();
  const known = await read(host);
  await bring(host, known, B);
  const after = await read(host);
  const error = await failing(() => bring(host, known, B));
  expect(String(error)).toMatch(/GearHistory was changed since it was read.*Nothing was changed/);
  expect(readings(await read(host))).toEqual(readings(after));
  expect(historyOf(await read(host))).toEqual(historyOf(after));
});

test("an intake that is stopped between memory and readings can be taken back, and so can the one before it", async () => {
  const host = await built();
  const known = await read(host);
  const stop = new AbortController();
  host.reset();
  host.between = (batch) => {
    if (batch === 2) stop.abort();
  };
  const error = await failing(() =>
    bringIn(standInHost(host), known, intakeOf(known, B), { ...WATCH, signal: stop.signal }),
  );
  host.between = undefined;
  expect(error).toMatchObject({ name: "AbortError" });
  const stopped = await read(host);
  expect(readings(stopped)).toEqual(readings(known));
  expect(files(stopped)).toEqual([B.name, A.name]);
  expect(await back(host)).toEqual({ written: 0, stay: 0 });
  expect(historyOf(await read(host))).toEqual(historyOf(known));
  await back(host);
  expect(historyOf(await read(host))).toEqual([]);
  expect(files(await read(host))).toEqual([undefined, undefined]);
});

test("what is typed between look and write and cannot be put back is told, and goes to the history", async () => {
  const host = await built();
  const known = await read(host);
  host.reset();
  host.between = (batch) => {
    if (batch === 4) typed(host, [0], "R µΩ", 99);
    // The putting back fails each time that it is tried.
    host.fault = batch >= 5 && batch <= 8 ? { batch, when: "before" } : undefined;
  };
  const error = await failing(() => bring(host, known, B));
  host.between = undefined;
  host.fault = undefined;
  expect(String(error)).toMatch(/"Contacts" [A-Z]+5 held 99.*hold that again/);
  const kept = historyOf(await read(host)).filter(([, , , value]) => value === 99);
  expect(kept).toHaveLength(1);
  expect(kept[0]?.[0]).toBe("Contacts");
});

test("what is read again after an intake, and after it is taken back, is what the whole workbook holds", async () => {
  const host = await builtExcel(filledPlan(lineup, 3, {}));
  const known = await read(host);
  const brought = await bring(host, known, A);
  const checkAlone = async ({ snapshot: before }: RecordBook, { alone }: typeof brought) => {
    const rows = alone && filledRows(before, alone.cells);
    if (!alone || !rows) throw new Error("more was changed than the cells");
    expect(rows.map(({ rows }) => rows.length)).toEqual([POLES.length]);
    const batches = host.batches.length;
    const seen = await standInHost(host).reread(withRemembered(before, alone.remembered), rows);
    expect(host.batches.length - batches).toBe(1);
    const whole = (await read(host)).snapshot;
    if (!seen) throw new Error("the workbook is to be read whole");
    expect(contents(seen)).toEqual(contents(whole));
    expect(rememberedOf(seen)).toEqual(rememberedOf(whole));
    return openBook(whole);
  };
  const after = await checkAlone(known, brought);
  const taken = await bringBack(standInHost(host), after, WATCH);
  await checkAlone(after, { heldBack: 0, ...taken });
  // Where readings take the place of others, these go to the history, and more is changed than the cells.
  await bring(host, await read(host), A);
  expect((await bring(host, await read(host), B)).alone).toBeUndefined();
});
