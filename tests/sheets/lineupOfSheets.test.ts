import { expect, test } from "vitest";
import type { Lineup } from "../../src/lineup/lineup";
import { lineupOfSheets } from "../../src/sheets/lineupOfSheets";
import { planFor } from "../../src/sheets/plan";
import { longLineup, sampleLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

/** What the cover says in words cannot be read back: drawings are for people. */
const told = (lineup: Lineup): Lineup => ({
  ...lineup,
  project: { ...lineup.project, drawings: [] },
});

const own: Lineup["criteria"] = [
  { from: "project", quantity: "joint resistance µΩ", value: 12, document: "invented" },
  {
    from: "maker",
    quantity: "contact resistance µΩ",
    value: 44,
    document: "invented",
    applies: ["Section 1"],
  },
];

test.each([
  ["the sample", sampleLineup()],
  ["own criteria", longLineup(12, { criteria: own })],
  [
    "a correction to the air",
    longLineup(2, { withstand: { wave: "DC", seconds: 90, gapM: 0.14 } }),
  ],
  ["no correction", longLineup(2, { insulation: { correction: "none", baseC: 20 } })],
])("the lineup is told by its sheets alone: %s", (_name, lineup) => {
  expect(lineupOfSheets({ sheets: memoryBook(planFor(lineup)).snapshot.sheets })).toEqual(
    told(lineup),
  );
});

test("a workbook without panels tells no lineup", () => {
  const book = memoryBook(planFor(sampleLineup()));
  book.removeTable("GearPanels");
  expect(lineupOfSheets({ sheets: book.snapshot.sheets })).toBeUndefined();
});
