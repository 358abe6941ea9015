import { expect, test } from "vitest";
import type { Lineup } from "../../src/lineup/lineup";
import { lineupOfSheets } from "../../src/sheets/lineupOfSheets";
import { planFor } from "../../src/sheets/plan";
import { longLineup, sampleLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

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
  [
    "settings of the project",
    longLineup(3, {
      leaveOut: [
        { kind: "gas", reason: "Gas is seen to by its maker (invented)", document: "INV-1" },
        { kind: "handling", reason: "Stands already" },
      ],
      inspectionPoints: [
        { activity: "Joints", type: "hold", guards: ["insulation", "withstand"], each: "panel" },
        { activity: "Papers, all", type: "review", each: "lineup", document: "INV-2" },
      ],
      checkItems: [
        {
          kind: "installation",
          item: "Pit drained, and dry",
          types: ["feeder"],
          document: "INV-3",
        },
        { kind: "function", item: "Horn", applies: ["=K0001", "Section 1"], document: "INV-3" },
        { kind: "dimensions", item: "Plinth", least: 90, most: 110, document: "INV-3" },
      ],
    }),
  ],
  ["no inspection points", longLineup(2, { inspectionPoints: [] })],
  ["no correction", longLineup(2, { insulation: { correction: "none", baseC: 20 } })],
])("the lineup is told by its sheets alone: %s", (_name, lineup) => {
  expect(lineupOfSheets({ sheets: memoryBook(planFor(lineup)).snapshot.sheets })).toEqual(lineup);
});

test("a workbook without panels tells no lineup", () => {
  const book = memoryBook(planFor(sampleLineup()));
  book.removeTable("GearPanels");
  expect(lineupOfSheets({ sheets: book.snapshot.sheets })).toBeUndefined();
});
