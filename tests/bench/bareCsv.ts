import { readFileSync } from "node:fs";
import { parseCsv } from "hucre/csv";
import { report } from "./report";

const text = readFileSync(process.argv[2] ?? "", "utf8");
const start = performance.now();
const rows = parseCsv(text, { delimiter: ";" });
report(start, `${rows.length} rows`);
