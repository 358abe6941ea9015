import { expect, test } from "vitest";
import { lineupSchema } from "../../../src/lineup/lineup";
import { undervoltage } from "../../../src/records/kinds/undervoltage";
import { longLineup } from "../../support/lineups";
import { rowOf } from "../../support/rowOf";

const withRelease = (undervoltageV: object, more: object = {}) => {
  const of = longLineup(1, more);
  return lineupSchema.parse({
    ...of,
    ratings: { ...of.ratings, controlV: 125 },
    panels: of.panels.map((panel) => ({ ...panel, breaker: { ...panel.breaker, undervoltageV } })),
  });
};
const PLATE = { pickupMost: 100, dropoutLeast: 38, dropoutMost: 75 };

test.each([
  [{ pickup: 92, dropout: 60 }, "Pass"],
  [{ pickup: 101, dropout: 60 }, "Fail"],
  [{ pickup: 92, dropout: 82 }, "Fail"],
  [{ pickup: 92, dropout: 30 }, "Fail"],
  [{ pickup: 92 }, "Missing"],
] as const)("by the plate, %o: %s", (entries, verdict) => {
  expect(rowOf(undervoltage, withRelease(PLATE), entries).result).toBe(verdict);
});

test("a row only where the breaker has the release", () => {
  expect(undervoltage.rows(longLineup(1))).toEqual([]);
  expect(undervoltage.rows(withRelease(PLATE))).toHaveLength(1);
});

test("under guarded acceptance a reading near its limit does not pass", () => {
  const guarded = withRelease(PLATE, {
    decisionRule: "guarded",
    instruments: [{ id: "I1", kind: "Invented", accuracyPercent: 5 }],
  });
  const judged = (pickup: number, dropout: number) =>
    rowOf(undervoltage, guarded, { pickup, dropout, instrument: "I1" }).result;
  expect(judged(92, 60)).toBe("Pass");
  expect(judged(97, 60)).toBe("Inconclusive");
  expect(judged(92, 73)).toBe("Inconclusive");
  expect(judged(92, 39)).toBe("Inconclusive");
  expect(judged(92, 76)).toBe("Fail");
});
