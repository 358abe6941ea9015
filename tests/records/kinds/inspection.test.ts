import { expect, test } from "vitest";
import { inspection } from "../../../src/records/kinds/inspection";
import { longLineup } from "../../support/lineups";
import { rowOf } from "../../support/rowOf";

const lineup = longLineup(3, {
  inspectionPoints: [
    { activity: "Papers", type: "review", each: "lineup", document: "INV-ITP 1 (invented)" },
    { activity: "Joints", type: "hold", each: "panel", guards: ["insulation", "withstand"] },
  ],
});

test("a row for the lineup or for each panel, with its letter and what it holds up", () => {
  expect(inspection.rows(lineup)).toEqual([
    {
      object: "Lineup",
      part: "Papers",
      point: "R",
      guards: null,
      document: "INV-ITP 1 (invented)",
    },
    ...["=K0001", "=K0002", "=K0003"].map((object) => ({
      object,
      part: "Joints",
      point: "H",
      guards: "insulation, withstand",
      document: "common practice",
    })),
  ]);
});

test.each([
  ["Released", "Pass"],
  ["waived in writing", "Pass"],
  ["Not released", "Fail"],
  ["next week", "Inconclusive"],
  [null, "Missing"],
] as const)("%s: %s", (released, verdict) => {
  expect(rowOf(inspection, lineup, { released }).result).toBe(verdict);
});
