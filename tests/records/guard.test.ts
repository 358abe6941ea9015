import { expect, test } from "vitest";
import { contact } from "../../src/records/kinds/contact";
import { insulation } from "../../src/records/kinds/insulation";
import { torque } from "../../src/records/kinds/torque";
import { tableReference } from "../../src/sheets/formula";
import { longLineup } from "../support/lineups";
import { rowOf } from "../support/rowOf";

const instruments = [{ id: "I1", kind: "Invented", accuracyPercent: 5 }];
const guarded = longLineup(1, { decisionRule: "guarded", instruments });
const simple = longLineup(1, { decisionRule: "simple", instruments });

// ILAC-G8:09/2019, clauses 4.2.1 and 4.2.2 (read): simple acceptance passes inside the limit, guarded acceptance inside the
// limit less the uncertainty. 5000 MΩ: ANSI/NETA table 100.1 (read).
test.each([
  [5100, "Pass", "Inconclusive"],
  [5263, "Pass", "Inconclusive"],
  [5264, "Pass", "Pass"],
  [4900, "Fail", "Fail"],
] as const)("%d ± 5 %% MΩ against 5000: %s simply, %s guarded", (reading, simply, guardedly) => {
  const entries = { testVoltage: 2500, reading, temperature: 20, instrument: "I1" };
  expect(rowOf(insulation, simple, entries).result).toBe(simply);
  expect(rowOf(insulation, guarded, entries).result).toBe(guardedly);
  expect(rowOf(insulation, guarded, { ...entries, instrument: "I9" }).result).toBe(simply);
});

test("a greatest value is guarded from below; an error in percent is not guarded by the instrument's own", () => {
  const pole = (reading: number) =>
    rowOf(contact, guarded, { testCurrent: 100, temperature: 20, reading, instrument: "I1" })
      .result;
  expect([47, 48, 51].map(pole)).toEqual(["Pass", "Inconclusive", "Fail"]);
  const joint = { applied: 60, marked: "Yes", rechecked: "Yes", instrument: "I1" };
  expect(rowOf(torque, guarded, joint).result).toBe("Pass");
});

test("the stored formula asks the sheet of instruments, and only where the lineup says guarded", () => {
  const formulaIn = (lineup: typeof guarded) =>
    insulation.columns
      .find(({ role }) => role === "result")
      ?.formula?.(tableReference(insulation.table, insulation.columns), lineup);
  expect(formulaIn(guarded)).toContain("GearInstruments[Accuracy ± %]");
  expect(formulaIn(simple)).not.toContain("GearInstruments");
});
