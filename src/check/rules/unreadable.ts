import { amongRows } from "../among/amongRows";
import { type JudgedTable, overColumns, type Rule, rowName, where } from "../context";
import { misread } from "../misread";

/** Text in a numeric entry that cannot be read as a reading, or in a date's place that is no date. */
export const unreadable: Rule = {
  id: "unreadable",
  reads: "row",
  among: (table) => amongRows(table, typedIn(table), (stored) => typeof stored === "string"),
  rows: (table, { text }) => {
    const typed = typedIn(table);
    return (row, stored) =>
      overColumns(typed, ({ id, unit, header }) => {
        const reason = misread(stored[id], unit, text);
        return reason === undefined
          ? undefined
          : {
              rule: "unreadable",
              weight: "query",
              ...where(table, row, id),
              message: text.rules.unreadable.message(rowName(table, row), header, reason),
              found: String(stored[id]).slice(0, 80),
            };
      });
  },
};

const typedIn = ({ kind }: JudgedTable) =>
  kind.columns.filter(
    ({ role, unit, accepts }) => role === "entry" && (unit || accepts?.type === "date"),
  );
