import { serialDay } from "../../quantities/dates";
import { dayOf, type Rule, rowName, where } from "../context";

/** A test dated after the day of the check. */
export const future: Rule = {
  id: "future-date",
  title: "A date in the future",
  finds: "a record dated after the day of the check",
  why: "It was not made on the day it names, or was written before it was made.",
  satisfies: "the day of the test",
  quiet: "for the day of the check itself",
  reads: "row",
  rows: (table, context) => (row, stored) => {
    const day = dayOf(stored.date);
    return day !== undefined && day >= context.today + 1
      ? {
          rule: "future-date",
          weight: "query",
          ...where(table, row, "date"),
          message: `${rowName(table, row)}: dated ${serialDay(day)}, which is in the future.`,
        }
      : undefined;
  },
};
