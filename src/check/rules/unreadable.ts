import { overColumns, type Rule, rowName, where } from "../context";
import { misread } from "../misread";

/** Text in a numeric entry that cannot be read as a reading, or in a date's place that is no date. */
export const unreadable: Rule = {
  id: "unreadable",
  title: "Text that is not a reading",
  finds: "text in the place of a number or date that cannot be read as one",
  why: "The row is judged without it.",
  satisfies: "the reading as a number, or with its unit; the day as a date",
  quiet: "for what reads as a quantity, such as 5.2 GΩ or > 2 TΩ",
  reads: "row",
  rows: (table) => {
    const typed = table.kind.columns.filter(
      ({ role, unit, accepts }) => role === "entry" && (unit || accepts?.type === "date"),
    );
    return (row, stored) =>
      overColumns(typed, ({ id, unit, header }) => {
        const reason = misread(stored[id], unit);
        return reason === undefined
          ? undefined
          : {
              rule: "unreadable",
              weight: "query",
              ...where(table, row, id),
              message: `${rowName(table, row)}: "${header}" cannot be read: ${reason}`,
              found: String(stored[id]).slice(0, 80),
            };
      });
  },
};
