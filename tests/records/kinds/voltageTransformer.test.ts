import { expect, test } from "vitest";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { voltageTransformer } from "../../../src/records/kinds/voltageTransformer";
import { longLineup } from "../../support/lineups";

const withWinding = (accuracy: string, burdenVA?: number) => {
  const lineup = longLineup(1);
  const winding = { name: "a-n", primaryV: 6350, secondaryV: 63.5, accuracy, burdenVA };
  return {
    ...lineup,
    panels: lineup.panels.map((panel) => ({ ...panel, voltageTransformers: [winding] })),
  };
};

const GOOD: Row = {
  primary: 6350,
  secondary: 63.5,
  polarity: "As marked",
  testVoltage: 1000,
  insulationRead: 800,
  fuses: "To drawing",
  earth: "One point",
};
const judged = (accuracy: string, entries: Row = {}, burdenVA?: number) => {
  const lineup = withWinding(accuracy, burdenVA);
  return evaluate(
    voltageTransformer,
    voltageTransformer.rows(lineup).map((row) => ({ ...row, ...GOOD, ...entries })),
    lineup,
  )[0] as Row;
};

test("a row for each winding and phase; none without a transformer", () => {
  expect(
    voltageTransformer.rows(withWinding("0.5")).map(({ part, phase }) => [part, phase]),
  ).toEqual([
    ["a-n", "L1"],
    ["a-n", "L2"],
    ["a-n", "L3"],
  ]);
  expect(voltageTransformer.rows(longLineup(2))).toEqual([]);
});

// Class 0.5: ±0.5 % from 80 % to 120 % (IEC 61869-3, memory); 3P: ±3 % from 5 % on (read).
test.each([
  ["0.5", 5080, 50.6, 0.5, "Pass"],
  ["0.5", 7620, 76.5, 0.5, "Pass"],
  ["0.5", 6350, 63.1, 0.5, "Fail"],
  ["0.5", 635, 6.35, null, "Inconclusive"],
  ["3P", 635, 6.2, 3, "Pass"],
  ["3P", 635, 6.1, 3, "Fail"],
  ["0.7", 6350, 63.5, null, "Inconclusive"],
])(
  "class %s, %d V gives %d V: allowed %s, %s",
  (accuracy, primary, secondary, errorMost, result) => {
    expect(judged(accuracy, { primary, secondary })).toMatchObject({ errorMost, result });
  },
);

test.each([
  [{ polarity: "Reversed" }, "Fail"],
  [{ fuses: "Not to drawing" }, "Fail"],
  [{ earth: "None" }, "Fail"],
  [{ earth: "Several" }, "Fail"],
  [{ earth: null }, "Inconclusive"],
  [{ insulationRead: 0.5 }, "Fail"],
  [{ secondary: null }, "Missing"],
] as const)("%o: %s", (entries, result) => {
  expect(judged("0.5", entries).result).toBe(result);
});

test("a burden is judged where the plate gives one", () => {
  expect(judged("0.5")).toMatchObject({ burdenMost: "n/a", result: "Pass" });
  expect(judged("0.5", { burden: 31 }, 30).result).toBe("Fail");
});
