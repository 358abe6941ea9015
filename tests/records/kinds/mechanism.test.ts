import { expect, test } from "vitest";
import { mechanism } from "../../../src/records/kinds/mechanism";
import { longLineup, sampleLineup } from "../../support/lineups";
import { rowOf, workingOf } from "../../support/rowOf";

/** Rated 110 V DC; the sample's breakers give no range of their own, so that the standard's applies. */
const lineup = sampleLineup();
// IEC 62271-1 (memory): closing 85 % to 110 % of 110 V, opening 70 % to 110 %: 93.5, 77 and 121 V.
const GOOD = { closingLow: 93.5, closingHigh: 121, openingLow: 77, openingHigh: 121 };

test("a row for every breaker", () => {
  expect(mechanism.rows(lineup)).toHaveLength(8);
});

test.each([
  [{}, "Pass"],
  [{ closingLow: 94 }, "Fail"],
  [{ closingHigh: 120 }, "Fail"],
  [{ openingLow: 80 }, "Fail"],
  [{ openingHigh: 110 }, "Fail"],
  [{ openingHigh: null }, "Missing"],
  [{ counterBefore: 20, counterAfter: 32, made: 12 }, "Pass"],
  [{ counterBefore: 20, counterAfter: 31, made: 12 }, "Fail"],
  [{ counterBefore: 20, counterAfter: 33, made: 12 }, "Fail"],
  [{ counterBefore: 20, counterAfter: 32 }, "Inconclusive"],
  [{ counterBefore: 20, made: 12 }, "Inconclusive"],
  [{ charged: 20 }, "Pass"],
  [{ charged: 20, chargedMost: 15 }, "Fail"],
  [{ chargedMost: 15 }, "Inconclusive"],
] as const)("%o: %s", (entries, verdict) => {
  expect(rowOf(mechanism, lineup, { ...GOOD, ...entries }).result).toBe(verdict);
});

test("the plate's range comes before the standard's; where there is neither, nothing is judged", () => {
  const plated = longLineup(1, { basis: "IEC" });
  expect(rowOf(mechanism, plated, GOOD)).toMatchObject({ closingLeast: 90, result: "Fail" });
  const neta = { ...lineup, basis: "NETA" as const };
  expect(rowOf(mechanism, neta, GOOD)).toMatchObject({
    closingLeast: null,
    result: "Inconclusive",
    sources: expect.stringContaining("The maker's plate gives it."),
  });
});

test("the working of the counter", () => {
  const row = rowOf(mechanism, lineup, { ...GOOD, counterBefore: 20, counterAfter: 32 });
  expect(workingOf(mechanism, "counted", row, lineup)).toBe("32 − 20 = 12");
});
