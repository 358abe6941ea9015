import { serialDay } from "../../quantities/dates";
import { isBlank } from "../../records/kind";
import { dayOf, overRows, type Rule, rowName, where } from "../context";

/** An instrument that the table of instruments does not list, or that was out of calibration on the day of the test. */
export const instrument: Rule = {
  id: "instrument",
  find: (context) =>
    overRows(context, (table) => (row, stored) => {
      if (isBlank(stored.instrument)) return undefined;
      const id = String(stored.instrument).trim();
      const at = { ...where(table, row, "instrument"), found: id };
      const known = context.instruments?.get(id.toLowerCase());
      if (!known)
        return {
          rule: "instrument-unknown",
          weight: "query",
          ...at,
          message: `${rowName(table, row)}: instrument "${id}" is not in the table of instruments; list it with its serial number and calibration.`,
        };
      const date = dayOf(stored.date);
      const { calibrated, due } = known;
      if (date === undefined) return undefined;
      if (calibrated === undefined || due === undefined)
        return {
          rule: "instrument-lapsed",
          weight: "query",
          ...at,
          message: `${rowName(table, row)}: instrument "${id}" has no calibration dates in the table of instruments.`,
        };
      return date > due || date < calibrated
        ? {
            rule: "instrument-lapsed",
            weight: "stop",
            ...at,
            message: `${rowName(table, row)}: instrument "${id}" was used on ${serialDay(date)}, outside its calibration from ${serialDay(calibrated)} to ${serialDay(due)}.`,
          }
        : undefined;
    }),
};
