import { expect, test } from "vitest";
import { dimensions } from "../../../src/records/kinds/dimensions";
import { longLineup } from "../../support/lineups";
import { rowOf } from "../../support/rowOf";

const drawn = longLineup(2, {
  criteria: [
    {
      from: "project",
      quantity: "clearance in front mm",
      value: 2000,
      document: "INV-E-1 (invented)",
    },
    {
      from: "project",
      quantity: "clearance behind mm",
      value: 1800,
      document: "INV-E-1 (invented)",
    },
    { from: "maker", quantity: "level over 1 m mm", value: 2, document: "INV-M-3 (invented)" },
  ],
  checkItems: [
    { kind: "dimensions", item: "Plinth height", least: 90, most: 110, document: "INV-E-2" },
  ],
});

// Common practice: 2065 mm in front and 1800 mm behind were found acceptable against a drawing.
test.each([
  ["Clearance in front, least", 2065, "Pass"],
  ["Clearance behind, least", 1800, "Pass"],
  ["Clearance behind, least", 1799, "Fail"],
  ["Out of level over 1 m, along the lineup", 2, "Pass"],
  ["Out of level over 1 m, along the lineup", 2.5, "Fail"],
  ["Plinth height", 100, "Pass"],
  ["Plinth height", 89, "Fail"],
  ["Plinth height", 111, "Fail"],
  ["Plinth height", "> 95", "Inconclusive"],
  ["Plinth height", null, "Missing"],
  ["Clearance above, least", 900, "Inconclusive"],
] as const)("%s of %s mm: %s", (part, reading, verdict) => {
  expect(rowOf(dimensions, drawn, { reading }, part).result).toBe(verdict);
});

test("a limit typed on the sheet judges, and its document is asked for", () => {
  const part = "Clearance above, least";
  const row = rowOf(dimensions, drawn, { reading: 900, least: 800, document: "INV-9, 3" }, part);
  expect(row).toMatchObject({
    result: "Pass",
    sources: expect.stringContaining("document beside it"),
  });
  const document = dimensions.columns.find(({ id }) => id === "document");
  expect(document?.needed?.(row, drawn)).toBe(true);
  expect(document?.needed?.(rowOf(dimensions, drawn, {}, "Plinth height"), drawn)).toBe(false);
});

test("clearances once for the lineup, level and alignment of each panel", () => {
  expect(dimensions.rows(drawn).map(({ object }) => object)).toEqual([
    ...Array(5).fill("Lineup"),
    ...Array(4).fill("=K0001"),
    ...Array(4).fill("=K0002"),
  ]);
});
