import { readFileSync } from "node:fs";
import { planFor } from "../../src/sheets/plan/plan";
import { recordTables } from "../../src/sheets/recordTable";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { markFile } from "../../src/xlsx/writeMarks";
import { check } from "../support/checkBook";
import { filledPlan } from "../support/fill";
import { longLineup, sampleLineup } from "../support/lineups";
import { longBook } from "./longBook";

/**
 * `npm run bench:files [-- PANELS]`: filling 500 readings into the sample's workbook over reading it, marking
 * 5,000 rows of a workbook of 100,000 over checking it, and building so many panels (2,000); processor time,
 * the least of three runs (of the build, one).
 */
const panels = Number(process.argv[2] ?? 2000);
const say = (line: string) => process.stdout.write(`${line}\n`);
const processor = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

async function least<T>(
  runs: number,
  run: () => Promise<T>,
): Promise<{ seconds: number; last: T }> {
  let seconds = Number.POSITIVE_INFINITY;
  let last: T | undefined;
  for (let turn = 0; turn < runs; turn++) {
    const start = processor();
    last = await run();
    seconds = Math.min(seconds, processor() - start);
  }
  return { seconds, last: last as T };
}

const { file } = await writeBook(filledPlan(sampleLineup(), 1));
const read = await least(3, () => readBook(file));
let left = 500;
const changes = recordTables(read.last).map(({ table, rows, at }) => {
  const column = at.get("remarks") ?? table.headers.length - 1;
  const count = Math.min(left, rows.length);
  left -= count;
  return {
    table,
    writes: Array.from({ length: count }, (_, row) => ({ row, column, value: 5200 + row })),
  };
});
const fill = await least(3, () => writeCells(file, changes));
say(
  `${(file.length / 1000).toFixed(0)} kB: read ${read.seconds.toFixed(3)} s; 500 cells filled ${fill.seconds.toFixed(3)} s: ${(fill.seconds / read.seconds).toFixed(2)} times reading (aim at most 2)`,
);

const long = readFileSync(await longBook(100_000));
const checked = await least(1, async () => {
  const found = check(await readBook(long), 46_400);
  if (!found.ok) throw new Error(found.reason);
  return found.report.findings;
});
const rows = Array.from({ length: 5000 }, (_, row) => ({
  rule: "future-date",
  weight: "query" as const,
  sheet: row % 2 === 0 ? "Contacts" : "Insulation",
  address: `F${5 + row}`,
  message: "invented",
}));
const mark = await least(1, () => markFile(long, rows));
say(
  `${(long.length / 1e6).toFixed(1)} MB: check ${checked.seconds.toFixed(2)} s; 5,000 rows marked ${mark.seconds.toFixed(2)} s: check and marks ${((checked.seconds + mark.seconds) / checked.seconds).toFixed(2)} times checking (aim at most 1.3)`,
);

for (const count of [panels / 4, panels]) {
  const plan = planFor(longLineup(count));
  const build = await least(1, () => writeBook(plan));
  say(
    `${count} panels: built in ${build.seconds.toFixed(1)} s, ${(build.last.file.length / 1e6).toFixed(1)} MB (aim at 2,000: under 5 s, 500 MB); memory so far ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`,
  );
}
