/**
 * `node tests/judge/reached.mjs FOLDER`: what the scores of workbooks and exports by other hands came to,
 * against what this commit reaches and may not fall behind. Better figures are written here.
 */
import { readFileSync } from "node:fs";

const read = (name) => JSON.parse(readFileSync(`${process.argv[2]}/${name}.json`, "utf8"));
const sum = (rows, of) => rows.reduce((total, row) => total + of(row), 0);
const [workbooks, exported] = [read("workbooks"), read("exports")];
const cells = (state) =>
  sum(exported, ({ tally }) => sum(Object.values(tally), (one) => one[state] ?? 0));
const reached = [
  ["workbooks, tables recognised", sum(workbooks, ({ blocks }) => blocks), "least", 39],
  ["workbooks, faults told", sum(workbooks, ({ telling }) => telling), "least", 42],
  ["workbooks, false alarms", sum(workbooks, (one) => one.false), "most", 0],
  [
    "exports, readings right",
    sum(exported, ({ tally }) => tally.reading?.right ?? 0),
    "least",
    698,
  ],
  ["exports, cells WRONG", cells("wrong"), "most", 0],
];
for (const [what, number, side, bound] of reached) {
  const isReached = side === "least" ? number >= bound : number <= bound;
  console.log(`${what}: ${number}, at ${side} ${bound}${isReached ? "" : " NOT REACHED"}`);
  if (!isReached) process.exitCode = 1;
}
