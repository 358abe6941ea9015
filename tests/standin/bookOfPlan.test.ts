import { expect, test } from "vitest";
import { readExcel } from "../../src/excel/workbook";
import { planFor } from "../../src/sheets/plan/plan";
import { recordTables } from "../../src/sheets/recordTable";
import { bookOfPlan } from "../../src/standin/bookOfPlan";
import { calculateRecords, snapshotOfBook } from "../../src/standin/calculate";
import { typeInto } from "../../src/standin/edits";
import { bigExcel, builtExcel, contents, inExcel } from "../excel/excelSupport";
import { filledPlan } from "../support/fill";
import { longLineup } from "../support/lineups";

test("made from a plan directly, a workbook reads as the one that the adapter builds", async () => {
  const plan = filledPlan(longLineup(3), 1);
  const [made, built] = [bigExcel(plan), await builtExcel(plan)];
  const read = async (host: typeof made) =>
    contents(await inExcel(host, (context) => readExcel(context)));
  expect(await read(made)).toEqual(await read(built));
});

test("formulas follow what is typed, as the record kinds compute it; typed-over cells stay", () => {
  const plan = planFor(longLineup(1));
  const book = bookOfPlan(plan);
  for (const [header, value] of [
    ["R 1 min MΩ", 250_000],
    ["Temperature °C", 20],
    ["Test V DC", 5000],
  ] as const) {
    typeInto(book, "GearInsulation", 0, header, value);
  }
  typeInto(book, "GearInsulation", 1, "Result", "Pass");
  calculateRecords(book);
  const rows = recordTables(snapshotOfBook(book)).find(
    ({ kind }) => kind.id === "insulation",
  )?.rows;
  expect([rows?.[0]?.result, rows?.[1]?.result, rows?.[2]?.result]).toEqual([
    "Pass",
    "Pass",
    "Missing",
  ]);
  expect(rows?.[0]?.corrected).toBeGreaterThan(0);
});
