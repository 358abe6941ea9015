// What works on the workbook, in one piece that comes after the pane itself is shown.
export { changedRows } from "../check/changedRows";
export { check, recheck } from "../check/check";
export { openBook, reopenBook } from "../intake/openBook";
export { editedRows } from "../sheets/editedRows";
