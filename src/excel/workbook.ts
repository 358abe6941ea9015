export type { Filled } from "../intake/place/filled";
export { applyPlan } from "./buildSheets";
export { applyChanges } from "./changeSheets";
export { applyFills, type FillOptions } from "./fillCells";
export { goTo } from "./goToCell";
export { readExcel } from "./readSheets";
export { rereadRows } from "./rereadRows";
export { listen, type Touched } from "./watchEdits";
export { clearMarks, type Marked, markFindings } from "./writeMarks";
