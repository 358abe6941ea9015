import { isBlank, keyIds } from "../../records/kind";
import { type Rule, where } from "../context";
import type { Finding } from "../finding";

/** Rows of a panel that the lineup does not have: kept with their readings, neither counted nor judged. */
export const setAside: Rule = {
  id: "set-aside",
  title: "Rows of a panel that the lineup does not have",
  finds: "rows of a panel or section that the lineup does not have; one note a panel and table",
  why: "A panel taken out of a lineup leaves its readings; nobody should take them for readings of this lineup, or lose them.",
  satisfies:
    "nothing, where the panel was taken out; the panel's name corrected where it was misspelt",
  quiet: "for blank rows",
  reads: "table",
  find: (table) => {
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
        message: `${name} is not a panel or section of the lineup: ${rows} ${rows === 1 ? "row" : "rows"} with ${readings} ${readings === 1 ? "reading" : "readings"} set aside, not counted and not judged.`,
        found: readings,
      }),
    );
  },
};
