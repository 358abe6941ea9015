import { isBlank } from "../../records/kind";
import { type Rule, rowName, where } from "../context";

/** An instrument that the table of instruments does not list. */
export const instrumentUnknown: Rule = {
  id: "instrument-unknown",
  title: "An instrument that nobody listed",
  finds: "a record whose instrument is not in the table of instruments",
  why: "A reading is worth what its instrument is worth; of this one nothing is known.",
  satisfies: "the instrument listed with its serial number and calibration, or its Id put right",
  quiet: "where the record names no instrument: that is said by another rule",
  reads: "row",
  rows:
    (table, { instruments }) =>
    (row, stored) => {
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
    },
};
