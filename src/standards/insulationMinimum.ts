import { notPositive } from "../engineering/notPositive";
import { answer, type Result, refuse } from "../quantities/result";
import type { Basis, Criterion } from "./criterion";
import { insulationSource, insulationTable } from "./insulationTable";
import { rowFor } from "./rowFor";

/**
 * Least acceptable insulation resistance of a main circuit at 20 °C, MΩ.
 *
 * NETA: ANSI/NETA ATS-2025, table 100.1 (read), the row with the least rated voltage not below the
 * given one. IEC 62271 gives no minimum.
 *
 * @param ratedkV rated voltage, kV, above 0
 * @returns `none` for IEC, `range` for a voltage not above 0
 * @example insulationMinimum(12, "NETA") // 5000
 */
export const insulationMinimum = (ratedkV: number, basis: Basis): Result<Criterion> => {
  const row = rowFor(insulationTable, ratedkV);
  return (
    notPositive("Rated voltage", ratedkV, "kV") ??
    (basis === "NETA" && row
      ? answer({ value: row.megohm, source: insulationSource })
      : refuse(
          "none",
          "IEC 62271 gives no minimum insulation resistance: set a project criterion or use NETA.",
        ))
  );
};
