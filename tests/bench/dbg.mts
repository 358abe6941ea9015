import { readFileSync } from "node:fs";
import { check } from "../../src/check/check";
import { judgeTable } from "../../src/check/judgeTable";
import { RULES } from "../../src/check/rules";
import { runRule } from "../../src/check/runRules";
import { evaluate } from "../../src/records/evaluate";
import { keyIds, rowKey } from "../../src/records/kind";
import { rowsOf } from "../../src/records/rowsOf";
import { lineupOfSheets } from "../../src/sheets/lineupOfSheets";
import { recordTables } from "../../src/sheets/recordTable";
import { readBook } from "../../src/workbook/file";

const bytes = readFileSync(process.argv[2] ?? "");
let t = performance.now();
let total = 0;
const lap = (n: string) => {
  const now = performance.now();
  total += now - t;
  if (now - t > 25) console.log((now - t).toFixed(0).padStart(6), total.toFixed(0).padStart(6), n);
  t = performance.now();
};
const s = await readBook(bytes);
lap("read");
const told = lineupOfSheets(s);
lap("told");
const tables = recordTables(s);
lap("recordTables");
const lineup = s.lineup!;
const judged = tables.map((x) => judgeTable(x, lineup));
lap("judgeTable all");
const context: any = {
  snapshot: s,
  lineup,
  told,
  tables: judged,
  instruments: new Map(),
  today: 46400,
};
for (const r of RULES) {
  runRule(r, context);
  lap(r.id);
}

lap("end");
console.log(total);
