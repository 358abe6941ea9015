import { describe, expect, test } from "vitest";
import type { Report } from "../../../src/check/check";
import { insulation } from "../../../src/records/kinds/insulation";
import { planFor } from "../../../src/sheets/plan/plan";
import { recordTables } from "../../../src/sheets/recordTable";
import { recheck, reportOf } from "../../support/checkBook";
import { longLineup } from "../../support/lineups";
import { type MemoryBook, memoryBook } from "../../support/memoryBook";
import { CONTACT, INSULATION, rowOf, sound, soundOf, TODAY } from "../support";

const checked = (book: MemoryBook, isFinal = false): Report =>
  reportOf(book.snapshot, TODAY, isFinal);
const blankBook = () => memoryBook(planFor(longLineup(3)));
const rowsIn = ({ counts }: Report) => Object.values(counts).reduce((sum, count) => sum + count, 0);

describe("a job at hours of its life", () => {
  test("nothing recorded is progress, and no finding", () => {
    const { counts, findings } = checked(blankBook());
    expect(findings).toEqual([]);
    expect(counts.open).toBeGreaterThan(100);
    expect(counts.missing).toBe(0);
  });

  test("a test that was begun lacks its other phases; those not begun stay open", () => {
    const book = blankBook();
    const before = checked(book);
    const row = rowOf(book, CONTACT, "L1");
    book.set(CONTACT, row, "R µΩ", 31);
    const { counts, findings } = checked(book);
    const lacking = findings.filter(({ rule }) => rule === "missing-reading");
    // What one panel lacks is one finding, with its list.
    expect(lacking.map(({ sheet, further }) => [sheet, further?.length])).toEqual([
      ["Contacts", 1],
    ]);
    expect(counts.open).toBe(before.counts.open - 3);
    expect(counts.missing).toBe(2);
  });

  test("the same comes of checking again after the edit", () => {
    const book = blankBook();
    const before = checked(book);
    book.set(CONTACT, rowOf(book, CONTACT, "L1"), "R µΩ", 31);
    const again = recheck(before, book.snapshot);
    const whole = checked(book);
    expect(again.ok && again.report.counts).toEqual(whole.counts);
    expect(again.ok && again.report.findings).toEqual(whole.findings);
  });

  test("of a workbook that is all but done a blank test is one that was forgotten", () => {
    const book = sound();
    for (const { header, role } of insulation.columns)
      for (const row of [0, 1, 2])
        if (role === "entry" || role === "note") book.set(INSULATION, row, header, null);
    const { counts, findings } = checked(book);
    expect(counts.open).toBe(0);
    const lacking = findings.filter(({ rule }) => rule === "missing-reading");
    expect(lacking.map(({ further }) => further?.length)).toEqual([2]);
  });

  test("at hand-over what is open is a stop, a line for each panel and record", () => {
    const report = checked(blankBook(), true);
    const open = report.findings.filter(({ rule }) => rule === "still-open");
    const places = new Set(open.map(({ panel, record }) => `${panel} ${record}`));
    expect(open.every(({ weight }) => weight === "stop")).toBe(true);
    expect(open.length).toBe(places.size);
    expect(open.length).toBeLessThan(rowsIn(report) / 3);
    expect(open.some(({ message }) => /nothing recorded \(\d+ rows?\)\.$/.test(message))).toBe(
      true,
    );
  });

  test("a lineup is energized panel by panel: the steps of those not reached yet, and readings under load, are open", () => {
    const FURTHER = ["energization", "rotation", "partialDischarge"] as const;
    const book = soundOf(3, { furtherRecords: FURTHER.map((kind) => ({ kind })) });
    const clear = (table: string, of: (object: string, part: string) => boolean) => {
      const at = recordTables(book.snapshot).find((one) => one.table.name === table);
      for (const [row, { object, part }] of at?.rows.entries() ?? [])
        if (of(String(object), String(part)))
          for (const { header, role } of at?.kind.columns ?? [])
            if (role === "entry" || role === "note") book.set(table, row, header, null);
    };
    clear("GearPartialDischarge", () => true);
    clear("GearRotation", (object) => object !== "=K0001");
    clear("GearEnergization", (object, part) => /^=K000[23]$/.test(object) || /^After/.test(part));
    const { counts } = checked(book);
    const lackingNow = () =>
      checked(book).findings.filter(({ rule }) => rule === "missing-reading");
    expect(lackingNow()).toEqual([]);
    expect(counts.missing).toBe(0);
    expect(counts.open).toBeGreaterThan(20);
    const covers = "Before: covers, barriers and doors closed and locked";
    clear("GearEnergization", (object, part) => object === "=K0001" && part === covers);
    expect(lackingNow().map(({ row }) => row)).toEqual([`=K0001 · ${covers}`]);
    const atHandOver = checked(book, true).findings.filter(({ rule }) => rule === "still-open");
    const energization = atHandOver.filter(({ record }) => record === "energization");
    expect(energization.map(({ panel }) => panel)).toEqual(["=K0001", "=K0002", "=K0003"]);
  });

  test("a sound workbook is sound at hand-over too", () => {
    expect(checked(sound(), true).findings).toEqual([]);
  });
});
