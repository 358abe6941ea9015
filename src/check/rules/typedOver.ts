import { isBlank } from "../../records/kind";
import { headerOf, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";
import { agrees } from "./resultDisagrees";

/** A computed cell that somebody typed over with the very value it had: it no longer follows its row. */
export const typedOver: Rule = {
  id: "typed-over",
  find: (context) =>
    overRows(context, (table, row, stored, judged) =>
      table.kind.columns.flatMap(({ id, role, formula }): Finding[] => {
        const at = table.at.get(id);
        if (!formula || at === undefined || (role !== "computed" && role !== "result")) return [];
        const cell = stored[id] ?? null;
        if (isBlank(cell) || table.table.formula(row, at) !== undefined) return [];
        return agrees(cell, judged[id] ?? null)
          ? [
              {
                rule: "typed-over",
                weight: "query",
                ...where(table, row, id),
                message: `${rowName(table, row)}: "${headerOf(table, id)}" holds a typed value in place of its formula; it agrees today and will not follow a change.`,
              },
            ]
          : [];
      }),
    ),
};
