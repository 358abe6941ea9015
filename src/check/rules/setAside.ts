import { isBlank, keyIds } from "../../records/kind";
import { type Rule, where } from "../context";
import type { Finding } from "../findings/finding";

/** Rows of a panel that the lineup does not have: kept with their readings, neither counted nor judged. */
export const setAside: Rule = {
  id: "set-aside",
  reads: "table",
  find: (table, { text }) => {
    const readings = table.kind.columns.filter(({ need }) => need === "reading");
    const panels = new Map<string, { first: number; rows: number; readings: number }>();
    for (const row of table.aside) {
      const stored = table.rows[row] ?? {};
      if (isBlank(stored.object)) continue;
      const name = String(stored.object);
      const sofar = panels.get(name) ?? { first: row, rows: 0, readings: 0 };
      sofar.rows++;
      sofar.readings += readings.filter(({ id }) => !isBlank(stored[id])).length;
      panels.set(name, sofar);
    }
    const first = keyIds(table.kind)[0] ?? "";
    return [...panels].map(
      ([name, { first: row, rows, readings }]): Finding => ({
        rule: "set-aside",
        weight: "note",
        ...where(table, row, first),
        message: text.rules["set-aside"].message(name, rows, readings),
        found: readings,
      }),
    );
  },
};
