import { applyChanges, applyFills, readExcel, rereadRows } from "../../src/excel/workbook";
import type { WorkbookHost as PaneHost, Watch } from "../../src/pane/host";
import type { StandInHost } from "../../src/standin/host";
import { inExcel } from "../excel/excelSupport";

export const WATCH: Watch = { progress: () => {}, signal: new AbortController().signal };

const unused = () => Promise.reject(new Error("not in these tests"));

/**
 * The workbook as the pane has it, over the stand-in for Excel.
 *
 * @param most bytes to a batch, small so that the work takes many of them
 */
export const standInHost = (host: StandInHost, most?: number): PaneHost => ({
  read: (watch, options) =>
    inExcel(host, (context) => readExcel(context, { ...watch, ...options })),
  reread: (snapshot, rows) => inExcel(host, (context) => rereadRows(context, snapshot, rows)),
  fill: (cells, watch) =>
    inExcel(host, (context) => applyFills(context, cells, { ...watch, most })),
  change: (changes, watch) =>
    inExcel(host, (context) => applyChanges(context, changes, { ...watch, most })),
  listen: unused,
  build: unused,
  undoBuild: unused,
  mark: unused,
  clearMarks: unused,
  addBeside: unused,
  removeBeside: unused,
  file: unused,
  goTo: unused,
  selected: unused,
  selectedCells: unused,
  insert: unused,
});
