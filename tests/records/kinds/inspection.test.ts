import { expect, test } from "vitest";
import type { Row } from "../../../src/records/kind";
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
  const signed = { by: "B. Client", date: 46_340 };
  expect(rowOf(inspection, lineup, { released, ...signed }).result).toBe(verdict);
});

// Common practice: a release is somebody's, on a day.
test("released by nobody, or on no day, is not released", () => {
  const unsigned: readonly Row[] = [
    { released: "Released" },
    { released: "Released", by: "B. Client" },
    { released: "Released", date: 46_340 },
  ];
  for (const entries of unsigned) expect(rowOf(inspection, lineup, entries).result).toBe("Missing");
});
