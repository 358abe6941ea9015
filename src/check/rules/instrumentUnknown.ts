import { isBlank } from "../../records/kind";
import { overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";
import { oncePerEntry } from "../oncePerEntry";

/** An instrument that the table of instruments does not list. */
export const instrumentUnknown: Rule = {
  id: "instrument-unknown",
  title: "An unlisted instrument",
  finds:
    "records whose instrument is not in the table of instruments: once for each instrument and record table, at its first row",
  why: "A reading is worth what its instrument is worth; of this one nothing is known.",
  satisfies: "the instrument listed with its serial number and calibration, or its Id corrected",
  quiet: "where the record names no instrument: another rule reports that",
  reads: "table",
  find: (table, { instruments }) =>
    oncePerEntry(
      overRows(table, (row, stored): Finding | undefined => {
        if (isBlank(stored.instrument)) return undefined;
        const id = String(stored.instrument).trim();
        return instruments?.has(id.toLowerCase())
          ? undefined
          : {
              rule: "instrument-unknown",
              weight: "query",
              ...where(table, row, "instrument"),
              message: `${rowName(table, row)}: instrument "${id}" is not in the table of instruments; list it with its serial number and calibration.`,
              found: id,
            };
      }).map(({ finding }) => finding),
    ),
};
