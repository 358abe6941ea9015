import { readFileSync } from "node:fs";
import { readXlsx } from "hucre/xlsx";
import { report } from "./report";

const bytes = readFileSync(process.argv[2] ?? "");
const start = performance.now();
const workbook = await readXlsx(bytes);
report(start, `${workbook.sheets.length} sheets`);
