import { readXlsx } from "hucre/xlsx";
import { beforeAll, describe, expect, test } from "vitest";
import type { Report } from "../../src/check/check";
import { firstSteps, nextSteps } from "../../src/check/progress/next";
import { markFindings } from "../../src/excel/workbook";
import { openBook } from "../../src/intake/openBook";
import { type Reopened, reopenRecord } from "../../src/intake/reopenRecord";
import { withResults } from "../../src/intake/takeIn";
import { isMarkRule } from "../../src/look/markLook";
import { reopen } from "../../src/pane/check/reopen";
import { type CellValue, keyIds, type Row, rowKey } from "../../src/records/kind";
import { KINDS, RECORD_KINDS } from "../../src/records/kinds";
import { areaAddress } from "../../src/sheets/cells/area";
import { planFor } from "../../src/sheets/plan/plan";
import type { Snapshot } from "../../src/sheets/snapshot";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { markFile } from "../../src/xlsx/writeMarks";
import { builtExcel, inExcel, placed } from "../excel/excelSupport";
import { reportOf } from "../support/checkBook";
import { filledPlan, SOUND } from "../support/fill";
import { english } from "../support/inWords";
import { longLineup } from "../support/lineups";
import { standInHost, WATCH } from "./standInHost";

/** The day of the check: 26 November 2026, after all tests. */
const TODAY = 46_352;
const KEPT: readonly string[] = ["torque", "contact", "insulation", "withstand"];
const lineup = longLineup(2, {
  leaveOut: RECORD_KINDS.filter((kind) => !KEPT.includes(kind)).map((kind) => ({
    kind,
    reason: "Takes long.",
  })),
  criteria: [{ from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" }],
  withstand: { wave: "AC", seconds: 60 },
});
const full = filledPlan(lineup, 11, {
  ...SOUND,
  GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 27 }),
});

/** What a sound job has recorded in the end: entries by table and row. */
const entries = (which: (kind: string, row: Row) => boolean) =>
  full.sheets.flatMap(({ table, columns, rows }) => {
    const kind = KINDS.find((one) => one.table === table);
    if (!kind || !KEPT.includes(kind.id)) return [];
    return rows.flatMap((row, at) =>
      which(kind.id, row)
        ? columns.flatMap(({ id, role }) =>
            role === "entry" && (row[id] ?? null) !== null
              ? [{ table, row: at, column: id, value: row[id] ?? null }]
              : [],
          )
        : [],
    );
  });
type Entry = ReturnType<typeof entries>[number];

interface Way {
  read(): Promise<Snapshot>;
  fill(entries: readonly Entry[]): Promise<void>;
  reopen(reopened: Reopened): Promise<void>;
  /** Marks the findings; the sheet and the cells of each mark. */
  mark(report: Report): Promise<string[]>;
}

const cellsOf = (snapshot: Snapshot, some: readonly Entry[]) =>
  [...new Set(some.map(({ table }) => table))].flatMap((name) =>
    placed(
      snapshot,
      name,
      some
        .filter(({ table }) => table === name)
        .map(({ row, column, value }): [number, string, CellValue] => [row, column, value]),
    ),
  );

async function fileWay(): Promise<Way> {
  let { file } = await writeBook(planFor(lineup));
  const read = () => readBook(file);
  const write = async (cells: Reopened["cells"], before: Reopened["before"] = {}) => {
    const book = openBook(await read());
    const changes = [...withResults(book, cells), ...(before.change ?? [])];
    file = await writeCells(file, changes, before);
  };
  return {
    read,
    fill: async (some) => write(cellsOf(await read(), some)),
    reopen: ({ before, cells }) => write(cells, before),
    mark: async ({ findings }) => {
      const { sheets } = await readXlsx(await markFile(file, findings), { readStyles: true });
      return sheets.flatMap(({ name, conditionalRules = [] }) =>
        conditionalRules
          .filter(({ formula }) => isMarkRule(String(formula)))
          .map(({ formula, range }) => `${name} ${formula} ${range.split(" ").sort().join(" ")}`),
      );
    },
  };
}

async function excelWay(): Promise<Way> {
  const excel = await builtExcel(planFor(lineup));
  const host = standInHost(excel);
  return {
    read: () => host.read(WATCH),
    fill: async (some) => {
      const { heldBack } = await host.fill(cellsOf(await host.read(WATCH), some), WATCH);
      expect(heldBack).toEqual([]);
    },
    reopen: async (reopened) => void (await reopen(host, reopened, WATCH)),
    mark: async ({ findings }) => {
      await inExcel(excel, (context) => markFindings(context, findings));
      return excel.book.sheets.flatMap(({ name, formats }) =>
        formats
          .filter(
            ({ type, properties }) =>
              type === "Custom" && isMarkRule(String(properties["rule.formula"])),
          )
          .map(
            ({ areas, properties }) =>
              `${name} ${String(properties["rule.formula"]).replace(/^=/, "")} ${areas
                .map(areaAddress)
                .sort()
                .join(" ")}`,
          ),
      );
    },
  };
}

/** How a job stands: rows by state, what is found, what is marked, what is next. */
async function hour(way: Way) {
  const snapshot = await way.read();
  const report = reportOf(snapshot, TODAY);
  return {
    counts: report.counts,
    findings: report.findings.map(({ rule, weight, row }) => `${rule} ${weight} ${row}`),
    marks: (await way.mark(report)).sort(),
    next: firstSteps(nextSteps(report.context)).map(
      ({ kind, object, missing, blockedBy }) =>
        `${object}: ${kind.id} ${missing}${blockedBy.map(({ kind: by }) => ` after ${by.id}`).join("")}`,
    ),
    stops: reportOf(snapshot, TODAY, true).findings.filter(({ weight }) => weight === "stop")
      .length,
  };
}

const isPole = (kind: string, { object, part, pole }: Row, name = "L1") =>
  kind === "contact" && object === "=K0001" && part === "Breaker Q0" && pole === name;

/** The failed pole: as the sound one, with a resistance that no contact may have. */
const failed = () =>
  entries((kind, row) => isPole(kind, row)).map((one) =>
    one.column === "reading" ? { ...one, value: 914 } : one,
  );

async function life(way: Way) {
  const nothing = await hour(way);
  await way.fill(entries((kind, row) => isPole(kind, row)));
  const begun = await hour(way);
  const ofFirst = (kind: string, row: Row) =>
    row.object === "=K0001" && (kind === "torque" || kind === "contact");
  await way.fill(entries((kind, row) => ofFirst(kind, row) && !isPole(kind, row)));
  const half = await hour(way);
  // The pole is read again, and fails.
  await way.fill(failed().filter(({ column }) => column === "reading"));
  const broken = await hour(way);
  const book = openBook(await way.read());
  const table = book.tables.find(({ kind }) => kind.id === "contact");
  const at = table?.rows.findIndex((row) => isPole("contact", row)) ?? -1;
  if (!table) throw new Error("no contacts");
  const repair = { cause: "Film", done: "Cleaned", by: "A. N. Other", day: 46_341 };
  const reopened = reopenRecord(book, table, at, { ...repair, work: "Other" }, TODAY);
  if (!reopened.ok) throw new Error(reopened.say(english));
  await way.reopen(reopened.value);
  const repaired = await hour(way);
  // The retest is of the day after the repair, and so is what follows.
  const later = (one: Entry): Entry =>
    one.column === "date" ? { ...one, value: Math.max(46_342, Number(one.value)) } : one;
  await way.fill(entries((kind, row) => isPole(kind, row)).map(later));
  const retested = await hour(way);
  await way.fill(entries((kind, row) => !ofFirst(kind, row)));
  const done = await hour(way);
  const key = rowKey(table.rows[at] ?? {}, keyIds(table.kind));
  return { nothing, begun, half, broken, repaired, retested, done, key };
}
type Life = Awaited<ReturnType<typeof life>>;

describe("a job at the hours of its life", () => {
  let inFile: Life;
  let inExcelToo: Life;
  const all = () => Object.values(inFile.nothing.counts).reduce((sum, count) => sum + count, 0);

  beforeAll(async () => {
    inFile = await life(await fileWay());
    inExcelToo = await life(await excelWay());
  }, 240_000);

  test("stands alike in a file and in Excel: states, marks and next steps", () => {
    expect(inExcelToo).toEqual(inFile);
  });

  test("nothing: all rows are open, nothing is found or marked, and the joints are next", () => {
    const { counts, findings, marks, next, stops } = inFile.nothing;
    expect(counts.open).toBe(all());
    expect([findings, marks]).toEqual([[], []]);
    expect(next.some((step) => /^=K0001: torque \d+$/.test(step))).toBe(true);
    // At hand-over a line for each panel or section and record.
    expect(stops).toBeGreaterThan(4);
    expect(stops).toBeLessThan(all() / 2);
  });

  test("begun: the poles that a test lacks are missing and marked, and no other row is", () => {
    const { counts, findings, marks } = inFile.begun;
    expect(counts).toMatchObject({ pass: 1, missing: 2, open: all() - 3 });
    // One finding for both poles of the test.
    expect(findings).toEqual(["missing-reading stop =K0001 · Breaker Q0 · L2"]);
    expect(marks.length).toBeGreaterThan(0);
    expect(marks.every((mark) => mark.startsWith("Contacts "))).toBe(true);
  });

  test("half: what is done passes, what is not is open, and the other panel is next", () => {
    const { counts, findings, marks, next } = inFile.half;
    expect([findings, marks]).toEqual([[], []]);
    expect([counts.missing, counts.fail]).toEqual([0, 0]);
    expect(counts.pass).toBeGreaterThan(5);
    expect(counts.pass + counts.open).toBe(all());
    expect(next.some((step) => /^=K0002: torque \d+$/.test(step))).toBe(true);
    expect(next.some((step) => /^=K0001: (torque|contact)/.test(step))).toBe(false);
  });

  test("failed: the row fails, and its cell is marked", () => {
    const { counts, findings, marks } = inFile.broken;
    expect(counts.fail).toBe(1);
    expect(findings).toContain(`out-of-limits stop ${inFile.key}`);
    expect(marks.some((mark) => /^Contacts LEN\("Gearproof mark: stop"\)/.test(mark))).toBe(true);
  });

  test("repaired: nothing fails, the retest is missing and next; retested, it stands as it did before", () => {
    const { repaired, retested, half, key } = inFile;
    expect(repaired.counts).toMatchObject({ fail: 0, missing: 1, pass: half.counts.pass - 1 });
    expect(repaired.findings).toContain(`missing-reading stop ${key}`);
    expect(repaired.next.some((step) => step === "=K0001: contact 1")).toBe(true);
    expect(retested).toEqual(half);
  });

  test("done: every row passes, and the check for hand-over has no stop", () => {
    const { counts, marks, next, stops } = inFile.done;
    expect(counts).toMatchObject({ pass: all(), fail: 0, missing: 0, open: 0 });
    expect([marks, next, stops]).toEqual([[], [], 0]);
  });
});
