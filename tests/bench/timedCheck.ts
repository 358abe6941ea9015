import { readFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { readShared } from "../../src/cli/readShared";
import { check } from "../support/checkBook";
import { report } from "./report";

const bytes = readFileSync(process.argv[2] ?? "");
const start = performance.now();
const snapshot = await readShared(bytes, availableParallelism() - 1);
const read = performance.now();
const checked = check(snapshot, 46_400);
if (!checked.ok) throw new Error(checked.reason);
const { counts, findings } = checked.report;
report(
  start,
  `${counts.pass} rows pass, ${findings.length} findings; rules ${((performance.now() - read) / 1000).toFixed(2)} s`,
);
