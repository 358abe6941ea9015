export { applyPlan } from "./excelBuild";
export { applyFills, type Filled, type FillOptions } from "./excelFill";
export { goTo } from "./excelGo";
export { clearMarks, type Marked, markFindings } from "./excelMarks";
export { readExcel } from "./excelRead";
