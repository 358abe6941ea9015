import { describe, expect, test } from "vitest";
import { firstToFill, nextToFill } from "../../src/check/progress/firstToFill";
import {
  carriedOver,
  entriesToFill,
  nextToType,
  typedCells,
} from "../../src/pane/readings/typedCells";
import { planFor } from "../../src/sheets/plan/plan";
import { check } from "../support/checkBook";
import { english } from "../support/inWords";
import { longLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

const LINEUP = longLineup(2, { basis: "IEC" });

/** The insulation records of a workbook, after some cells were typed. */
function insulation(
  typed: readonly (readonly [row: number, header: string, value: string | number])[],
) {
  const book = memoryBook(planFor(LINEUP));
  for (const [row, header, value] of typed) book.set("GearInsulation", row, header, value);
  const checked = check(book.snapshot, 46_400);
  if (!checked.ok) throw new Error(checked.reason);
  const table = checked.report.context.tables.find(({ kind }) => kind.id === "insulation");
  if (!table) throw new Error("no insulation records");
  return { table, book, context: checked.report.context };
}

describe("the cell that work goes on with", () => {
  test("is the first reading that is blank, then what else the row lacks", () => {
    const blank = insulation([]);
    expect(firstToFill(blank.table, 0, LINEUP)).toBe(
      blank.book.at("GearInsulation", 0, "R 1 min MΩ"),
    );
    const read = insulation([[0, "R 1 min MΩ", 9000]]);
    const first = entriesToFill(read.table, 0, LINEUP)[0]?.header ?? "";
    expect(firstToFill(read.table, 0, LINEUP)).toBe(read.book.at("GearInsulation", 0, first));
  });

  test("of a new workbook is on the first row that is missing something", () => {
    const { context } = insulation([]);
    const next = nextToFill(context);
    const table = context.tables.find(({ kind }) => kind === next?.kind);
    expect(table && next && firstToFill(table, next.row, LINEUP)).toBe(next?.address);
  });
});

describe("what is typed for a row", () => {
  const { table } = insulation([]);
  const columns = entriesToFill(table, 0, LINEUP);

  test("is taken in the column's unit, with a unit of its own, or as a bound", () => {
    const value = (text: string, decimal: "." | "," = ".") =>
      typedCells(table, 0, columns, { reading: text }, decimal, english).cells[0]?.value;
    expect(value("9000")).toBe(9000);
    expect(value("5.2 GΩ")).toBe(5200);
    expect(value("5,2 GΩ", ",")).toBe(5200);
    expect(value("> 2 TΩ")).toBe("> 2 TΩ");
  });

  test("is told at its entry where it cannot be read", () => {
    const { cells, wrong } = typedCells(
      table,
      0,
      columns,
      { reading: "good", temperature: "20" },
      ".",
      english,
    );
    expect(Object.keys(wrong)).toEqual(["reading"]);
    expect(wrong.reason ?? wrong.reading).toMatch(/good/);
    expect(cells.map(({ column }) => column)).not.toContain("reading");
  });

  test("is written only where the cell was blank", () => {
    const { cells } = typedCells(table, 0, columns, { reading: "9000" }, ".", english);
    expect(cells.every(({ old }) => old === null)).toBe(true);
    const filled = insulation([[0, "R 1 min MΩ", 1]]).table;
    expect(entriesToFill(filled, 0, LINEUP).map(({ id }) => id)).not.toContain("reading");
  });
});

test("conditions carry over to the next row, readings never do", () => {
  const { table } = insulation([
    [0, "R 1 min MΩ", 9000],
    [0, "Temperature °C", 23],
    [0, "Date", 46_400],
    [0, "Tested by", "A. N. Other"],
  ]);
  const carried = carriedOver(table, 0, entriesToFill(table, 1, LINEUP));
  // Serial day 46,400 of the 1900 system is 2027-01-13 (day 1 is 1900-01-01, with its 1900-02-29).
  expect(carried).toMatchObject({ date: "2027-01-13" });
  expect(Object.values(carried)).toContain("23");
  expect(carried).not.toHaveProperty("reading");
});

test("the next row to type in is one that lacks an entry, round the end of the table", () => {
  const { table } = insulation([]);
  const last = table.rows.length - 1;
  expect(nextToType(table, 0, LINEUP)).toBe(1);
  expect(nextToType(table, last, LINEUP)).toBe(0);
  expect(nextToType(table, 0, LINEUP, -1)).toBe(last);
});
