import { serialDay } from "../../quantities/dates";
import { dayOf, type Rule, rowName, where } from "../context";

/** A test dated after the day of the check. */
export const future: Rule = {
  id: "future-date",
  reads: "row",
  rows: (table, context) => (row, stored) => {
    const day = dayOf(stored.date);
    return day !== undefined && day >= context.today + 1
      ? {
          rule: "future-date",
          weight: "query",
          ...where(table, row, "date"),
          message: context.text.rules["future-date"].message(rowName(table, row), serialDay(day)),
        }
      : undefined;
  },
};
