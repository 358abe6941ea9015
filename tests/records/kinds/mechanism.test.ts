import { expect, test } from "vitest";
import { lineupSchema } from "../../../src/lineup/lineup";
import type { Row } from "../../../src/records/kind";
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
  // A voltage that was not tried is no failure of the coil.
  [{ closingHigh: 120 }, "Inconclusive"],
  [{ closingHigh: 120, closingLow: 95 }, "Fail"],
  [{ closingLow: "93 V" }, "Pass"],
  [{ openingLow: 80 }, "Fail"],
  [{ openingHigh: 110 }, "Inconclusive"],
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

/** One breaker in an invented lineup. */
const withBreaker = (basis: "IEC" | "NETA", ratings: object, breaker: object = {}) => {
  const of = longLineup(1, { basis });
  return lineupSchema.parse({
    ...of,
    ratings: { ...of.ratings, ...ratings },
    panels: of.panels.map((panel) => ({
      ...panel,
      breaker: { designation: "Q0", medium: "vacuum", ratedA: 1250, ...breaker },
    })),
  });
};

// Three makers' tables under ANSI/IEEE C37.06 (read): 48 V closing from 36 or 38 V, 120 V AC 104 to 127 V; 90 or 100 V at 125 V.
test.each([
  [{ controlV: 48 }, { closingLow: 36, closingHigh: 56, openingLow: 28, openingHigh: 56 }, "Pass"],
  [
    { controlV: 48 },
    { closingLow: 37, closingHigh: 56, openingLow: 28, openingHigh: 56 },
    "Inconclusive",
  ],
  [{ controlV: 48 }, { closingLow: 39, closingHigh: 56, openingLow: 28, openingHigh: 56 }, "Fail"],
  [
    { controlV: 125 },
    { closingLow: 95, closingHigh: 140, openingLow: 70, openingHigh: 140 },
    "Inconclusive",
  ],
  [
    { controlV: 120 },
    { closingLow: 104, closingHigh: 127, openingLow: 104, openingHigh: 127 },
    "Pass",
  ],
  [
    { controlV: 120 },
    { closingLow: 104, closingHigh: 127, openingLow: 110, openingHigh: 127 },
    "Fail",
  ],
  [{ controlV: 24 }, { closingLow: 19, closingHigh: 28, openingLow: 14, openingHigh: 28 }, "Pass"],
] as const)("NETA %o, %o: %s", (ratings, entries, verdict) => {
  expect(rowOf(mechanism, withBreaker("NETA", ratings), entries).result).toBe(verdict);
});

// IEC 62271-1 (memory): opening 70 % DC, 85 % AC.
test("AC or DC as the lineup says, else by the rated voltage; a breaker may have a supply of its own", () => {
  const entries = { closingLow: 100, closingHigh: 253, openingLow: 170, openingHigh: 253 };
  const judged = (ratings: object, breaker?: object) =>
    rowOf(mechanism, withBreaker("IEC", ratings, breaker), entries).result;
  expect(judged({ controlV: 230 })).toBe("Pass");
  expect(judged({ controlV: 220, controlKind: "DC" })).toBe("Fail");
  expect(judged({ controlV: 220, controlKind: "AC" })).toBe("Pass");
  expect(judged({ controlV: 110 }, { controlV: 230 })).toBe("Pass");
  expect(judged({ controlV: 230 }, { openingControlV: 110 })).toBe("Fail");
});

test("a second trip coil has a row of its own", () => {
  const of = withBreaker("NETA", { controlV: 125 }, { secondTripCoil: true });
  expect(mechanism.rows(of).map(({ part }) => part)).toEqual([
    "Breaker Q0",
    "Breaker Q0 second trip coil",
  ]);
  const second = (entries: Row) =>
    rowOf(mechanism, of, entries, "Breaker Q0 second trip coil").result;
  expect(second({ openingLow: 70, openingHigh: 140 })).toBe("Pass");
  expect(second({ openingLow: 71, openingHigh: 140 })).toBe("Fail");
  expect(second({ openingLow: 70 })).toBe("Missing");
});
