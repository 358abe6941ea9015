// What works on the workbook, in one piece that comes after the pane itself is shown.

export { check, recheck } from "../check/check";
export { changedRows } from "../check/compare/changedRows";
export { openBook, reopenBook } from "../intake/openBook";
export { editedRows } from "../sheets/editedRows";
export { filledRows } from "../sheets/filledRows";
