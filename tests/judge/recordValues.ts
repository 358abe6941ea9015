import { evaluate } from "../../src/records/evaluate";
import { type CellValue, isBlank } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import type { Plan } from "../../src/sheets/plan/plan";

/** Computed columns of each record table: table, column id, and the values row by row; blank as null. */
export function computedColumns(plan: Plan): Record<string, Record<string, CellValue[]>> {
  return Object.fromEntries(
    KINDS.map((kind) => {
      const rows = plan.sheets.find(({ table }) => table === kind.table)?.rows ?? [];
      const judged = evaluate(kind, rows, plan.lineup);
      return [
        kind.table,
        Object.fromEntries(
          kind.columns
            .filter(({ formula }) => formula)
            .map(({ id }) => [
              id,
              judged.map((row) => (isBlank(row[id]) ? null : (row[id] as CellValue))),
            ]),
        ),
      ];
    }),
  );
}
