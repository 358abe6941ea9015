import { describe, expect, test } from "vitest";
import {
  applyFills,
  applyPlan,
  clearMarks,
  markFindings,
  readExcel,
} from "../../src/excel/workbook";
import type { Lineup } from "../../src/lineup/lineup";
import { KINDS } from "../../src/records/kinds";
import { BookError } from "../../src/sheets/bookError";
import { type Plan, planFor } from "../../src/sheets/plan/plan";
import type { StandInBook } from "../../src/standin/book";
import { snapshotOfBook } from "../../src/standin/calculate";
import type { Fault, StandInHost } from "../../src/standin/host";
import { check } from "../support/checkBook";
import { filledPlan } from "../support/fill";
import { longLineup } from "../support/lineups";
import { builtExcel, copied, entries, inExcel, newExcel, placed, state } from "./excelSupport";

type Cut = Omit<Fault, "batch">;
const CUTS: readonly Cut[] = [{ when: "before" }, { when: "midway" }, { when: "after" }];
/** Every fiftieth part of a batch's actions. */
const FINE: readonly Cut[] = Array.from({ length: 50 }, (_, at) => ({
  when: "midway",
  share: at / 50,
}));
/** Every eighth part of a batch's actions. */
const COARSE: readonly Cut[] = FINE.filter((_, at) => at % 6 === 0);
/** Batches made small, so that the work takes many of them. */
const SMALL = { most: 80_000 };

/**
 * Does a piece of work on copies of a workbook, failing it in every batch (or those named) and every
 * manner in turn; then without a failure on what it left behind.
 */
async function inEveryBatch(
  start: StandInHost,
  work: (context: Excel.RequestContext) => Promise<unknown>,
  afterFault: (book: StandInBook) => void,
  cuts = CUTS,
  only?: readonly number[],
): Promise<number> {
  const clean = copied(start);
  await inExcel(clean, work);
  const wanted = state(clean.book);
  const count = clean.batches.length;
  for (const batch of only ?? Array.from({ length: count }, (_, at) => at + 1))
    for (const cut of cuts) {
      const host = copied(start);
      host.fault = { batch, ...cut };
      const name = `batch ${batch} of ${count}, ${cut.when} ${cut.share ?? ""}`;
      const failed = await inExcel(host, work).then(
        () => undefined,
        (error: unknown) => error,
      );
      // The client's own release of its ranges, after the work, may fail unheard.
      if (failed === undefined) {
        expect(batch, name).toBe(count);
      } else {
        expect(failed, name).toBeInstanceOf(BookError);
        expect((failed as Error).message, name).toMatch(/did not come to its end/);
      }
      afterFault(host.book);
      host.fault = undefined;
      host.reset();
      await inExcel(host, work);
      expect(state(host.book), name).toEqual(wanted);
    }
  return count;
}

/** Records enough: with inputs, limits of two sorts, and a column that looks over its whole table. */
const KEPT: readonly string[] = ["contact", "insulation", "withstand"];

/** A lineup with few sheets, since every batch of the work on it is broken many times over. */
const smallLineup = (panels: number, changes: Partial<Lineup> = {}): Lineup =>
  longLineup(panels, {
    ...changes,
    leaveOut: KINDS.filter(({ id }) => !KEPT.includes(id)).map(({ id }) => ({
      kind: id,
      reason: "Takes long.",
    })),
  });

const build = (plan: Plan) => (context: Excel.RequestContext) => applyPlan(context, plan, SMALL);

describe("a failure in any batch, nothing done, half done or all done of it", () => {
  test("of building a new workbook", async () => {
    const plan = planFor(smallLineup(1));
    const batches = await inEveryBatch(newExcel(), build(plan), () => {});
    expect(batches).toBeGreaterThan(8);
  });

  test("of building in one batch, wherever it is cut", async () => {
    const plan = planFor(smallLineup(1));
    const work = (context: Excel.RequestContext) => applyPlan(context, plan);
    expect(await inEveryBatch(newExcel(), work, () => {}, FINE, [3])).toBe(3);
  });

  test("of building a grown and changed plan onto a workbook that is filled in", async () => {
    const start = await builtExcel(filledPlan(smallLineup(2), 1));
    const readings = entries(snapshotOfBook(start.book));
    const batches = await inEveryBatch(
      start,
      build(planFor(smallLineup(4, { basis: "IEC" }))),
      (book) => {
        for (const [table, rows] of Object.entries(entries(snapshotOfBook(book))))
          expect(rows.slice(0, readings[table]?.length)).toEqual(readings[table]);
      },
    );
    expect(batches).toBeGreaterThan(4);
  });

  test("of growing and changing a workbook, wherever a batch is cut", async () => {
    const start = await builtExcel(filledPlan(smallLineup(1), 1));
    const readings = entries(snapshotOfBook(start.book));
    const plan = planFor(smallLineup(2, { basis: "IEC" }));
    // Rows come in the fifth batch, what is written over in the seventh, and the last is the client's release.
    const work = (context: Excel.RequestContext) => applyPlan(context, plan);
    const kept = (book: StandInBook) => {
      for (const [table, rows] of Object.entries(entries(snapshotOfBook(book))))
        expect(rows.slice(0, readings[table]?.length)).toEqual(readings[table]);
    };
    expect(await inEveryBatch(start, work, kept, COARSE, [5, 7])).toBe(9);
  });

  test("of placing readings", async () => {
    const start = await builtExcel(filledPlan(smallLineup(2), 2));
    const before = snapshotOfBook(start.book);
    const fills = placed(
      before,
      "GearWithstand",
      Array.from({ length: 9 }, (_, row) => [row, "applied", 27 + row / 10] as const),
    );
    const contact = placed(before, "GearContact", [
      [0, "remarks", "007"],
      [2, "remarks", "=K01 again"],
    ]);
    const others = (book: StandInBook) => {
      const now = entries(snapshotOfBook(book));
      return { insulation: now.GearInsulation, contact: now.GearContact };
    };
    const was = others(start.book);
    const batches = await inEveryBatch(
      start,
      (context) => applyFills(context, [...fills, ...contact], { most: 5_000 }),
      (book) => {
        expect(others(book)).toEqual(was);
        const rows = entries(snapshotOfBook(book)).GearWithstand ?? [];
        const old = entries(before).GearWithstand ?? [];
        rows.forEach((row, at) => {
          const [is, before, value] = [row[4], old[at]?.[4], fills[at]?.value];
          expect([before, value]).toContain(is);
        });
      },
    );
    expect(batches).toBeGreaterThan(3);
  });

  test("of marking, with marks there from before", async () => {
    const start = await builtExcel(filledPlan(smallLineup(3), 3));
    const read = await inExcel(start, (context) => readExcel(context));
    const checked = check(read, 46_400);
    if (!checked.ok) throw new Error(checked.reason);
    const { findings } = checked.report;
    await inExcel(start, (context) => markFindings(context, findings.slice(0, 3)));
    const readings = entries(snapshotOfBook(start.book));
    start.reset();
    const batches = await inEveryBatch(
      start,
      (context) => markFindings(context, findings, { most: 8_000 }),
      (book) => {
        expect(entries(snapshotOfBook(book))).toEqual(readings);
      },
    );
    expect(batches).toBeGreaterThan(4);
  });

  test("of marking in one batch, wherever it is cut", async () => {
    const start = await builtExcel(planFor(smallLineup(1)));
    const read = await inExcel(start, (context) => readExcel(context));
    const checked = check(read, 46_400, true);
    if (!checked.ok) throw new Error(checked.reason);
    start.reset();
    const work = (context: Excel.RequestContext) => markFindings(context, checked.report.findings);
    expect(await inEveryBatch(start, work, () => {}, FINE, [3])).toBe(3);
  });

  test("of clearing the marks", async () => {
    const start = await builtExcel(filledPlan(smallLineup(3), 3));
    const unmarked = state(start.book);
    const read = await inExcel(start, (context) => readExcel(context));
    const checked = check(read, 46_400);
    if (!checked.ok) throw new Error(checked.reason);
    await inExcel(start, (context) => markFindings(context, checked.report.findings));
    expect(state(start.book)).not.toEqual(unmarked);
    start.reset();
    await inEveryBatch(
      start,
      (context) => clearMarks(context),
      () => {},
    );
    await inExcel(start, (context) => clearMarks(context));
    expect(state(start.book)).toEqual(unmarked);
  });

  test("of reading changes nothing", async () => {
    const start = await builtExcel(filledPlan(smallLineup(2), 4));
    await inEveryBatch(
      start,
      (context) => readExcel(context, SMALL),
      () => {},
    );
  });
});

test.each([
  ["InvalidOperationInCellEditMode", /a cell is being typed in; finish it with Enter/],
  ["AccessDenied", /protected or open for reading only/],
  ["ItemNotFound", /has gone in the meantime/],
  ["ConnectionFailure", /the connection to Excel is lost/],
  ["SomethingElse", /Excel answered: a failure put in by the test/],
])("%s is told in words", async (code, words) => {
  const host = await builtExcel(planFor(smallLineup(1)));
  host.fault = { batch: 2, when: "before", code };
  const reading = inExcel(host, (context) => readExcel(context));
  await expect(reading).rejects.toThrow(BookError);
  await expect(reading).rejects.toThrow(words);
});

test("while a cell is being typed in, nothing is done and it is said", async () => {
  const host = await builtExcel(planFor(smallLineup(1)));
  const before = state(host.book);
  host.editing = true;
  await expect(
    inExcel(host, (context) => applyPlan(context, planFor(smallLineup(2)))),
  ).rejects.toThrow(/finish it with Enter, or leave it with Esc/);
  expect(state(host.book)).toEqual(before);
});
