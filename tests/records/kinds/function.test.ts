import { expect, test } from "vitest";
import { functionTest } from "../../../src/records/kinds/function";
import { longLineup, sampleLineup } from "../../support/lineups";

const partsOf = (lineup: ReturnType<typeof sampleLineup>, object: string) =>
  functionTest
    .rows(lineup)
    .filter((row) => row.object === object)
    .map(({ part }) => String(part));

test("functions by what stands in the panel", () => {
  const lineup = sampleLineup();
  expect(partsOf(lineup, "=H02")).toContain("Closes and opens remotely");
  expect(partsOf(lineup, "=H06")).toEqual([
    "Alarms reach their places",
    "Loss of control supply is shown",
    "Heating and lighting work",
  ]);
  const has = (object: string, start: string) =>
    partsOf(lineup, object).some((part) => part.startsWith(start));
  expect([has("=H07", "Gas alarm"), has("=H02", "Gas alarm")]).toEqual([true, false]);
  expect([has("=H02", "Earthing switch"), has("=H05", "Earthing switch")]).toEqual([true, false]);
});

test("each relay of a panel trips, once however many elements it has", () => {
  const lineup = longLineup(1);
  const [panel] = lineup.panels;
  if (!panel) throw new Error("no panel");
  const element = (relay: string, name: string) => ({
    relay,
    element: name,
    pickup: 1,
    unit: "A",
    curve: "definite" as const,
    setting: 0.1,
    multiples: [2],
    pickupPercent: 5,
    timePercent: 5,
    timeS: 0.04,
  });
  const protection = [element("F1", "I>"), element("F1", "I>>"), element("F2", "U<")];
  const parts = partsOf({ ...lineup, panels: [{ ...panel, protection }] }, "=K0001");
  expect(parts.filter((part) => part.startsWith("Relay"))).toEqual([
    "Relay F1 trips its breaker and is shown",
    "Relay F2 trips its breaker and is shown",
  ]);
});

test("two incomers and their coupler are interlocked; one incomer alone is not", () => {
  expect(partsOf(sampleLineup(), "Lineup")).toEqual([
    "Interlock of =H01, =H10, =H05: supplies are not paralleled but as drawn",
    "Transfer between =H01, =H10: as drawn, by hand and by itself",
  ]);
  expect(partsOf(longLineup(3), "Lineup")).toEqual([]);
});
