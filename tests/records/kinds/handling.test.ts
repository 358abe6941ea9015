import { expect, test } from "vitest";
import { daySerial } from "../../../src/quantities/dates";
import { handling } from "../../../src/records/kinds/handling";
import { longLineup } from "../../support/lineups";
import { rowOf } from "../../support/rowOf";

const lineup = longLineup(1);
const day = daySerial("2026-11-20");
const SOUND = {
  mass: 800,
  gear: "Crane 1",
  capacity: 800,
  gearDue: day,
  date: day,
  condition: "Sound",
  indicator: "Not tripped",
};

test.each([
  [{}, "Pass"],
  [{ capacity: 799 }, "Fail"],
  [{ gearDue: day - 1 }, "Fail"],
  [{ gearDue: null }, "Inconclusive"],
  [{ condition: "Damaged" }, "Fail"],
  [{ condition: null }, "Inconclusive"],
  [{ indicator: "Tripped" }, "Fail"],
  [{ indicator: "None fitted" }, "Pass"],
  [{ mass: null }, "Inconclusive"],
  [{ capacity: null }, "Missing"],
] as const)("%o: %s", (entries, verdict) => {
  expect(rowOf(handling, lineup, { ...SOUND, ...entries }).result).toBe(verdict);
});

test("the packing list's mass comes before a typed one", () => {
  const [panel] = lineup.panels;
  if (!panel) throw new Error("no panel");
  const packed = { ...lineup, panels: [{ ...panel, massKg: 950 }] };
  expect(rowOf(handling, packed, { ...SOUND, mass: 700 })).toMatchObject({
    mass: 950,
    sources: "mass: packing list (maker)",
    result: "Fail",
  });
});
