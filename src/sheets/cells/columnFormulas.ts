import type { Plan } from "../plan/plan";
import { tableReference } from "./formula";

/** Formulas that a table gives to rows added in a spreadsheet, by table name and header. */
export function columnFormulas(plan: Plan): Map<string, Map<string, string>> {
  return new Map(
    plan.sheets.map(({ table, columns }) => {
      const ref = tableReference(table, columns);
      return [
        table,
        new Map(
          columns.flatMap(({ header, formula }): [string, string][] =>
            formula ? [[header, formula(ref, plan.lineup)]] : [],
          ),
        ),
      ];
    }),
  );
}
