import { notPositive } from "../engineering/notPositive";
import { answer, type Result, refuse } from "../quantities/result";
import type { Basis, Criterion, Source } from "./criterion";
import { insulationSource, insulationTable } from "./insulationTable";
import { rowFor } from "./rowFor";

export const testVoltageHabit: Source = {
  document: "Common practice beside IEC 62271",
  edition: "",
  place: "DC insulation test, one minute",
  certainty: "practice",
};

/** DC test voltages up to a rated voltage, kV, by practice: 500 V, 1 kV, and 5 kV on medium-voltage circuits. */
export const testVoltagesByHabit = [
  { ratedkV: 0.5, testV: 500 },
  { ratedkV: 1, testV: 1000 },
  { ratedkV: 72.5, testV: 5000 },
];

const BASED = {
  IEC: { rows: testVoltagesByHabit, source: testVoltageHabit },
  NETA: { rows: insulationTable, source: insulationSource },
};

/**
 * DC voltage for an insulation resistance test, V. A higher one than the least satisfies.
 *
 * NETA: ANSI/NETA ATS-2025, table 100.1 (read). IEC 62271 gives none; practice is 5 kV on
 * medium-voltage circuits up to 72.5 kV, 500 V or 1 kV on low-voltage ones.
 *
 * @param ratedkV rated voltage, kV, above 0
 * @returns `none` beyond 72.5 kV for IEC, `range` for a voltage not above 0
 * @example insulationTestVoltage(12, "NETA") // 2500
 * @example insulationTestVoltage(12, "IEC") // 5000
 */
export const insulationTestVoltage = (ratedkV: number, basis: Basis): Result<Criterion> => {
  const { rows, source } = BASED[basis];
  const row = rowFor<{ ratedkV: number; testV: number }>(rows, ratedkV);
  return (
    notPositive("Rated voltage", ratedkV, "kV") ??
    (row
      ? answer({ value: row.testV, source })
      : refuse("none", `No test voltage is known here for ${ratedkV} kV: the rows end at 72.5 kV.`))
  );
};
