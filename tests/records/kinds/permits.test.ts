import { expect, test } from "vitest";
import { daySerial } from "../../../src/quantities/dates";
import { permits } from "../../../src/records/kinds/permits";
import { longLineup } from "../../support/lineups";
import { rowOf, workingOf } from "../../support/rowOf";

const lineup = longLineup(1);
const day = (text: string) => daySerial(`2026-11-${text}`);
const HELD = { number: "P-17", from: day("20"), to: day("25"), date: day("22") };

test.each([
  [{}, "Pass"],
  [{ date: day("20") }, "Pass"],
  [{ date: day("25") }, "Pass"],
  [{ date: day("25") + 0.9 }, "Pass"],
  [{ date: day("19") }, "Fail"],
  [{ date: day("26") }, "Fail"],
  [{ date: null }, "Inconclusive"],
  [{ to: "till done" }, "Inconclusive"],
  [{ number: null }, "Missing"],
] as const)("valid from 20 to 25 November, %o: %s", (entries, verdict) => {
  expect(rowOf(permits, lineup, { ...HELD, ...entries }).result).toBe(verdict);
});

test("the working names the days", () => {
  const row = rowOf(permits, lineup, { ...HELD, date: day("26") });
  expect(workingOf(permits, "valid", row, lineup)).toBe(
    "2026-11-26 is not from 2026-11-20 to 2026-11-25",
  );
});
