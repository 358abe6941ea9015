import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { python } from "../judge/outside";
import { ATTACKS } from "../support/attacks";

/**
 * `npm run bench:hostile [-- WORD]`: each hostile or broken file given to the command line in a process of
 * its own: its size, the exit code and what is said, seconds of the processor, and the most memory that it
 * had. The rows are those of docs/hostile-input.md.
 */
const word = process.argv[2] ?? "";
const folder = mkdtempSync(join(tmpdir(), "gearproof-hostile-"));
const LONGEST = 120;

/** Runs a command to its end or its time; tells the exit code, seconds of the processor and megabytes. */
const MEASURE = `
import resource, subprocess, sys
try:
    code = subprocess.run(sys.argv[1:], timeout=${LONGEST}).returncode
except subprocess.TimeoutExpired:
    code = "not ended"
used = resource.getrusage(resource.RUSAGE_CHILDREN)
print("MEASURED", code, "|", round(used.ru_utime + used.ru_stime, 1), "|", used.ru_maxrss // 1024, file=sys.stderr)
`;

const LENGTH = 200;
for (const [at, { what, command, make }] of ATTACKS.entries()) {
  if (!what.includes(word)) continue;
  const file = join(folder, `${at}.${command === "check" ? "xlsx" : "json"}`);
  const bytes = await make();
  writeFileSync(file, bytes);
  const options = command === "lineup" ? ["-o", join(folder, `${at}-made.xlsx`)] : [];
  const { stdout, stderr } = spawnSync(
    python(),
    ["-c", MEASURE, process.execPath, "src/cli/gearproof.mjs", command, file, ...options],
    { encoding: "utf8", maxBuffer: 1 << 28 },
  );
  const [, code, measured] = /MEASURED (-?\w+(?: \w+)?) \| (.*)/.exec(stderr) ?? [];
  const said = `${stderr.replace(/MEASURED.*/, "")}${stdout}`.replaceAll(`${folder}/`, "").trim();
  const line = said.split("\n").slice(0, 2).join("; ").slice(0, LENGTH);
  process.stdout.write(
    `| ${what} | ${(bytes.length / 1e6).toFixed(2)} | ${code} | ${line} | ${measured} |\n`,
  );
}
rmSync(folder, { recursive: true });
