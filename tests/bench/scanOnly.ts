import { readFileSync } from "node:fs";
import { readBook } from "../../src/xlsx/readBook";
import { report } from "./report";

const bytes = readFileSync(process.argv[2] ?? "");
const start = performance.now();
const { sheets } = await readBook(bytes);
report(start, `${sheets.length} sheets, one thread`);
