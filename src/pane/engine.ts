// What works on the workbook, in one piece that comes after the pane itself is shown.
export { changedRows } from "../check/changedRows";
export { check, recheck } from "../check/check";
export { editedRows } from "../sheets/editedRows";
