import { describe, expect, test } from "vitest";
import { concede } from "../../../src/check/concessions/concede";
import { punchList } from "../../../src/check/punch/punchList";
import { punchChanges } from "../../../src/check/punch/punchWrites";
import type { CellValue, Row } from "../../../src/records/kind";
import { KINDS } from "../../../src/records/kinds";
import { CONCESSION_COLUMNS } from "../../../src/sheets/ours/concessionSheet";
import { PUNCH_COLUMNS, PUNCH_TABLE } from "../../../src/sheets/ours/punchSheet";
import { reportOf } from "../../support/checkBook";
import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, sound, TODAY, TORQUE } from "../support";

/** Cells of an item by header, as the sheet has them. */
const byHeader = (cells: Row): Record<string, CellValue> =>
  Object.fromEntries(PUNCH_COLUMNS.map(({ id, header }) => [header, cells[id] ?? null]));

/** The workbook with its punch list brought up to date, row by row anew. */
function brought(book: MemoryBook, isFinal = false): Row[] {
  const report = reportOf(book.snapshot, TODAY, isFinal);
  // The stored results are not calculated again here, which other rules rightly say.
  const findings = report.findings.filter(({ rule }) => RULES.includes(rule));
  const items = punchList({ ...report, findings });
  const before = reportOf(book.snapshot, TODAY).context.snapshot;
  const sheet = before.sheets.find(({ tables }) => tables[0]?.name === PUNCH_TABLE);
  for (let row = (sheet?.tables[0]?.rowCount ?? 0) - 1; row >= 0; row--)
    book.removeRow(PUNCH_TABLE, row);
  for (const { cells } of items) book.addRow(PUNCH_TABLE, byHeader(cells));
  return items.map(({ cells }) => cells);
}

const RULES = ["out-of-limits", "still-open"];

const loose = () => {
  const book = sound();
  book.set(TORQUE, 0, "Applied N·m", 20);
  return book;
};
const tighten = (book: MemoryBook) => book.set(TORQUE, 0, "Applied N·m", 60);
const accept = (book: MemoryBook, reason: string) => {
  const [finding] = reportOf(book.snapshot, TODAY).findings;
  if (!finding) throw new Error("nothing to accept");
  const row = concede(finding, { reason, name: "E. Engineer", date: "2026-11-20" });
  book.addRow(
    "GearConcessions",
    Object.fromEntries(CONCESSION_COLUMNS.map(({ id, header }) => [header, row[id] ?? null])),
  );
};

describe("an item of the punch list", () => {
  test("comes of a finding, open, with its place, number and day", () => {
    const [item, ...others] = brought(loose());
    expect(others).toEqual([]);
    expect(item).toMatchObject({
      number: 1,
      panel: "=K0001",
      weight: "stop",
      state: "Open",
      raised: TODAY,
      check: "Found",
      rule: "out-of-limits",
    });
    expect(item?.what).toMatch(/Deviation/);
  });

  test("does not come of a slip in the list itself, which the check tells where it stands", () => {
    const book = sound();
    book.addRow(PUNCH_TABLE, byHeader({ what: "Bolt loose", panel: "=K9999", state: "Open" }));
    const report = reportOf(book.snapshot, TODAY);
    expect(report.findings.map(({ rule }) => rule)).toContain("list-odd");
    expect(punchList(report).map(({ cells }) => cells.what)).toEqual(["Bolt loose"]);
  });

  test("keeps what was typed, and its number, when it is brought up to date", () => {
    const book = loose();
    brought(book);
    const said = {
      Owner: "Fitter 2",
      Due: TODAY + 5,
      "Closing note": "new bolt",
      "Photos, files": "bolt.jpg",
    };
    for (const [header, value] of Object.entries(said)) book.set(PUNCH_TABLE, 0, header, value);
    book.set(TORQUE, 0, "Applied N·m", 25);
    const [item] = brought(book);
    expect(item).toMatchObject({
      owner: "Fitter 2",
      due: TODAY + 5,
      note: "new bolt",
      files: "bolt.jpg",
    });
    expect(item).toMatchObject({ number: 1, state: "Open", raised: TODAY });
  });

  test("is closed, not taken off, when its finding is gone, and opened when it is back", () => {
    const book = loose();
    brought(book);
    tighten(book);
    expect(brought(book)).toMatchObject([
      { number: 1, state: "Closed", check: "Gone", closed: TODAY },
    ]);
    book.set(TORQUE, 0, "Applied N·m", 20);
    expect(brought(book)).toMatchObject([
      { number: 1, state: "Open", check: "Found", closed: null },
    ]);
  });

  test("that a person closed stays closed, and is told as still found", () => {
    const book = loose();
    brought(book);
    book.set(PUNCH_TABLE, 0, "State", "Closed");
    expect(brought(book)).toMatchObject([{ state: "Closed", check: "Found" }]);
  });

  test("stays as accepted, with who and why; a withdrawal opens it", () => {
    const book = loose();
    brought(book);
    accept(book, "Bolt of the new type, INV-77");
    expect(brought(book)).toMatchObject([
      { state: "Accepted", accepted: "Bolt of the new type, INV-77 (E. Engineer, 2026-11-20)" },
    ]);
    book.removeRow("GearConcessions", 0);
    expect(brought(book)).toMatchObject([{ state: "Open", accepted: null }]);
  });

  test("written by hand stays as it is, and gets a number", () => {
    const book = loose();
    book.addRow(PUNCH_TABLE, { What: "Door scratched", Panel: "=K0002", Severity: "query" });
    const items = brought(book);
    expect(items).toMatchObject([
      { weight: "stop", rule: "out-of-limits" },
      { what: "Door scratched", panel: "=K0002", number: 1 },
    ]);
    expect(brought(book)).toMatchObject(items);
  });

  test("of what nobody has begun stays until a check for hand-over sees to it", () => {
    const book = sound();
    const entries = KINDS.find(({ table }) => table === CONTACT)?.columns ?? [];
    for (const row of [0, 1, 2])
      for (const { header, role } of entries)
        if (role === "entry") book.set(CONTACT, row, header, null);
    const [item] = brought(book, true).filter(({ rule }) => rule === "still-open");
    expect(item?.state).toBe("Open");
    const later = brought(book).find(({ number }) => number === item?.number);
    expect(later?.state).toBe("Open");
  });
});

test("open items stand before accepted and closed ones, stops before queries, panels in their order", () => {
  const book = sound();
  const by = (what: string, panel: string, weight: string, state: string) =>
    book.addRow(PUNCH_TABLE, { What: what, Panel: panel, Severity: weight, State: state });
  by("d", "=K0001", "stop", "Closed");
  by("b", "=K0003", "stop", "Open");
  by("c", "=K0001", "query", "In hand");
  by("e", "=K0002", "stop", "Accepted");
  by("a", "=K0001", "stop", "Open");
  expect(brought(book).map(({ what }) => what)).toEqual(["a", "b", "c", "e", "d"]);
});

test("a column of the user's own moves with its row; where it has formulas, rows stay in their places", () => {
  const book = sound();
  book.addRow(PUNCH_TABLE, { What: "later", Severity: "query", State: "Open" });
  book.addRow(PUNCH_TABLE, { What: "first", Severity: "stop", State: "Open" });
  const withColumn = (formula?: string) => {
    const { sheets, ...rest } = book.snapshot;
    return {
      ...rest,
      sheets: sheets.map((sheet) => ({
        ...sheet,
        tables: sheet.tables.map((table) =>
          table.name === PUNCH_TABLE
            ? {
                ...table,
                headers: [...table.headers, "Cost"],
                cell: (row: number, column: number) =>
                  column === table.headers.length
                    ? ([100, 200][row] ?? null)
                    : table.cell(row, column),
                formula: (row: number, column: number) =>
                  column === table.headers.length ? formula : table.formula(row, column),
              }
            : table,
        ),
      })),
    };
  };
  const cost = PUNCH_COLUMNS.length;
  const what = PUNCH_COLUMNS.findIndex(({ id }) => id === "what");
  const writes = (formula?: string) =>
    (punchChanges(reportOf(withColumn(formula), TODAY)).change ?? []).flatMap((one) =>
      one.writes.filter(({ column }) => column === cost || column === what),
    );
  expect(writes()).toEqual([
    { row: 0, column: what, value: "first" },
    { row: 0, column: cost, value: 200 },
    { row: 1, column: what, value: "later" },
    { row: 1, column: cost, value: 100 },
  ]);
  expect(writes("[@No.]*100")).toEqual([]);
});
