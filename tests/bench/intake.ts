import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, statSync } from "node:fs";
import { writeExport } from "./csvFile";

/**
 * `npm run bench:intake [lines]`: inspection and placement of an export of so many lines (1,000,000) over
 * the CSV library's bare parse of the same file, each in a process of its own, the least of two runs, with
 * its peak memory; and the same of a tenth of the lines, by which the growth is seen.
 */
const lines = Number(process.argv[2] ?? 1_000_000);
mkdirSync(".cache", { recursive: true });

interface Run {
  seconds: number;
  megabytes: number;
  said: string;
}
const run = (script: string, file: string): Run => {
  const runs = [1, 2].map((): Run => {
    const out = execFileSync(process.execPath, ["--import", "tsx", `tests/bench/${script}`, file], {
      encoding: "utf8",
    });
    return JSON.parse(out.trim().split("\n").at(-1) ?? "") as Run;
  });
  return runs.reduce((one, other) => (other.seconds < one.seconds ? other : one));
};

const say = (name: string, { seconds, megabytes, said }: Run) =>
  `${name.padEnd(26)} ${seconds.toFixed(2).padStart(7)} s ${megabytes.toFixed(0).padStart(6)} MB  ${said}`;

for (const count of [Math.round(lines / 10), lines]) {
  const file = `.cache/bench-export-${count}.csv`;
  if (!existsSync(file)) await writeExport(file, count);
  const bare = run("bareCsv.ts", file);
  const intake = run("timedIntake.ts", file);
  process.stdout.write(
    [
      `${file}: ${count} lines, ${(statSync(file).size / 1e6).toFixed(1)} MB`,
      say("CSV library, bare parse", bare),
      say("gearproof intake", intake),
      `intake / bare parse: ${(intake.seconds / bare.seconds).toFixed(2)} (aim at most 2)`,
      "",
    ].join("\n"),
  );
}
