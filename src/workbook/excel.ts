export { applyPlan } from "./excelBuild";
export { applyChanges } from "./excelChange";
export { listen, type Touched } from "./excelEvents";
export { applyFills, type FillOptions } from "./excelFill";
export { goTo } from "./excelGo";
export { clearMarks, type Marked, markFindings } from "./excelMarks";
export { readExcel, rereadRows } from "./excelRead";
export type { Filled } from "./filled";
