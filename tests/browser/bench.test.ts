import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { BenchGrid } from "../../src/standin/bench/grid";
import { serve } from "../../src/standin/bench/serve";
import type { StandInHost } from "../../src/standin/host";
import { readBook } from "../../src/xlsx/file";
import { check } from "../support/checkBook";
import { sampleLineup } from "../support/lineups";
import { acceptFinding } from "./acceptFinding";
import { browser } from "./browser";
import { describeLineup } from "./describeLineup";
import { isBuilt } from "./isBuilt";
import { modes } from "./modes";
import { ownLayout } from "./ownLayout";
import { pasteReadings } from "./pasteReadings";
import { report } from "./report";

/**
 * The bench in a real browser: the built pane and functions bundles, the genuine Office.js client, the
 * stand-in. Screenshots go to out/screenshots, to be looked at.
 */

declare global {
  interface Window {
    bench: { grid: BenchGrid; host: StandInHost; settled: () => Promise<void> };
  }
}

const SHOTS = "out/screenshots";
let chrome: Browser;
let server: Server;
let page: Page;
const faults: string[] = [];
let at = "";
const address = () => at;

beforeAll(async () => {
  mkdirSync(SHOTS, { recursive: true });
  // The bench opens the demo's workbook as its sample.
  if (!isBuilt()) {
    execFileSync("npm", ["run", "-s", "gearproof", "--", "demo"], { stdio: "pipe" });
    for (const script of ["build", "bench:build"])
      execFileSync("npm", ["run", "-s", script, "--", "--stats=errors-only"], { stdio: "pipe" });
  }
  const served = await serve("out/bench", 0);
  server = served.server;
  at = served.address;
  chrome = await browser();
  const context = await chrome.newContext({
    viewport: { width: 1400, height: 850 },
    acceptDownloads: true,
  });
  page = await context.newPage();
  page.on("pageerror", (error) => faults.push(String(error.stack ?? error)));
  await page.goto(served.address);
  await page.getByRole("heading", { name: "State" }).waitFor({ timeout: 60_000 });
}, 400_000);

afterAll(async () => {
  await chrome?.close();
  server?.close();
});

/** Waits until the pane has sent no batch for a second: what was typed before has been followed. */
const quiet = async () => {
  const count = () => page.evaluate(() => window.bench.host.batches.length);
  for (let last = -1, now = await count(); now !== last; now = await count()) {
    last = now;
    await page.waitForTimeout(1000);
  }
};

/** Addresses of a sheet's first row by header. */
const cellsUnder = async (sheet: string) => {
  const headers = await page.evaluate(
    (name) =>
      Array.from({ length: 26 }, (_, at) =>
        window.bench.grid.read(name, `${String.fromCharCode(65 + at)}4`),
      ),
    sheet,
  );
  return (header: string) => `${String.fromCharCode(65 + headers.indexOf(header))}5`;
};
const shot = (name: string) => page.screenshot({ path: join(SHOTS, `${name}.png`) });
const read = (sheet: string, address: string) =>
  page.evaluate(([sheet, address]) => window.bench.grid.read(sheet, address), [
    sheet,
    address,
  ] as const);
const type = async (sheet: string, address: string, value: string | number) => {
  await page.evaluate(([sheet, address, value]) => window.bench.grid.type(sheet, address, value), [
    sheet,
    address,
    value,
  ] as const);
  await page.evaluate(() => window.bench.settled());
};
const idle = async () => {
  await page.getByRole("status", { name: "Working…" }).waitFor({ state: "hidden" });
  await page.evaluate(() => window.bench.settled());
};

test("the bench says what it is", async () => {
  await expect
    .poll(() => page.locator("#bar").textContent())
    .toContain("development and trial tool");
});

test("a lineup is built from an empty workbook", async () => {
  await page.getByRole("button", { name: "Empty workbook" }).click();
  await page.getByRole("button", { name: "Read the workbook again" }).click();
  await page.getByText("This workbook has no lineup yet.").waitFor();
  await shot("1-empty");
  await page
    .locator("#lineup-file")
    .setInputFiles("sample-workbooks/harbour-substation.lineup.json");
  await page.getByRole("button", { name: "Preview" }).click();
  await page.getByText("add the sheet Insulation with 120 rows").waitFor();
  await page.getByRole("button", { name: "Build", exact: true }).click();
  await page.getByText(/^Built: \d+ new sheets, 0 rows added/).waitFor({ timeout: 60_000 });
  await idle();
  await page.getByRole("heading", { name: "State" }).waitFor();
  await shot("2-built");
  expect(await read("Insulation", "A17")).toBe("=H01");
  expect(await read("Insulation", "N5")).toBe(5000);
}, 120_000);

test("a reading that is typed changes its row's result in the grid, through the add-in's own functions", async () => {
  const at = await cellsUnder("Insulation");
  await expect.poll(() => read("Insulation", at("Result"))).toBe("Missing");
  await type("Insulation", at("Test V DC"), 5000);
  await type("Insulation", at("Temperature °C"), 35);
  await type("Insulation", at("R 1 min MΩ"), 1200);
  // ANSI/NETA table 100.14 (read): solid insulation at 35 °C has the factor 2.00.
  await expect.poll(() => read("Insulation", at("R corrected MΩ"))).toBe(2400);
  await expect.poll(() => read("Insulation", at("Result"))).toBe("Fail");
  await type("Insulation", at("R 1 min MΩ"), "> 10 GΩ");
  await expect.poll(() => read("Insulation", at("R corrected MΩ"))).toBe("> 20000");
  await expect.poll(() => read("Insulation", at("Result"))).toBe("Pass");
  await type("Insulation", at("R 1 min MΩ"), "> 2 GΩ");
  await expect.poll(() => read("Insulation", at("Result"))).toBe("Inconclusive");
}, 60_000);

test("the pane's counts follow an edit; it reads a small part of the workbook", async () => {
  const inconclusive = () =>
    page
      .getByRole("list", { name: "Rows by result" })
      .getByText(/inconclusive/)
      .textContent();
  const reading = (await cellsUnder("Insulation"))("R 1 min MΩ");
  await quiet();
  const before = await page.evaluate(() => window.bench.host.batches.length);
  expect(await inconclusive()).toBe("1 inconclusive");
  await type("Insulation", reading, "> 90 GΩ");
  await expect.poll(inconclusive).toBe("0 inconclusive");
  const batches = await page.evaluate((from) => window.bench.host.batches.slice(from), before);
  // Rows whose formulas may follow are read again with it: a small part of the workbook all the same.
  expect(batches.length).toBeLessThanOrEqual(6);
  for (const { down } of batches) expect(down).toBeLessThan(100_000);
  await type("Insulation", reading, "> 2 GΩ");
  await expect.poll(inconclusive).toBe("1 inconclusive");
}, 60_000);

test("a row's evidence is worked out line by line, and follows the selection in the sheet", async () => {
  await page.getByRole("tab", { name: "Readings" }).click();
  await page.evaluate(() => window.bench.grid.select("Insulation", 4, 8));
  const evidence = page.getByRole("region", { name: "Bus A · Busbar · L1-E · before" });
  await evidence.getByText("Result: Inconclusive").waitFor();
  await evidence.getByText("> 4,000 MΩ, at least 5,000 MΩ").waitFor();
  await page.getByRole("region", { name: "Before the test" }).waitFor();
  await page.getByRole("button", { name: "Show as a picture" }).click();
  await page.locator("figure svg").first().waitFor();
  await shot("3-evidence");
}, 60_000);

test("the check finds it, a finding leads to its cell", async () => {
  await page.getByRole("tab", { name: "Check" }).click();
  await page.getByRole("heading", { name: "Findings" }).waitFor();
  await idle();
  await shot("3-checked");
  await quiet();
  const before = await page.evaluate(() => window.bench.host.batches.length);
  await page.getByLabel("Record").selectOption({ label: "Withstand" });
  await page
    .getByRole("button", { name: /Applied kV not recorded/ })
    .first()
    .click();
  await idle();
  await expect.poll(() => page.evaluate(() => window.bench.grid.active())).toMatch(/^Withstand!/);
  expect(
    (await page.evaluate(() => window.bench.host.batches.length)) - before,
  ).toBeLessThanOrEqual(6);
  await shot("4-gone-to");
  await page.getByRole("button", { name: "Next", exact: true }).click();
  await page.getByText(/^2 of \d+$/).waitFor();
  await page.getByRole("button", { name: "Check again" }).click();
  await page.getByText("This finding still stands.").waitFor();
  await page.getByLabel("Record").selectOption({ label: "All" });
}, 60_000);

test("marks come and go without a trace", async () => {
  const formats = () =>
    page.evaluate(() =>
      window.bench.host.book.sheets.map(({ formats }) => JSON.stringify(formats)),
    );
  const before = await formats();
  await page.getByRole("button", { name: "Mark the findings" }).click();
  await page.getByText(/^Marked: \d+ cells?\.$/).waitFor();
  await idle();
  expect(await formats()).not.toEqual(before);
  await shot("5-marked");
  await page.getByRole("button", { name: "Remove the marks" }).click();
  await page.getByText("The marks are removed.").waitFor();
  await idle();
  expect(await formats()).toEqual(before);
}, 60_000);

test("saved, and opened by the command line's way in, it comes to the same findings", async () => {
  const inPane = await page.getByText(/^\d+ stop, \d+ query, \d+ note$/).textContent();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save .xlsx" }).click(),
  ]);
  const file = join(mkdtempSync(join(tmpdir(), "gearproof-bench-")), "bench.xlsx");
  await download.saveAs(file);
  const snapshot = await readBook(readFileSync(file));
  expect(snapshot.lineup).toEqual(sampleLineup());
  const checked = check(snapshot, 46_400);
  if (!checked.ok) throw new Error(checked.reason);
  expect(checked.report.findings.filter(({ rule }) => rule === "result-disagrees")).toEqual([]);
  const count = (weight: string) =>
    checked.report.findings.filter((finding) => finding.weight === weight).length;
  expect(`${count("stop")} stop, ${count("query")} query, ${count("note")} note`).toBe(inPane);
  writeFileSync(join(SHOTS, "bench.xlsx"), readFileSync(file));

  await page.locator("#file").setInputFiles(file);
  await page.getByText("bench.xlsx is open.").waitFor();
  await page.getByRole("button", { name: "Read the workbook again" }).click();
  await idle();
  expect(await page.getByText(/^\d+ stop, \d+ query, \d+ note$/).textContent()).toBe(inPane);
}, 60_000);

test("a lineup with errors says each with its path, and builds nothing", async () => {
  const before = await page.evaluate(() => window.bench.host.book.sheets.length);
  const file = join(mkdtempSync(join(tmpdir(), "gearproof-bench-")), "bad.lineup.json");
  const lineup = sampleLineup();
  writeFileSync(file, JSON.stringify({ ...lineup, panels: [lineup.panels[0], lineup.panels[0]] }));
  await page.getByRole("tab", { name: "Lineup" }).click();
  await page.locator("#lineup-file").setInputFiles(file);
  await page.getByText('panels[1].designation: two panels are named "=H01"').waitFor();
  expect(await page.evaluate(() => window.bench.host.book.sheets.length)).toBe(before);
});

test("nothing of the bench, the stand-in or the Office.js package is in what is shipped", () => {
  const shipped = readdirSync("dist").filter((name) => name.endsWith(".js"));
  expect(shipped).toContain("pane.js");
  for (const name of shipped) {
    const text = readFileSync(join("dist", name), "utf8");
    expect(text).not.toMatch(/univerjs|univerAPI|stand-in\.invalid|_createRequestExecutorOrNull/i);
  }
  expect(readFileSync("dist/pane.html", "utf8")).toContain(
    "https://appsforoffice.microsoft.com/lib/1/hosted/office.js",
  );
  expect(readFileSync("out/bench/pane.js")).toEqual(readFileSync("dist/pane.js"));
});

describeLineup(() => chrome, address);
pasteReadings(() => chrome, address);
ownLayout(
  () => chrome,
  address,
  () => mkdtempSync(join(tmpdir(), "gearproof-")),
);
acceptFinding(() => chrome, address);
report(() => chrome);
modes(() => chrome, address);

test("the functions are at most 25 KB gzipped, the pane's first load at most 180 KB", async () => {
  const size = (name: string) => gzipSync(readFileSync(join("dist", name))).length;
  expect(size("functions.js")).toBeLessThanOrEqual(25_000);
  const fresh = await (await chrome.newContext()).newPage();
  await fresh.goto(address());
  await fresh.getByRole("heading", { name: "State" }).waitFor({ timeout: 60_000 });
  const loaded = await fresh.evaluate(() => {
    const shown = performance.getEntriesByName("gearproof pane shown")[0]?.startTime ?? 0;
    return performance.getEntriesByType("resource").map((entry) => ({
      name: new URL(entry.name).pathname.slice(1),
      first: (entry as PerformanceResourceTiming).responseEnd <= shown,
    }));
  });
  await fresh.context().close();
  const pane = loaded.filter(({ name }) => /^pane.*\.js$/.test(name));
  const total = (scripts: typeof pane) => scripts.reduce((sum, { name }) => sum + size(name), 0);
  const first = pane.filter((script) => script.first);
  expect(first.map(({ name }) => name)).toContain("pane.js");
  expect(first.length).toBeGreaterThan(1);
  expect(total(first)).toBeLessThanOrEqual(180_000);
  // And with the whole check, which comes after it.
  expect(total(pane)).toBeLessThanOrEqual(330_000);
  // The plots' library is there, and not among what is loaded at first.
  const plots = readdirSync("dist").filter(
    (name) => name.endsWith(".js") && readFileSync(join("dist", name), "utf8").includes("echarts"),
  );
  expect(plots.length).toBeGreaterThan(0);
  expect(pane.filter(({ name }) => plots.includes(name))).toEqual([]);
}, 60_000);

test("no script failed on the page", () => {
  expect(faults).toEqual([]);
});
