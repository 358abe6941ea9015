import { readReading } from "../../quantities/readReading";
import { isBlank } from "../../records/kind";
import { overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";

/** Text in a numeric entry that cannot be read as a reading. */
export const unreadable: Rule = {
  id: "unreadable",
  find: (context) =>
    overRows(context, (table, row, stored) =>
      table.kind.columns.flatMap(({ id, role, unit, header }): Finding[] => {
        const cell = stored[id];
        if (role !== "entry" || !unit || typeof cell !== "string" || isBlank(cell)) return [];
        const read = readReading(cell, { unit });
        return read.ok
          ? []
          : [
              {
                rule: "unreadable",
                weight: "query",
                ...where(table, row, id),
                message: `${rowName(table, row)}: "${header}" cannot be read: ${read.reason}`,
                found: cell.slice(0, 80),
              },
            ];
      }),
    ),
};
