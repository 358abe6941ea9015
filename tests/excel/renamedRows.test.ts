import { describe, expect, test } from "vitest";
import { applyChanges, applyPlan, readExcel } from "../../src/excel/workbook";
import type { Lineup } from "../../src/lineup/lineup";
import { criteriaRenamed, withFirstNamesKept } from "../../src/lineup/renamed";
import { checkLineup } from "../../src/records/readLineup";
import { CONCESSION_COLUMNS, CONCESSION_TABLE } from "../../src/sheets/ours/concessionSheet";
import { appended } from "../../src/sheets/plan/appended";
import { type Plan, planFor } from "../../src/sheets/plan/plan";
import { type Reconciled, reconcile } from "../../src/sheets/plan/reconcile";
import { recordTables } from "../../src/sheets/recordTable";
import { type Snapshot, tablesOf } from "../../src/sheets/snapshot";
import { readBook, writeBook } from "../../src/xlsx/file";
import { filledPlan } from "../support/fill";
import { equippedInFull, longLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";
import { builtExcel, inExcel } from "./excelSupport";

const LINEUP = equippedInFull(longLineup(3));

type Panel = Lineup["panels"][number];

/** The lineup after a change of its panels, as a file of it would be read. */
function changed(change: (panels: Panel[]) => Panel[]): Lineup {
  const panels = change(structuredClone(LINEUP.panels) as Panel[]);
  const read = checkLineup({
    ...LINEUP,
    panels,
    criteria: criteriaRenamed(LINEUP.criteria, panels),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  return read.value;
}

/** All entries that a workbook holds, row by row, whatever the rows are called. */
const readings = (snapshot: Snapshot) =>
  recordTables(snapshot).map(({ kind, rows }) => [
    kind.id,
    rows.map((row) =>
      kind.columns.filter(({ role }) => role === "entry").map(({ id }) => row[id] ?? null),
    ),
  ]);

/** A new name for the first panel, its breaker, a core and a cable, each with what it was known as. */
const renameAll = (panels: Panel[]): Panel[] =>
  panels.map((panel, at) =>
    at > 0
      ? panel
      : {
          ...panel,
          knownAs: panel.designation,
          designation: "+J99",
          ...(panel.breaker ? { breaker: { ...panel.breaker, designation: "Q99" } } : {}),
          currentTransformers: panel.currentTransformers.map((core) => ({
            ...core,
            knownAs: core.name,
            name: `${core.name} new`,
          })),
          cables: panel.cables.map((cable) => ({
            ...cable,
            knownAs: cable.designation,
            designation: `${cable.designation} new`,
          })),
        },
  );

const HOSTS: readonly (readonly [
  string,
  (lineup: Lineup) => Promise<{
    build: (plan: Plan) => Promise<Reconciled>;
    read: () => Promise<Snapshot>;
  }>,
])[] = [
  [
    "a file",
    async (lineup) => {
      let file = (await writeBook(filledPlan(lineup, 7))).file;
      return {
        build: async (plan) => {
          const built = await writeBook(plan, file);
          file = built.file;
          return built.done;
        },
        read: () => readBook(file),
      };
    },
  ],
  [
    "Excel",
    async (lineup) => {
      const host = await builtExcel(filledPlan(lineup, 7));
      return {
        build: (plan) => inExcel(host, (context) => applyPlan(context, plan)),
        read: () => inExcel(host, readExcel),
      };
    },
  ],
];

describe.each(HOSTS)("in %s", (_name, open) => {
  test("a panel, its breaker, cores and cables are called otherwise: every reading stays on its row, none is set aside", async () => {
    const book = await open(LINEUP);
    const before = readings(await book.read());
    const done = await book.build(planFor(changed(renameAll)));
    expect(done.create).toEqual([]);
    expect(done.change.flatMap(({ aside }) => aside)).toEqual([]);
    expect(done.change.filter(({ added }) => added > 0).map(({ table }) => table.name)).toEqual([]);
    expect(done.change.reduce((sum, { renamed }) => sum + renamed, 0)).toBeGreaterThan(20);
    const after = await book.read();
    expect(readings(after)).toEqual(before);
    const names = recordTables(after).flatMap(({ rows }) => rows.map(({ object }) => object));
    expect(names).toContain("+J99");
    expect(names).not.toContain(LINEUP.panels[0]?.designation);
    // Built once more, nothing is left to do.
    const again = await book.build(planFor(changed(renameAll)));
    expect(again.change.flatMap(({ writes, aside }) => [...writes, ...aside])).toEqual([]);
  });

  test("two panels change their names, one is put in between and one moves: readings go with the panel", async () => {
    const book = await open(LINEUP);
    const was = await book.read();
    const [first, second, third] = LINEUP.panels.map(({ designation }) => designation);
    const done = await book.build(
      planFor(
        changed(([one, two, three]) => {
          if (!one || !two || !three) throw new Error("three panels are needed");
          return [
            { ...three },
            { ...one, designation: two.designation, knownAs: one.designation },
            { designation: "=NEW", type: "riser", section: one.section } as Panel,
            { ...two, designation: one.designation, knownAs: two.designation },
          ];
        }),
      ),
    );
    const entriesOf = (snapshot: Snapshot, object: string | undefined) =>
      recordTables(snapshot)
        .filter(({ kind }) => kind.id === "insulation" || kind.id === "currentTransformer")
        .flatMap(({ kind, rows }) =>
          rows
            .filter((row) => row.object === object)
            .map((row) =>
              kind.columns.filter(({ role }) => role === "entry").map(({ id }) => row[id]),
            ),
        );
    const now = await book.read();
    expect(entriesOf(was, first).length).toBeGreaterThan(0);
    expect(entriesOf(now, second)).toEqual(entriesOf(was, first));
    expect(entriesOf(now, first)).toEqual(entriesOf(was, second));
    expect(entriesOf(now, third)).toEqual(entriesOf(was, third));
    expect(done.change.some(({ added }) => added > 0)).toBe(true);
  });
});

test("a concession follows the row that it is for", async () => {
  const host = await builtExcel(planFor(LINEUP));
  const before = await inExcel(host, readExcel);
  const table = tablesOf(before).find(({ name }) => name === CONCESSION_TABLE);
  const insulation = recordTables(before).find(({ kind }) => kind.id === "insulation");
  const row = insulation?.rows.find(({ object }) => object === LINEUP.panels[0]?.designation);
  if (!table || !row) throw new Error("the workbook lacks what this test needs");
  const key = ["object", "part", "combination", "stage"].map((id) => row[id]).join(" · ");
  const given = { rule: "stands-out", sheet: "Insulation", row: key, reason: "as agreed" };
  const rows = appended(CONCESSION_COLUMNS, [given], table);
  await inExcel(host, (context) => applyChanges(context, { change: [{ table, ...rows }] }));
  await inExcel(host, (context) => applyPlan(context, planFor(changed(renameAll))));
  const after = await inExcel(host, readExcel);
  const kept = tablesOf(after).find(({ name }) => name === CONCESSION_TABLE);
  const at = kept?.headers.indexOf("Row") ?? -1;
  const found = Array.from({ length: kept?.rowCount ?? 0 }, (_, row) => kept?.cell(row, at));
  expect(found).toContain(key.replace(String(row.object), "+J99"));
});

test("a row that has the new name already is not doubled", () => {
  const { snapshot } = memoryBook(filledPlan(LINEUP, 7));
  const taken = LINEUP.panels[1]?.designation ?? "";
  const done = reconcile(
    planFor(
      changed(([one, , three]) =>
        one && three ? [{ ...one, designation: taken, knownAs: one.designation }, three] : [],
      ),
    ),
    snapshot,
  );
  const insulation = done.change.find(({ table }) => table.name === "GearInsulation");
  expect(insulation?.renamed).toBe(0);
  expect(insulation?.aside.length).toBeGreaterThan(0);
});

test("the first name is written only where another could be meant", () => {
  const cores = { currentTransformers: [{ knownAs: "T1", name: "T1" }] };
  expect(
    withFirstNamesKept([
      { knownAs: "=H01", designation: "=H11", ...cores },
      { knownAs: "=H02", designation: "=H02" },
      { designation: "=H01" },
    ]),
  ).toEqual([
    { knownAs: "=H01", designation: "=H11", currentTransformers: [{ name: "T1" }] },
    { designation: "=H02" },
    { knownAs: "=H01 (2)", designation: "=H01" },
  ]);
});
