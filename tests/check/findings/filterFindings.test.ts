import { describe, expect, test } from "vitest";
import { concede } from "../../../src/check/concessions/concede";
import { withdraw } from "../../../src/check/concessions/withdraw";
import { byCause, filterFindings, NO_FILTER } from "../../../src/check/findings/filterFindings";
import { type Row, verdictOf } from "../../../src/records/kind";
import { CONCESSION_TABLE } from "../../../src/sheets/ours/concessionSheet";
import { tablesOf } from "../../../src/sheets/snapshot";
import { check } from "../../support/checkBook";
import { filledPlan } from "../../support/fill";
import { longLineup } from "../../support/lineups";
import { type MemoryBook, memoryBook } from "../../support/memoryBook";

const TODAY = 46_400;
const LINEUP = longLineup(2);

/** A filled workbook with concessions and three insulation readings far too low, one of them made today by somebody. */
function low(concessions: readonly Row[] = []): MemoryBook {
  const { sheets, ...plan } = filledPlan(LINEUP, 3);
  const book = memoryBook({
    ...plan,
    sheets: sheets.map((sheet) =>
      sheet.table === CONCESSION_TABLE ? { ...sheet, rows: concessions } : sheet,
    ),
  });
  for (const row of [0, 1, 2]) book.set("GearInsulation", row, "R 1 min MΩ", 2);
  book.set("GearInsulation", 1, "Date", TODAY);
  book.set("GearInsulation", 1, "Tested by", "B. Invented");
  return book;
}

const reportOf = (book: MemoryBook) => {
  const checked = check(book.snapshot, TODAY);
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report;
};

describe("findings are filtered", () => {
  const report = reportOf(low());
  const list = (filter: Partial<typeof NO_FILTER>) =>
    filterFindings(report, { ...NO_FILTER, ...filter });

  test("by nothing: all are listed, heaviest first", () => {
    expect(list({})).toHaveLength(report.findings.length);
    const weights = list({}).map(({ weight }) => ["stop", "query", "note"].indexOf(weight));
    expect(weights).toEqual([...weights].sort((one, other) => one - other));
  });

  test("by the result of their row", () => {
    const failed = list({ state: "Fail" });
    expect(failed.length).toBeGreaterThanOrEqual(3);
    const table = report.context.tables.find(({ kind }) => kind.id === "insulation");
    for (const { record, row } of failed.filter(({ record }) => record === "insulation"))
      expect([record, verdictOf(table?.judged[table.keys.indexOf(row ?? "")] ?? {})]).toEqual([
        "insulation",
        "Fail",
      ]);
    expect(list({ state: "Missing" }).length).toBeLessThan(list({}).length);
  });

  test("by who tested today, in whatever case the name is written", () => {
    const mine = list({ state: "today", tester: "b. invented " });
    expect(mine.length).toBeGreaterThan(0);
    const rows = new Set(mine.map(({ row }) => row));
    const table = report.context.tables.find(({ kind }) => kind.id === "insulation");
    expect([...rows]).toEqual([table?.keys[1]]);
    expect(list({ state: "today", tester: "C. Nobody" })).toEqual([]);
  });

  test("by panel and record together", () => {
    const [first] = list({ state: "Fail", record: "insulation" });
    const some = list({ record: "insulation", panel: first?.panel ?? "" });
    expect(some.length).toBeGreaterThan(0);
    expect(new Set(some.map(({ panel }) => panel))).toEqual(new Set([first?.panel]));
  });

  test("and those of one cause stand together, none lost", () => {
    const causes = byCause(list({}));
    expect(causes.flat()).toHaveLength(list({}).length);
    const limits = causes.find(([first]) => first?.rule === "out-of-limits");
    expect(limits?.length).toBeGreaterThanOrEqual(3);
    expect(new Set(limits?.map(({ column }) => column)).size).toBe(1);
  });
});

describe("an acceptance", () => {
  const given = { reason: "INV-NCR-9 (invented)", name: "C. Accepting", date: "2027-01-13" };

  test("of several findings takes one row each, and one withdrawn leaves the others", () => {
    const before = reportOf(low());
    const three = byCause(
      filterFindings(before, { ...NO_FILTER, state: "Fail", record: "insulation" }),
    ).find(([first]) => first?.rule === "out-of-limits");
    const book = low((three ?? []).map((finding) => concede(finding, given)));
    const accepted = reportOf(book).findings.filter(({ concession }) => concession);
    expect(accepted).toHaveLength(three?.length ?? -1);
    const [first, ...others] = accepted;
    const table = tablesOf(book.snapshot).find(({ name }) => name === CONCESSION_TABLE);
    if (!first || !table) throw new Error("nothing was accepted");
    for (const { row, column, value } of withdraw(first, table))
      book.set(CONCESSION_TABLE, row, table.headers[column] ?? "", value);
    const left = reportOf(book).findings.filter(({ concession }) => concession);
    expect(left.map(({ address }) => address)).toEqual(others.map(({ address }) => address));
  });

  test("that was never given has nothing to withdraw", () => {
    const book = low();
    const table = tablesOf(book.snapshot).find(({ name }) => name === CONCESSION_TABLE);
    const [finding] = reportOf(book).findings;
    expect(finding && table ? withdraw(finding, table) : undefined).toEqual([]);
  });
});
