import { serialDay } from "../../sheets/dates";
import { overRows, type Rule, rowName, where } from "../context";

/** A test dated after the day of the check. */
export const future: Rule = {
  id: "future-date",
  find: (context) =>
    overRows(
      context,
      (table) => (row, stored) =>
        typeof stored.date === "number" && stored.date >= context.today + 1
          ? {
              rule: "future-date",
              weight: "query",
              ...where(table, row, "date"),
              message: `${rowName(table, row)}: dated ${serialDay(stored.date)}, which is yet to come.`,
            }
          : undefined,
    ),
};
