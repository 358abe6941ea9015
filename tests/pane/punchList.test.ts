import { expect, test } from "vitest";
import { punchChanges } from "../../src/check/punch/punchWrites";
import { openBook } from "../../src/intake/openBook";
import { PUNCH_COLUMNS, punchTable } from "../../src/sheets/ours/punchSheet";
import type { Snapshot } from "../../src/sheets/snapshot";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { withPunchList } from "../../src/xlsx/writeFindings";
import { builtExcel } from "../excel/excelSupport";
import { reportOf } from "../support/checkBook";
import { filledPlan, SOUND } from "../support/fill";
import { CONTACTS_ALONE, longLineup } from "../support/lineups";
import { punchOf } from "../support/punchOf";
import { standInHost, WATCH } from "./standInHost";

const TODAY = 46_352;
/** Few sheets, of which two poles fail. */
const plan = filledPlan(
  longLineup(2, {
    leaveOut: CONTACTS_ALONE,
  }),
  11,
  {
    GearContact: (row, next) => ({
      ...SOUND.GearContact?.(row, next),
      ...(row.pole === "L1" && row.part === "Breaker Q0" ? { reading: 914 } : {}),
    }),
  },
);

/** What a person types onto the punch list: an owner to the first item, and an item of one's own below the last. */
const typed = (snapshot: Snapshot) => {
  const table = punchTable(snapshot);
  if (!table) throw new Error("no punch list");
  const column = (id: string) => PUNCH_COLUMNS.findIndex((one) => one.id === id);
  const row = table.rowCount;
  return {
    table,
    added: 1,
    writes: [
      { row: 0, column: column("owner"), value: "Fitter 2" },
      { row, column: column("what"), value: "Door scratched" },
      { row, column: column("weight"), value: "stop" },
    ],
  };
};

interface Host {
  read(): Promise<Snapshot>;
  type(): Promise<void>;
  update(): Promise<void>;
}

const hosts: Readonly<Record<string, () => Promise<Host>>> = {
  "a file": async () => {
    let { file } = await writeBook(plan);
    const read = () => readBook(file);
    return {
      read,
      type: async () => {
        file = await writeCells(file, [typed(await read())]);
      },
      update: async () => {
        file = await withPunchList(file, reportOf(await read(), TODAY));
      },
    };
  },
  Excel: async () => {
    const host = standInHost(await builtExcel(plan));
    const read = () => host.read(WATCH);
    return {
      read,
      type: async () => host.change({ change: [typed(await read())] }, WATCH),
      update: async () => host.change(punchChanges(reportOf(await read(), TODAY)), WATCH),
    };
  },
};

test.each(Object.entries(hosts))(
  "in %s the punch list is filled from findings, and keeps what was typed",
  async (_name, make) => {
    const host = await make();
    await host.update();
    const first = punchOf(await host.read());
    const findings = reportOf(await host.read(), TODAY).findings.filter(
      ({ weight }) => weight !== "note",
    );
    expect(first.map(({ what }) => what).sort()).toEqual(
      findings.map(({ message }) => message).sort(),
    );
    await host.type();
    await host.update();
    const items = punchOf(await host.read());
    expect(items).toHaveLength(first.length + 1);
    expect(items.find(({ number }) => number === first[0]?.number)?.owner).toBe("Fitter 2");
    expect(items.find(({ what }) => what === "Door scratched")).toMatchObject({
      number: first.length + 1,
      weight: "stop",
    });
    // Brought up to date once more, nothing is to be written.
    const { change = [] } = punchChanges(reportOf(await host.read(), TODAY));
    expect(change.flatMap(({ writes }) => writes)).toEqual([]);
  },
);

test("in Excel an item that somebody typed into meanwhile is not written over", async () => {
  const host = standInHost(await builtExcel(plan));
  await host.change(punchChanges(reportOf(await host.read(WATCH), TODAY)), WATCH);
  const known = await host.read(WATCH);
  await host.change({ change: [typed(known)] }, WATCH);
  const before = await host.read(WATCH);
  // What is known of the list is older than what stands there.
  const { lineup } = openBook(known);
  const stale = reportOf({ ...known, lineup }, TODAY + 1);
  const change = punchChanges({
    ...stale,
    findings: [],
  });
  await expect(host.change(change, WATCH)).rejects.toThrow("was changed since it was read");
  expect(punchOf(await host.read(WATCH))).toEqual(punchOf(before));
});
