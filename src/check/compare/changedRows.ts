import type { JudgedTable } from "../context";
import { changed } from "../judgeTable";

/**
 * Rows whose formulas come to something else than before, so that what the workbook shows there has
 * changed too. Only kinds that look over a whole column have such rows besides the edited ones.
 */
export const changedRows = (before: JudgedTable, after: JudgedTable): number[] =>
  after.kind.columns.some(({ survey }) => survey)
    ? changed(after.kind.columns, before.judged, after.judged)
    : [];
