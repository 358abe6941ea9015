import { readReading } from "../../quantities/readReading";
import { isBlank } from "../../records/kind";
import { overColumns, overRows, type Rule, rowName, where } from "../context";

/** Text in a numeric entry that cannot be read as a reading. */
export const unreadable: Rule = {
  id: "unreadable",
  find: (context) =>
    overRows(context, (table) => {
      const numeric = table.kind.columns.filter(({ role, unit }) => role === "entry" && unit);
      return (row, stored) =>
        overColumns(numeric, ({ id, unit, header }) => {
          const cell = stored[id];
          if (!unit || typeof cell !== "string" || isBlank(cell)) return undefined;
          const read = readReading(cell, { unit });
          return read.ok
            ? undefined
            : {
                rule: "unreadable",
                weight: "query",
                ...where(table, row, id),
                message: `${rowName(table, row)}: "${header}" cannot be read: ${read.reason}`,
                found: cell.slice(0, 80),
              };
        });
    }),
};
