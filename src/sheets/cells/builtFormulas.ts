import type { Lineup } from "../../lineup/lineup";
import { memoizeFor } from "../../quantities/memoizeFor";
import type { RecordKind } from "../../records/kind";
import { kindFor } from "../../records/kindFor";
import { KINDS } from "../../records/kinds";
import { tableReference } from "./formula";

/**
 * The formulas that a build wrote, each as a short mark of its table, column and text, by which a formula of an
 * earlier build is known from one that somebody wrote himself.
 */
export type BuiltFormulas = ReadonlySet<string>;

/** The marks of all formulas that a build of a lineup writes now, also onto a table whose headers name the phases otherwise. */
export const builtFormulas = memoizeFor(
  (lineup: Lineup): BuiltFormulas =>
    new Set(
      KINDS.flatMap((kind) => [...new Set([kind, kindFor(kind, lineup)])]).flatMap((kind) => {
        const ref = tableReference(kind.table, kind.columns);
        return kind.columns.flatMap(({ id, formula }) =>
          formula ? markOf(kind, kind.table, id, formula(ref, lineup)) : [],
        );
      }),
    ),
);

/**
 * The mark of a column's formula, the same whatever its table is called in the workbook.
 *
 * @param table the name of the table that the formula stands in
 */
export function markOf(
  { table: planned }: Pick<RecordKind, "table">,
  table: string,
  column: string,
  formula: string,
): string {
  const text = `${planned}.${column}=${formula.replaceAll(`${table}[`, "[")}`;
  // FNV-1a, 32 bits: marks are compared within one column, where a few texts ever stand.
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) {
    hash ^= text.charCodeAt(at);
    hash = Math.imul(hash, 0x01000193);
  }
  return (hash >>> 0).toString(36);
}
