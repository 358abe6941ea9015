import { writeFileSync } from "node:fs";
import { cleanBooks, type FamilyResult, faultRun } from "../support/faultRun";
import { rulesText } from "../tools/reference/rulesText";

/**
 * `npm run bench:faults [each]`: puts so many single faults of every family (100) into clean generated
 * workbooks, one at a time, asks whether the right rule finds each at the right cell, prints the table
 * and writes it into the reference of the rules.
 */
const each = Number(process.argv[2] ?? 100);
const REFERENCE = "src/check/REFERENCE.md";
const books = cleanBooks();
const rows = books.reduce(
  (sum, { report }) => sum + Object.values(report.counts).reduce((one, count) => one + count, 0),
  0,
);
const clean = books.reduce((sum, { report }) => sum + report.findings.length, 0);
const results = faultRun(books, each);
const sum = (of: (one: FamilyResult) => number) =>
  results.reduce((total, one) => total + of(one), 0);
const injected = sum((one) => one.injected);
const found = sum((one) => one.found);
const table = [
  ["fault", "put in", "found", "false alarms", "found by"],
  ...results.map((one) => [
    one.family,
    String(one.injected),
    String(one.found),
    String(one.alarms),
    one.rules.join(", "),
  ]),
  ["all", String(injected), String(found), String(sum((one) => one.alarms)), ""],
];
const widths = (table[0] ?? []).map((_, at) =>
  Math.max(...table.map((row) => row[at]?.length ?? 0)),
);
const line = (row: readonly string[]) =>
  `| ${row.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join(" | ")} |`;
const [head = [], ...body] = table;
const text = [
  `${injected} single faults in ${books.length} clean generated workbooks of ${rows} rows over every record kind (invented data, the same on every run): ${((100 * found) / injected).toFixed(2)} % found by the right rule at the right cell. Findings on the clean workbooks: ${clean}. A false alarm is a finding on a row that the fault does not touch, by a rule that does not look across rows.`,
  "",
  line(head),
  line(widths.map((width) => "-".repeat(width))),
  ...body.map(line),
  "",
  "Not found are faults that no rule can tell from a sound reading: a unit taken for its neighbour, or a reading far from its group, where too few are there to compare with or their own spread reaches so far.",
].join("\n");
process.stdout.write(`${text}\n`);
for (const { family, missed } of results)
  for (const { sheet, addresses } of missed)
    process.stdout.write(`missed: ${family}: ${sheet}!${addresses.join(" or ")}\n`);
if (process.argv[2] === undefined) {
  writeFileSync(REFERENCE, rulesText(text));
  process.stdout.write(`written into ${REFERENCE}\n`);
}
