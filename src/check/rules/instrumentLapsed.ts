import { serialDay } from "../../quantities/dates";
import { isBlank } from "../../records/kind";
import { dayOf, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";
import { oncePerEntry } from "../oncePerEntry";

/** An instrument that was out of calibration on the day of the test, or whose calibration is not known. */
export const instrumentLapsed: Rule = {
  id: "instrument-lapsed",
  title: "An instrument out of calibration",
  finds:
    "tests made with an instrument outside its calibration (stop), or with one whose calibration dates are not listed (query): once for each instrument and record table, at its first row",
  why: "Outside its calibration nobody can say how far the instrument was off.",
  satisfies:
    "the calibration that covers the day of the test, a calibration after it that shows the instrument was right, or the test repeated",
  quiet: "where the test has no date, or the instrument is not listed: other rules report both",
  reads: "table",
  find: (table, { instruments }) => {
    const found = overRows(table, (row, stored): Finding | undefined => {
      const day = dayOf(stored.date);
      if (isBlank(stored.instrument) || day === undefined) return undefined;
      const id = String(stored.instrument).trim();
      const known = instruments?.get(id.toLowerCase());
      if (!known) return undefined;
      const { calibrated, due } = known;
      const at = { rule: "instrument-lapsed", ...where(table, row, "instrument"), found: id };
      if (calibrated === undefined || due === undefined)
        return {
          ...at,
          weight: "query",
          message: `${rowName(table, row)}: instrument "${id}" has no calibration dates in the table of instruments.`,
        };
      return day > due || day < calibrated
        ? {
            ...at,
            weight: "stop",
            message: `${rowName(table, row)}: instrument "${id}" was used on ${serialDay(day)}, outside its calibration from ${serialDay(calibrated)} to ${serialDay(due)}.`,
          }
        : undefined;
    });
    return oncePerEntry(found.map(({ finding }) => finding));
  },
};
