import { execFile, spawn } from "node:child_process";
import { copyFileSync, existsSync, mkdtempSync, readdirSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readBytes } from "../../src/cli/files/files";
import { readBook } from "../../src/xlsx/readBook";
import { run } from "../support/commandLine";

/** What the machine does to a command: a reader that goes, a signal, another run, a folder that is not to be written to. */
const folder = mkdtempSync(join(tmpdir(), "gearproof-edge-"));
const at = (name: string) => join(folder, name);
const BOOK = "sample-workbooks/mesa-tested.xlsx";

test("a reader that goes ends nothing: the files are written, and the exit code is the check's", async () => {
  const marked = at("marked.xlsx");
  const child = spawn(
    process.execPath,
    ["src/cli/gearproof.mjs", "check", BOOK, "--json", "--marked", marked],
    { stdio: ["ignore", "pipe", "pipe"] },
  );
  child.stdout.once("data", () => child.stdout.destroy());
  let said = "";
  child.stderr.on("data", (text) => {
    said += text;
  });
  const code = await new Promise((done) => child.once("close", done));
  expect(said).not.toMatch(/EPIPE|Error/);
  expect(code).toBe(1);
  expect((await readBook(readBytes(marked))).sheets.length).toBeGreaterThan(5);
});

test("interrupted at any time, a command leaves the file that was there as it was, or the whole new one", async () => {
  const out = at("out.xlsx");
  const signals: unknown[] = [];
  for (const wait of [50, 200, 400]) {
    copyFileSync(BOOK, out);
    const before = statSync(out);
    const child = spawn(process.execPath, [
      "src/cli/gearproof.mjs",
      "lineup",
      "sample-workbooks/mesa-metal-clad.lineup.json",
      "-o",
      out,
    ]);
    await new Promise((done) => setTimeout(done, wait));
    child.kill("SIGINT");
    const signal = await new Promise((done) => child.once("close", (_code, by) => done(by)));
    signals.push(signal);
    const after = statSync(out);
    if (signal === "SIGINT")
      expect([after.size, after.mtimeMs]).toEqual([before.size, before.mtimeMs]);
    expect((await readBook(readBytes(out))).sheets.length).toBeGreaterThan(5);
  }
  expect(signals).toContain("SIGINT");
});

test("two runs at once onto one file: it is one of them, whole", async () => {
  const out = at("both.xlsx");
  const lineup = "sample-workbooks/mesa-metal-clad.lineup.json";
  const both = await Promise.all([
    run("lineup", lineup, "-o", out),
    run("lineup", lineup, "-o", out),
  ]);
  expect(both.map(({ code }) => code)).toEqual([0, 0]);
  expect((await readBook(readBytes(out))).sheets.length).toBeGreaterThan(5);
  expect(readdirSync(folder).filter((name) => name.endsWith(".part"))).toEqual([]);
});

test("a program folder that is not to be written to: the bundle goes elsewhere, and is gone afterwards", async () => {
  const script = `
    const { bundleElsewhere } = await import(${JSON.stringify(join(process.cwd(), "src/cli/bundle.mjs"))});
    const file = bundleElsewhere("src/cli/main.ts");
    console.log(file);
    const { main } = await import(file);
    process.exitCode = await main(["node", "gearproof", "check", ${JSON.stringify(BOOK)}]);
  `;
  const { out, code } = await new Promise<{ out: string; code: number }>((done) => {
    execFile(process.execPath, ["--input-type=module", "-e", script], (error, stdout) =>
      done({ out: stdout, code: error ? Number(error.code) : 0 }),
    );
  });
  const [file = "", ...told] = out.split("\n");
  expect(file.startsWith(process.cwd())).toBe(false);
  expect(told.join("\n")).toMatch(/Findings: \d+ stop/);
  expect(code).toBe(1);
  expect(existsSync(file)).toBe(false);
});
