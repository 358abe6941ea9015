import { expect, test } from "vitest";
import { KINDS } from "../../src/records/kinds";
import { contact } from "../../src/records/kinds/contact";
import { insulation } from "../../src/records/kinds/insulation";
import { mechanism } from "../../src/records/kinds/mechanism";
import { torque } from "../../src/records/kinds/torque";
import { tableReference } from "../../src/sheets/cells/formula";
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
});

// Common practice, no source: of an instrument that nobody described ± 10 % are taken, 5000 / 0.9.
test.each([
  [5264, "Inconclusive"],
  [5550, "Inconclusive"],
  [5560, "Pass"],
  [4900, "Fail"],
] as const)(
  "%d MΩ against 5000, guarded, with an instrument of which nobody says how good it is: %s",
  (reading, result) => {
    const entries = { testVoltage: 2500, reading, temperature: 20 };
    expect(rowOf(insulation, guarded, { ...entries, instrument: "I9" }).result).toBe(result);
    expect(rowOf(insulation, guarded, entries).result).toBe(result);
    const silent = { ...guarded, instruments: [{ id: "I1", kind: "Invented" }] };
    expect(rowOf(insulation, silent, { ...entries, instrument: "I1" }).result).toBe(result);
  },
);

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

test("coils and springs are guarded as well", () => {
  const coils = { closingLow: 80, closingHigh: 126, openingLow: 60, openingHigh: 126 };
  const judged = (entries: object) =>
    rowOf(mechanism, guarded, { ...coils, charged: 12, instrument: "I1", ...entries }).result;
  expect(judged({})).toBe("Pass");
  expect(judged({ closingLow: 88 })).toBe("Inconclusive");
  expect(judged({ openingLow: 69 })).toBe("Inconclusive");
  expect(judged({ charged: 14.8 })).toBe("Inconclusive");
  expect(judged({ charged: 16 })).toBe("Fail");
});

// Microsoft, "Excel specifications and limits": a formula holds at most 8,192 characters.
test.each(KINDS.map((kind) => [kind.id, kind] as const))(
  "%s: the guarded formula is within what a cell takes",
  (_id, kind) => {
    const result = kind.columns.find(({ role }) => role === "result");
    const ranged = {
      ...guarded,
      instruments: [{ ...instruments[0], ranges: [{ most: 1, unit: "V" }] }],
    };
    const formula = result?.formula?.(
      tableReference(kind.table, kind.columns),
      ranged as typeof guarded,
    );
    expect(formula?.length).toBeLessThanOrEqual(8192);
  },
);
