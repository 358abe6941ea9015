import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, statSync } from "node:fs";
import { type Lines, writeExport } from "./csvFile";

/**
 * `npm run bench:intake [lines]`: an export of so many lines (1,000,000) inspected and placed, over the CSV
 * library's bare parse of the same file: its rows streamed and dropped. Both are timed from the file on,
 * reading and decoding included, each in a process of its own, by turns, the least of three runs, with the
 * peak memory of the process; and the same of a tenth of the lines, by which the growth is seen. One file
 * says the same lines again and again, as overlapping exports do; in another each line has its running
 * number; in the third its own time, so that each is read and weighed against the others of its row.
 */
const lines = Number(process.argv[2] ?? 1_000_000);
mkdirSync(".cache", { recursive: true });

interface Run {
  seconds: number;
  megabytes: number;
  said: string;
}
const run = (script: string, file: string): Run =>
  JSON.parse(
    execFileSync(process.execPath, ["--import", "tsx", `tests/bench/${script}`, file], {
      encoding: "utf8",
    })
      .trim()
      .split("\n")
      .at(-1) ?? "",
  ) as Run;
const least = (runs: readonly Run[]): Run =>
  runs.reduce((one, other) => (other.seconds < one.seconds ? other : one));

const say = (name: string, { seconds, megabytes, said }: Run) =>
  `${name.padEnd(26)} ${seconds.toFixed(2).padStart(7)} s ${megabytes.toFixed(0).padStart(6)} MB  ${said}`;

for (const kind of ["said again", "numbered", "timed"] satisfies Lines[])
  for (const count of [Math.round(lines / 10), lines]) {
    const file = `.cache/bench-export-${count}-${kind.replace(" ", "-")}.csv`;
    if (!existsSync(file)) await writeExport(file, count, kind);
    const [bares, intakes]: [Run[], Run[]] = [[], []];
    for (let turn = 0; turn < 3; turn++) {
      bares.push(run("bareCsv.ts", file));
      intakes.push(run("timedIntake.ts", file));
    }
    const [bare, intake] = [least(bares), least(intakes)];
    process.stdout.write(
      [
        `${file}: ${count} lines, ${(statSync(file).size / 1e6).toFixed(1)} MB, lines ${kind}`,
        say("CSV library, bare parse", bare),
        say("gearproof intake", intake),
        `intake / bare parse: ${(intake.seconds / bare.seconds).toFixed(2)} (aim at most 2)`,
        "",
      ].join("\n"),
    );
  }
