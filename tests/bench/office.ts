import Table from "cli-table3";
import { readExcel } from "../../src/excel/workbook";
import {
  buildJob,
  type Cost,
  checkJob,
  cost,
  costOf,
  fillJob,
  markJob,
  recordRows,
} from "../excel/excelJobs";
import { inExcel } from "../excel/excelSupport";

/**
 * `npm run bench:office`: round trips between the add-in and Excel, and their bytes, counted by the
 * stand-in through the genuine client.
 */
const table = new Table({
  head: ["job", "batches", "MB up", "MB down", "greatest MB", "remarks"],
  colAligns: ["left", "right", "right", "right", "right", "left"],
  style: { head: [], border: [] },
});
const percent = (part: number) => `${Math.round(100 * part)} %`;
const mega = (bytes: number) => (bytes / 1e6).toFixed(3);
const row = (job: string, { batches, up, down, greatest }: Cost, remarks: string) =>
  table.push([job, batches, mega(up), mega(down), mega(greatest), remarks]);

const built = await buildJob(200);
row(
  "building 200 panels",
  built.first.cost,
  `${built.first.value.create.reduce((sum, { planned }) => sum + planned.rows.length, 0)} rows`,
);
row("building them again", built.again.cost, "nothing to write");

const host = recordRows(110_000);
const checked = await checkJob(host);
const rows = checked.value.sheets
  .flatMap(({ tables }) => tables)
  .reduce((sum, { rowCount }) => sum + rowCount, 0);
row("checking 100,000 rows", checked.cost, `${rows} rows, ${checked.findings} findings`);

let early: Cost | undefined;
const part = await cost(host, (context) =>
  readExcel(context, {
    valuesRead: async () => {
      early = costOf(host);
    },
  }),
);
if (early)
  row("until its first findings", early, `${percent(early.down / part.cost.down)} of its bytes`);

const { marked, cleared } = await markJob(host, 5_000);
row("marking 5,000 rows", marked.cost, `${marked.value.formats} conditional formats`);
row("clearing the marks", cleared.cost, `${cleared.value} conditional formats`);

const edit = await fillJob(host, checked.value, 1, { fresh: true });
row("an edit of one cell", edit.cost, "as it was just read");
const again = await inExcel(host, (context) => readExcel(context));
const filled = await fillJob(host, again, 5_000);
row("placing 5,000 readings", filled.cost, `${filled.value.written.length} written`);

process.stdout.write(`${table.toString()}\n`);
