import { execFileSync } from "node:child_process";
import { statSync } from "node:fs";
import { python } from "../judge/outside";
import { longBook } from "./longBook";

/**
 * `npm run bench:check [rows]`: the check of a generated workbook of so many record rows (100,000), over
 * the file library's bare reading of the same file and over an equivalent openpyxl script, each in a
 * process of its own, the least of three runs (of the scripts, one), with its peak memory.
 */
const rows = Number(process.argv[2] ?? 100_000);
const file = await longBook(rows);

interface Run {
  seconds: number;
  megabytes: number;
  said: string;
}

const run = (command: string, args: string[], times: number): Run => {
  const runs = Array.from({ length: times }, (): Run => {
    const out = execFileSync(command, args, { encoding: "utf8", maxBuffer: 1 << 28 });
    return JSON.parse(out.trim().split("\n").at(-1) ?? "") as Run;
  });
  return {
    seconds: Math.min(...runs.map(({ seconds }) => seconds)),
    megabytes: Math.max(...runs.map(({ megabytes }) => megabytes)),
    said: runs[0]?.said ?? "",
  };
};

const node = (script: string) =>
  run(process.execPath, ["--import", "tsx", `tests/bench/${script}`, file], 3);
const bare = node("bareRead.ts");
const check = node("timedCheck.ts");
const script = (what: string) => run(python(), ["tests/bench/openpyxlCheck.py", file, what], 1);
const whole = script("whole");
const values = script("values");

const line = (name: string, { seconds, megabytes, said }: Run) =>
  `${name.padEnd(30)} ${seconds.toFixed(2).padStart(7)} s ${megabytes.toFixed(0).padStart(6)} MB  ${said}`;
process.stdout.write(
  [
    `${file}: ${(statSync(file).size / 1e6).toFixed(1)} MB`,
    line("file library, bare read", bare),
    line("gearproof check", check),
    line("openpyxl script, equivalent", whole),
    line("openpyxl script, values only", values),
    "(the scripts load the whole workbook and compute its contact, insulation and withstand rows alone)",
    `check / bare read: ${(check.seconds / bare.seconds).toFixed(2)} (aim at most 1.3)`,
    `check / equivalent openpyxl script: ${(check.seconds / whole.seconds).toFixed(2)} (aim under 0.20)`,
    `check / openpyxl script that reads values only: ${(check.seconds / values.seconds).toFixed(2)}`,
    "",
  ].join("\n"),
);
