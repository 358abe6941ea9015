import { serialDay } from "../../quantities/dates";
import { dayOf, overRows, type Rule, rowName, where } from "../context";

/** A test dated after the day of the check. */
export const future: Rule = {
  id: "future-date",
  find: (context) =>
    overRows(context, (table) => (row, stored) => {
      const day = dayOf(stored.date);
      return day !== undefined && day >= context.today + 1
        ? {
            rule: "future-date",
            weight: "query",
            ...where(table, row, "date"),
            message: `${rowName(table, row)}: dated ${serialDay(day)}, which is yet to come.`,
          }
        : undefined;
    }),
};
