export { appendRow } from "./excelAppend";
export { applyPlan } from "./excelBuild";
export { listen, type Touched } from "./excelEvents";
export { applyFills, type Filled, type FillOptions } from "./excelFill";
export { goTo } from "./excelGo";
export { clearMarks, type Marked, markFindings } from "./excelMarks";
export { readExcel, rereadRows, type TableRows } from "./excelRead";
