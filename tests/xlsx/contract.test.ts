import { readXlsx } from "hucre/xlsx";
import { describe, expect, test } from "vitest";
import type { Finding } from "../../src/check/findings/finding";
import {
  applyFills,
  applyPlan,
  clearMarks,
  markFindings,
  readExcel,
} from "../../src/excel/workbook";
import type { PlacedCell } from "../../src/intake/place/placement";
import { isMarkRule } from "../../src/look/markLook";
import { type CellValue, keyIds, rowKey } from "../../src/records/kind";
import { areaAddress } from "../../src/sheets/cells/area";
import { type Plan, planFor } from "../../src/sheets/plan/plan";
import type { Reconciled } from "../../src/sheets/plan/reconcile";
import { refill } from "../../src/sheets/plan/refill";
import { type RecordTable, recordTables } from "../../src/sheets/recordTable";
import { type Snapshot, tablesOf } from "../../src/sheets/snapshot";
import { typeInto } from "../../src/standin/edits";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { markFile } from "../../src/xlsx/writeMarks";
import { contents, entries, inExcel, newExcel, placed } from "../excel/excelSupport";
import { check } from "../support/checkBook";
import { filledPlan } from "../support/fill";
import { longLineup, sampleLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

/** One of the two ways in and out of a workbook. */
interface Way {
  build(plan: Plan): Promise<Reconciled>;
  read(): Promise<Snapshot>;
  fill(cells: readonly PlacedCell<RecordTable>[]): Promise<void>;
  /** Marks findings; none take every mark off. */
  mark(findings: readonly Finding[]): Promise<void>;
  /** Marks as they stand: the sheet, the rule and the cells of each, the heaviest first; then all other formats. */
  formats(): Promise<{ marks: string[]; others: string[] }>;
  /** Types a value over what a cell holds. */
  type(table: string, row: number, header: string, value: CellValue): Promise<void>;
}

function fileWay(): Way {
  let file: Uint8Array | undefined;
  const bytes = () => {
    if (!file) throw new Error("nothing is built yet");
    return file;
  };
  return {
    build: async (plan) => {
      const built = await writeBook(plan, file);
      file = built.file;
      return built.done;
    },
    read: () => readBook(bytes()),
    fill: async (cells) => {
      const snapshot = await readBook(bytes());
      const changes = recordTables(snapshot).map((table) => ({
        table: table.table,
        writes: snapshot.lineup
          ? refill(
              table,
              cells.filter((cell) => cell.table.table.name === table.table.name),
              snapshot.lineup,
            )
          : [],
      }));
      file = await writeCells(bytes(), changes);
    },
    mark: async (findings) => {
      file = await markFile(bytes(), findings);
    },
    formats: async () => {
      const { sheets } = await readXlsx(bytes(), { readStyles: true });
      const rules = sheets.flatMap(({ name, conditionalRules = [] }) =>
        [...conditionalRules]
          .sort((one, other) => one.priority - other.priority)
          .map((rule) => ({ name, rule })),
      );
      return {
        marks: rules
          .filter(({ rule }) => isMarkRule(String(rule.formula)))
          .map(({ name, rule }) => line(name, String(rule.formula), rule.range.split(" "))),
        others: rules
          .filter(({ rule }) => !isMarkRule(String(rule.formula)))
          .map(({ name, rule }) => line(name, String(rule.formula), rule.range.split(" "))),
      };
    },
    type: async (name, row, header, value) => {
      const table = tablesOf(await readBook(bytes())).find((table) => table.name === name);
      if (!table) throw new Error(`no table ${name}`);
      const writes = [{ row, column: table.headers.indexOf(header), value }];
      file = await writeCells(bytes(), [{ table, writes }]);
    },
  };
}

function excelWay(): Way {
  const host = newExcel();
  return {
    build: (plan) => inExcel(host, (context) => applyPlan(context, plan)),
    read: () => inExcel(host, (context) => readExcel(context)),
    fill: async (cells) => {
      const { written } = await inExcel(host, (context) => applyFills(context, cells));
      expect(written).toHaveLength(cells.length);
    },
    mark: async (findings) => {
      if (findings.length > 0) await inExcel(host, (context) => markFindings(context, findings));
      else await inExcel(host, (context) => clearMarks(context));
    },
    formats: async () => {
      const rules = host.book.sheets.flatMap(({ name, formats }) =>
        formats.map(({ type, areas, properties }) => ({
          name,
          mark: type === "Custom" && isMarkRule(String(properties["rule.formula"])),
          formula: String(
            properties["rule.formula"] ??
              (properties.rule as { formula1?: string } | undefined)?.formula1,
          ).replace(/^=/, ""),
          areas: areas.map(areaAddress),
        })),
      );
      return {
        marks: rules
          .filter(({ mark }) => mark)
          .map((one) => line(one.name, one.formula, one.areas)),
        others: rules
          .filter(({ mark }) => !mark)
          .map((one) => line(one.name, one.formula, one.areas)),
      };
    },
    type: async (table, row, header, value) => typeInto(host.book, table, row, header, value),
  };
}

const line = (sheet: string, formula: string, areas: readonly string[]) =>
  `${sheet}: ${formula} on ${[...areas].sort().join(" ")}`;

const TODAY = 46_400;
const findings = (snapshot: Snapshot) => {
  const checked = check(snapshot, TODAY);
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report;
};

describe.each([
  ["a file", fileWay],
  ["Excel", excelWay],
])("%s", (_name, way) => {
  test.each([
    ["the sample lineup", () => filledPlan(sampleLineup(), 1)],
    ["an invented lineup of 5 panels", () => filledPlan(longLineup(5), 2)],
    ["one with nothing filled in", () => planFor(longLineup(2))],
  ])("%s: what was built reads back as the plan says", async (_plan, make) => {
    const book = way();
    const plan = make();
    await book.build(plan);
    const snapshot = await book.read();
    expect(snapshot.lineup).toEqual(plan.lineup);
    const planned = contents(memoryBook(plan).snapshot);
    // A table has one blank row where the plan has none.
    expect(
      contents(snapshot).map((table) => ({
        ...table,
        cells: table.cells.filter((row) => row.some(([value]) => value !== null)),
      })),
    ).toEqual(planned);
  });

  test("the findings are those of the plan", async () => {
    const book = way();
    const plan = filledPlan(longLineup(4), 3);
    await book.build(plan);
    const report = findings(await book.read());
    const wanted = findings(memoryBook(plan).snapshot);
    expect(report.counts).toEqual(wanted.counts);
    expect(report.findings).toEqual(wanted.findings);
    expect(report.findings.length).toBeGreaterThan(0);
  });

  test("building twice changes nothing", async () => {
    const book = way();
    const lineup = sampleLineup();
    await book.build(filledPlan(lineup, 4));
    const before = contents(await book.read());
    const done = await book.build(planFor(lineup));
    expect(done.create).toEqual([]);
    expect(done.change.map(({ added, writes }) => [added, writes.length])).toEqual(
      done.change.map(() => [0, 0]),
    );
    expect(contents(await book.read())).toEqual(before);
  });

  test("a grown plan keeps every reading and the order of rows, and adds what is missing", async () => {
    const book = way();
    await book.build(filledPlan(longLineup(3), 5));
    const before = await book.read();
    await book.build(planFor(longLineup(5)));
    const after = await book.read();
    const [was, is] = [entries(before), entries(after)];
    for (const [table, rows] of Object.entries(was)) {
      expect(is[table]?.slice(0, rows.length)).toEqual(rows);
      // What is once for the lineup does not grow with its panels.
      const once = ["GearDocuments", "GearPermits", "GearInspection"].includes(table);
      expect(is[table]?.length).toBeGreaterThan(once ? rows.length - 1 : rows.length);
    }
    const keys = (snapshot: Snapshot) =>
      recordTables(snapshot).map(({ kind, rows }) =>
        rows.map((row) => rowKey(row, keyIds(kind))).sort(),
      );
    expect(keys(after)).toEqual(keys(memoryBook(planFor(longLineup(5))).snapshot));
  });

  test("a smaller plan leaves rows that are not needed any more, and says so", async () => {
    const book = way();
    await book.build(filledPlan(longLineup(3), 6));
    const before = entries(await book.read());
    const done = await book.build(planFor(longLineup(2)));
    expect(done.change.find(({ table }) => table.name === "GearContact")?.aside).toContain(
      "=K0003 · Breaker Q0 · L1",
    );
    expect(entries(await book.read())).toEqual(before);
  });

  test("readings land in their cells and the results follow", async () => {
    const book = way();
    const plan = planFor(longLineup(2));
    await book.build(plan);
    const snapshot = await book.read();
    await book.fill(
      placed(snapshot, "GearInsulation", [
        [0, "testVoltage", 5000],
        [0, "reading", 120_000],
        [0, "temperature", 20],
        [1, "reading", "> 2 TΩ"],
        [2, "reading", "5.2 GΩ"],
        [3, "instrument", "=X"],
        [3, "date", 46_341],
      ]),
    );
    const memory = memoryBook(plan);
    for (const [row, header, value] of [
      [0, "Test V DC", 5000],
      [0, "R 1 min MΩ", 120_000],
      [0, "Temperature °C", 20],
      [1, "R 1 min MΩ", "> 2 TΩ"],
      [2, "R 1 min MΩ", "5.2 GΩ"],
      [3, "Instrument", "=X"],
      [3, "Date", 46_341],
    ] as const)
      memory.set("GearInsulation", row, header, value);
    const after = await book.read();
    expect(entries(after)).toEqual(entries(memory.snapshot));
    const rows = recordTables(after).find(({ kind }) => kind.id === "insulation")?.rows;
    expect([rows?.[0]?.result, rows?.[4]?.result]).toEqual(["Pass", "Missing"]);
    expect(findings(after).counts).toEqual(findings(memory.snapshot).counts);
  });

  test("a computed cell that somebody typed over stays for the check to find", async () => {
    const book = way();
    const lineup = longLineup(2);
    await book.build(filledPlan(lineup, 7));
    await book.type("GearInsulation", 1, "R corrected MΩ", 123);
    await book.build(planFor(lineup));
    const after = await book.read();
    const rows = recordTables(after).find(({ kind }) => kind.id === "insulation")?.rows;
    expect(rows?.[1]?.corrected).toBe(123);
    expect(findings(after).findings.map(({ rule }) => rule)).toContain("result-disagrees");
  });

  test("a changed basis brings limits up to date and leaves readings alone", async () => {
    const book = way();
    await book.build(filledPlan(longLineup(2), 8));
    const before = await book.read();
    await book.build(planFor(longLineup(2, { basis: "IEC" })));
    const after = await book.read();
    expect(entries(after)).toEqual(entries(before));
    expect(contents(after)).not.toEqual(contents(before));
    expect(after.lineup?.basis).toBe("IEC");
  });
});

test("both ways mark the same cells by the same rules, and take the marks off without a trace", async () => {
  const marked = [];
  for (const book of [fileWay(), excelWay()]) {
    await book.build(filledPlan(longLineup(3), 10));
    const before = await book.formats();
    expect(before.marks).toEqual([]);
    const { findings: found } = findings(await book.read());
    await book.mark(found);
    await book.mark(found);
    const after = await book.formats();
    expect(after.marks.length).toBeGreaterThan(0);
    expect(after.others).toEqual(before.others);
    marked.push(after);
    await book.mark([]);
    expect(await book.formats()).toEqual(before);
  }
  expect(marked[0]).toEqual(marked[1]);
});

test("both ways come to the same workbook from the same steps", async () => {
  const books = [fileWay(), excelWay()];
  const seen = [];
  for (const book of books) {
    await book.build(filledPlan(longLineup(3), 9));
    await book.type("GearContact", 0, "Remarks", "007");
    await book.build(planFor(longLineup(4, { basis: "IEC" })));
    const snapshot = await book.read();
    await book.fill(
      placed(snapshot, "GearContact", [
        [1, "reading", 31.5],
        [1, "origin", "invented.csv line 2"],
      ]),
    );
    const after = await book.read();
    seen.push({ contents: contents(after), findings: findings(after).findings });
  }
  expect(seen[0]).toEqual(seen[1]);
});
