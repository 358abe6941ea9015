import { serialDay } from "../../quantities/dates";
import { rowsAlike } from "../../records/cellsOf";
import { dayOf, type Rule, rowName, where } from "../context";

/** A test dated after the day of the check. */
export const future: Rule = {
  id: "future-date",
  reads: "row",
  among: ({ rows }, { today }) =>
    rowsAlike(rows, ["date"], ({ date }) => (dayOf(date) ?? 0) >= today + 1),
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
