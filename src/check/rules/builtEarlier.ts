import { formulaRuns, rowsFrom } from "../../sheets/cells/formulaRuns";
import { earlierIn, isEarlierBuild } from "../compare/earlierBuild";
import { isSameResult } from "../compare/isSameResult";
import {
  type Context,
  everyKind,
  headerOf,
  type JudgedTable,
  type Rule,
  whereTable,
} from "../context";
import type { Finding } from "../findings/finding";

/** So many columns are named. */
const FEW = 4;

/** Formulas that a build wrote and that a build would write otherwise now: one finding for the workbook. */
export const builtEarlier: Rule = {
  id: "built-earlier",
  reads: "book",
  of: everyKind,
  find: (context) => {
    if (!isEarlierBuild(context)) return [];
    const stale = context.tables.flatMap((table) => staleIn(table, context));
    const [first] = stale;
    if (!first) return [];
    const apart = stale.reduce((sum, one) => sum + one.apart, 0);
    const names = stale.slice(0, FEW).map(({ table, header }) => `${table.table.sheet}, ${header}`);
    return [
      {
        rule: "built-earlier",
        weight: apart > 0 ? "query" : "note",
        ...whereTable(first.table),
        message: context.text.rules["built-earlier"].message(names, stale.length, apart),
      } satisfies Finding,
    ];
  },
};

interface Stale {
  readonly table: JudgedTable;
  readonly header: string;
  /** Cells that hold something else than is computed now. */
  readonly apart: number;
}

/** The columns of a table with formulas of an earlier build. */
function staleIn(table: JudgedTable, context: Context): Stale[] {
  const isEarlier = earlierIn(table, context);
  return table.kind.columns
    .filter(({ id, formula }) => formula && table.at.has(id))
    .flatMap(({ id, role }): Stale[] => {
      const rows = formulaRuns(table.table, table.at.get(id) ?? -1)
        .filter(({ from }) => isEarlier(from, id))
        .flatMap(({ from, to }) => rowsFrom(from, to))
        .filter((row) => !table.aside.has(row));
      // A result that differs is told of by itself.
      const apart = rows.filter(
        (row) => role !== "result" && !isSameResult(table.rows[row]?.[id], table.judged[row]?.[id]),
      );
      return rows.length > 0 ? [{ table, header: headerOf(table, id), apart: apart.length }] : [];
    });
}
