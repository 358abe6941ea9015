import type { JudgedTable } from "./context";

/**
 * Rows whose formulas come to something else than before, so that what the workbook shows there has
 * changed too. Only kinds that look over a whole column have such rows besides the edited ones.
 */
export function changedRows(before: JudgedTable, after: JudgedTable): number[] {
  if (!after.kind.columns.some(({ survey }) => survey)) return [];
  const ids = after.kind.columns.filter(({ value }) => value).map(({ id }) => id);
  return after.judged.flatMap((row, index) =>
    ids.some((id) => row[id] !== before.judged[index]?.[id]) ? [index] : [],
  );
}
