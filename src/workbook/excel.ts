export { applyPlan } from "./excelBuild";
export { applyFills, type Filled } from "./excelFill";
export { goTo } from "./excelGo";
export { clearMarks, type Marked, markFindings } from "./excelMarks";
export { readExcel } from "./excelRead";
