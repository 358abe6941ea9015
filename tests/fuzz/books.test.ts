import { runTargets } from "./runTargets";

runTargets(["a workbook's package", "a part of a workbook", "a sheet of a workbook"]);
