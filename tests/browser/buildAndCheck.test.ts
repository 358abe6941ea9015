import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { readBook } from "../../src/xlsx/file";
import { check } from "../support/checkBook";
import { sampleLineup } from "../support/lineups";
import { batchCount, batchesFrom, idle, inBrowser, read, shot, type } from "./bench";
import { SHOTS } from "./shots";

/** One journey from an empty workbook to one that is checked and saved; each test goes on from the one before. */
const { open } = inBrowser();
let page: Page;

beforeAll(async () => {
  page = await open({ viewport: { width: 1400, height: 850 }, acceptDownloads: true });
}, 120_000);

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

test("the bench says what it is", async () => {
  await expect
    .poll(() => page.locator("#bar").textContent())
    .toContain("development and trial tool");
});

test("a lineup is built from an empty workbook", async () => {
  await page.getByRole("button", { name: "Empty workbook" }).click();
  await page.getByRole("button", { name: "Read the workbook again" }).click();
  await page.getByText("This workbook has no lineup yet.").waitFor();
  await shot(page, "1-empty");
  await page
    .locator("#lineup-file")
    .setInputFiles("sample-workbooks/harbour-substation.lineup.json");
  await page.getByRole("button", { name: "Preview" }).click();
  await page.getByText("add the sheet Insulation with 120 rows").waitFor();
  await page.getByRole("button", { name: "Build", exact: true }).click();
  await page.getByText(/^Built: \d+ new sheets, 0 rows added/).waitFor({ timeout: 60_000 });
  await idle(page);
  await page.getByRole("heading", { name: "State" }).waitFor();
  await shot(page, "2-built");
  await expect.poll(() => read(page, "Insulation", "A17")).toBe("=H01");
  await expect.poll(() => read(page, "Insulation", "N5")).toBe(5000);
}, 120_000);

test("a reading that is typed changes its row's result in the grid, through the add-in's own functions", async () => {
  const at = await cellsUnder("Insulation");
  await expect.poll(() => read(page, "Insulation", at("Result"))).toBe("Missing");
  await type(page, "Insulation", at("Test V DC"), 5000);
  await type(page, "Insulation", at("Temperature °C"), 35);
  await type(page, "Insulation", at("R 1 min MΩ"), 1200);
  // ANSI/NETA table 100.14 (read): solid insulation at 35 °C has the factor 2.00.
  await expect.poll(() => read(page, "Insulation", at("R corrected MΩ"))).toBe(2400);
  await expect.poll(() => read(page, "Insulation", at("Result"))).toBe("Fail");
  await type(page, "Insulation", at("R 1 min MΩ"), "> 10 GΩ");
  await expect.poll(() => read(page, "Insulation", at("R corrected MΩ"))).toBe("> 20000");
  await expect.poll(() => read(page, "Insulation", at("Result"))).toBe("Pass");
  await type(page, "Insulation", at("R 1 min MΩ"), "> 2 GΩ");
  await expect.poll(() => read(page, "Insulation", at("Result"))).toBe("Inconclusive");
}, 60_000);

test("the pane's counts follow an edit; it reads a small part of the workbook", async () => {
  const inconclusive = () =>
    page
      .getByRole("list", { name: "Rows by result" })
      .getByText(/inconclusive/)
      .textContent();
  const reading = (await cellsUnder("Insulation"))("R 1 min MΩ");
  await expect.poll(inconclusive).toBe("1 inconclusive");
  const before = await batchCount(page);
  await type(page, "Insulation", reading, "> 90 GΩ");
  await expect.poll(inconclusive).toBe("0 inconclusive");
  const batches = await batchesFrom(page, before);
  // One row, in one round trip.
  expect(batches.length).toBe(1);
  expect(batches[0]?.down).toBeLessThan(5_000);
  await type(page, "Insulation", reading, "> 2 GΩ");
  await expect.poll(inconclusive).toBe("1 inconclusive");
}, 60_000);

test("a block pasted into a sheet is followed in one round trip", async () => {
  const pending = async () => {
    const chips = page.getByRole("list", { name: "Rows by result" }).getByText(/missing|open/);
    const texts = await chips.allTextContents();
    return texts.reduce((sum, text) => sum + Number.parseInt(text.replace(/\D/g, ""), 10), 0);
  };
  const [before, from] = [await pending(), await batchCount(page)];
  const at = (await cellsUnder("Insulation"))("Test V DC").replace("5", "6");
  const row = [5000, 20, "", 900, 1900];
  await page.evaluate(([at, values]) => window.bench.grid.paste("Insulation", at, values), [
    at,
    Array.from({ length: 14 }, () => row),
  ] as const);
  await expect.poll(pending).toBe(before - 14);
  await expect.poll(() => batchesFrom(page, from)).toHaveLength(1);
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
  await shot(page, "3-evidence");
}, 60_000);

test("a picture is saved with its title, copied as an image, and a point of it leads to its row", async () => {
  const figure = page.locator("figure").first();
  const evidenceOfBefore = page.getByRole("region", { name: "Bus A · Busbar · L1-E · before" });
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    figure.getByRole("button", { name: "Save the picture" }).click(),
  ]);
  const title = (await figure.locator("figcaption strong").textContent()) ?? "";
  expect(download.suggestedFilename()).toBe(`${title.replace(/[^\p{L}\p{N}]+/gu, "-")}.svg`);
  const file = join(mkdtempSync(join(tmpdir(), "gearproof-bench-")), "picture.svg");
  await download.saveAs(file);
  expect(readFileSync(file, "utf8")).toContain(`>${title}<`);

  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await figure.getByRole("button", { name: "Copy the picture" }).click();
  await figure.getByText("The picture is copied.").waitFor();
  const copied = await page.evaluate(async () => {
    const [item] = await navigator.clipboard.read();
    const image = await item?.getType("image/png");
    return image && (await createImageBitmap(image)).width;
  });
  // Two points of the copy to each pixel of a drawing of 720.
  expect(copied).toBeGreaterThanOrEqual(1440);

  // The reading of the next row stands in the same picture once it is typed, and leads there.
  const next = async (header: string) => (await cellsUnder("Insulation"))(header).replace("5", "6");
  await type(page, "Insulation", await next("Temperature °C"), 20);
  await type(page, "Insulation", await next("R 1 min MΩ"), 7000);
  const points = figure.locator('svg path[transform^="matrix("]');
  await expect.poll(() => points.count()).toBe(2);
  await points.last().click();
  await evidenceOfBefore.waitFor({ state: "hidden" });
  await page.getByRole("region", { name: /^Bus A · Busbar · / }).waitFor();
  await shot(page, "3-pointed-at");
}, 60_000);

test("the check finds it, a finding leads to its cell", async () => {
  // One phase makes the test begun, and so asks for the others.
  await type(page, "Withstand", (await cellsUnder("Withstand"))("Applied kV"), 22.4);
  await idle(page);
  await page.getByRole("tab", { name: "Check" }).click();
  await page.getByRole("heading", { name: "Findings" }).waitFor();
  await idle(page);
  await shot(page, "3-checked");
  const before = await batchCount(page);
  await page.getByLabel("Record").selectOption({ label: "Withstand" });
  await page
    .getByRole("button", { name: /Applied kV not recorded/ })
    .first()
    .click();
  await idle(page);
  await expect.poll(() => page.evaluate(() => window.bench.grid.active())).toMatch(/^Withstand!/);
  await expect.poll(() => batchesFrom(page, before)).toHaveLength(1);
  await shot(page, "4-gone-to");
  await page.getByRole("button", { name: "Next", exact: true }).click();
  await page.getByText(/^[2-9] of \d+$/).waitFor();
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
  await idle(page);
  await expect.poll(formats).not.toEqual(before);
  await shot(page, "5-marked");
  await page.getByRole("button", { name: "Remove the marks" }).click();
  await page.getByText("The marks are removed.").waitFor();
  await idle(page);
  await expect.poll(formats).toEqual(before);
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
  await idle(page);
  await expect
    .poll(() => page.getByText(/^\d+ stop, \d+ query, \d+ note$/).textContent())
    .toBe(inPane);
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
