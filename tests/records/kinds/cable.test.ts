import { expect, test } from "vitest";
import type { Lineup } from "../../../src/lineup/lineup";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { cable } from "../../../src/records/kinds/cable";
import { longLineup } from "../../support/lineups";

type Wave = "AC" | "DC" | "VLF";

const withCable = (ratedkV: number, wave?: Wave, changes: Partial<Lineup> = {}): Lineup => {
  const lineup = longLineup(1, changes);
  const W1 = { designation: "W1", ratedkV, ...(wave ? { wave } : {}) };
  return { ...lineup, panels: lineup.panels.map((panel) => ({ ...panel, cables: [W1] })) };
};
const judged = (lineup: Lineup, entries: Row) =>
  evaluate(
    cable,
    cable.rows(lineup).map((row) => ({
      ...row,
      testVoltage: 1000,
      insulationRead: "> 10 GΩ",
      discharge: "No",
      ...entries,
    })),
    lineup,
  )[0] as Row;

// IEC 60502-2 (memory): AC U0 for 24 h, DC 4 U0 for 15 min. IEEE 400.2-2013, table 3 (read): 21 kV, 30 min at least.
test.each([
  ["IEC", 12, undefined, "AC", 6, 1440],
  ["IEC", 12, "DC", "DC", 24, 15],
  ["NETA", 15, undefined, "VLF", 21, 30],
] as const)("%s, %d kV, %s: %s, %d kV for %d min", (basis, kV, wave, shown, required, minutes) => {
  const lineup = withCable(kV, wave, { basis });
  expect(judged(lineup, { applied: required, minutes })).toMatchObject({
    wave: shown,
    required,
    minutesLeast: minutes,
    result: "Pass",
  });
  expect(judged(lineup, { applied: required * 0.96, minutes }).result).toBe("Inconclusive");
  expect(judged(lineup, { applied: required, minutes: minutes - 1 }).result).toBe("Inconclusive");
});

test("a wave that the basis gives no value for is judged by the project's own alone", () => {
  const entries = { applied: 18, minutes: 60 };
  expect(judged(withCable(12, "VLF", { basis: "IEC" }), entries)).toMatchObject({
    required: null,
    minutesLeast: null,
    result: "Inconclusive",
  });
  const criteria: Lineup["criteria"] = [
    { from: "project", quantity: "cable withstand kV", value: 18, document: "invented" },
    { from: "project", quantity: "cable withstand min", value: 60, document: "invented" },
  ];
  expect(judged(withCable(12, "VLF", { basis: "IEC", criteria }), entries).result).toBe("Pass");
});

test.each([
  [{ insulationRead: 1.9 }, "Fail"],
  [{ insulationRead: "> 1 MΩ" }, "Inconclusive"],
  [{ testVoltage: 500 }, "Inconclusive"],
  [{ discharge: "Yes" }, "Fail"],
  [{ discharge: null }, "Inconclusive"],
  [{ applied: null }, "Missing"],
] as const)("%o: %s", (entries, result) => {
  expect(judged(withCable(15), { applied: 21, minutes: 30, ...entries }).result).toBe(result);
});

test("the sheath is judged where somebody gives a least value", () => {
  const criteria: Lineup["criteria"] = [
    { from: "maker", quantity: "cable sheath MΩ", value: 5, document: "invented" },
  ];
  const entries = { applied: 21, minutes: 30 };
  expect(judged(withCable(15), entries)).toMatchObject({ sheathLeast: "n/a", result: "Pass" });
  const asked = withCable(15, undefined, { criteria });
  expect(judged(asked, entries).result).toBe("Inconclusive");
  expect(judged(asked, { ...entries, sheathRead: 4 }).result).toBe("Fail");
  expect(judged(asked, { ...entries, sheathRead: "6 MΩ" }).result).toBe("Pass");
});

test("the caution about direct voltage on aged polymer cable stands on the sheet", () => {
  expect(cable.cautions.join(" ")).toMatch(/No direct voltage on service-aged polymer/);
});
