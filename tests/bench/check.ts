import { execFileSync } from "node:child_process";
import { statSync } from "node:fs";
import { resolve } from "node:path";
import { bundle } from "../../src/cli/bundle.mjs";
import { convert, python, scratch } from "../judge/outside";
import { longBook } from "./longBook";

/**
 * `npm run bench:check [rows…]`: the check of generated workbooks of so many record rows (100,000 and
 * 400,000; a long one takes minutes to be made), over inflating the same file alone, beside a general
 * library's bare reading of it and over an equivalent openpyxl script, each in a process of its own, by turns, the least of
 * three runs (of the scripts, of LibreOffice, and of more than 200,000 rows, one), with its peak memory. The check has the
 * room for what is soon let go that the workers of the command line have. The scripts are not asked of
 * more than 200,000 rows: they hold the whole workbook at about 14 KB a row.
 */
const MANY = 200_000;
/** As the command line's workers have it (`roomOf`), of which one of three halves. */
const YOUNG = "--max-semi-space-size=16";
const given = process.argv.slice(2).map(Number);
const sizes = given.length > 0 ? given : [100_000, 400_000];

interface Run {
  seconds: number;
  /** Of all processors, with starting the process; of a script that does not tell, 0. */
  processor?: number;
  megabytes: number;
  said: string;
}

const run = (command: string, args: string[]): Run => {
  const out = execFileSync(command, args, { encoding: "utf8", maxBuffer: 1 << 28 });
  return JSON.parse(out.trim().split("\n").at(-1) ?? "") as Run;
};
const least = (runs: readonly Run[]): Run =>
  runs.reduce((one, other) => (other.seconds < one.seconds ? other : one));

const node = (script: string, file: string, ...flags: string[]) =>
  run(process.execPath, [
    "--max-old-space-size=14000",
    ...flags,
    bundle(`tests/bench/${script}`),
    file,
  ]);

const line = (name: string, { seconds, processor = 0, megabytes, said }: Run) =>
  `${name.padEnd(30)} ${seconds.toFixed(2).padStart(7)} s ${processor.toFixed(2).padStart(7)} s of processors ${megabytes.toFixed(0).padStart(6)} MB  ${said}`;
const say = (...lines: string[]) => process.stdout.write(`${lines.join("\n")}\n`);
const over = (one: Run, other: Run) => (one.seconds / other.seconds).toFixed(2);

let before: { readonly rows: number; readonly check: Run } | undefined;
for (const rows of sizes) {
  const file = await longBook(rows);
  const [inflates, reads, bares, checks]: [Run[], Run[], Run[], Run[]] = [[], [], [], []];
  for (let turn = 0; turn < (rows > MANY ? 1 : 3); turn++) {
    inflates.push(node("bareInflate.ts", file));
    reads.push(node("scanOnly.ts", file, YOUNG));
    bares.push(node("bareRead.ts", file));
    checks.push(node("timedCheck.ts", file, YOUNG));
  }
  const [inflate, read, bare, check] = [inflates, reads, bares, checks].map(least) as [
    Run,
    Run,
    Run,
    Run,
  ];
  say(
    `${file}: ${(statSync(file).size / 1e6).toFixed(1)} MB`,
    line("inflating alone", inflate),
    line("general library, bare read", bare),
    line("gearproof read", read),
    line("gearproof check", check),
    `read / inflating: ${over(read, inflate)}; check / inflating: ${over(check, inflate)} (aim at most 3)`,
    `check / bare read of the general library: ${over(check, bare)}`,
  );
  if (before)
    say(
      `${rows / before.rows} times the rows take ${over(check, before.check)} times as long and ${(check.megabytes / before.check.megabytes).toFixed(2)} times the memory`,
    );
  before = { rows, check };
  if (rows > MANY) continue;
  const script = (what: string) => run(python(), ["tests/bench/openpyxlCheck.py", file, what]);
  const whole = script("whole");
  const values = script("values");
  const opened = performance.now();
  convert(resolve(file), "csv", scratch());
  const office = { seconds: (performance.now() - opened) / 1000, megabytes: 0, said: "" };
  say(
    line("openpyxl script, equivalent", whole),
    line("openpyxl script, values only", values),
    line("LibreOffice, opened alone", office),
    "(the scripts load the whole workbook and compute its contact, insulation and withstand rows alone)",
    `check / equivalent openpyxl script: ${over(check, whole)} (aim under 0.20)`,
    `check / openpyxl script that reads values only: ${over(check, values)}`,
  );
}
