import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeXlsx } from "hucre/xlsx";
import { expect, test } from "vitest";
import { SAMPLE } from "../support/lineups";
import { batchCount, batchesFrom, inBrowser, type } from "./bench";

/** A workbook that Gearproof did not make: contact resistance with the poles side by side, in mΩ (invented). */
const ROWS = [
  ["Invented works: contact resistance of breakers"],
  [],
  ["Schakelveld", "Onderdeel", "Test current (A)", "L1 (mΩ)", "L2 (mΩ)", "L3 (mΩ)", "Copper (°C)"],
  ["=H02", "Breaker Q0", 100, 0.041, 0.042, null, 20],
  ["=H03", "Breaker Q0", 100, 0.04, 0.943, 0.044, 20],
];

/** Records that stand in a sheet of somebody's own. */
const { open } = inBrowser();

test("a block of somebody's own sheet is read as records, filled and checked, its layout as it was", async () => {
  const file = join(mkdtempSync(join(tmpdir(), "gearproof-")), "own.xlsx");
  writeFileSync(file, await writeXlsx({ sheets: [{ name: "Resistances", rows: ROWS }] }));
  const page = await open();
  await page.locator("#file").setInputFiles(file);
  await page.getByText(/ is open\. Read/).waitFor({ timeout: 60_000 });
  await page.getByRole("button", { name: "Read the workbook again" }).click();
  await page.getByText("This workbook has no lineup yet.").waitFor();
  await page.locator("#lineup-file").setInputFiles(SAMPLE);
  await page.getByRole("button", { name: "Keep the lineup without record sheets" }).click();
  await page.getByText(/^The lineup is stored in the workbook/).waitFor();

  await page.getByRole("tab", { name: "Readings" }).click();
  await page.getByRole("button", { name: "Records in sheets of your own" }).click();
  await page.getByRole("button", { name: "Look for records in the other sheets" }).click();
  await page.getByText("No other block looks like records of this lineup.").waitFor();
  await page.locator("#words-file").setInputFiles({
    name: "dutch.json",
    mimeType: "application/json",
    buffer: Buffer.from('{"object": ["Schakelveld"], "part": ["Onderdeel"]}'),
  });
  await page.getByText("dutch.json: this workbook now knows these titles").waitFor();
  await page.getByRole("button", { name: "Look for records in the other sheets" }).click();
  await page.getByText("1 block looks like records. Review each before it is used.").waitFor();
  await page.getByRole("button", { name: /^Resistances, row 3: Contact resistance/ }).click();
  await page.getByText("6 records").waitFor();
  await page.getByText("What the columns hold").click();
  await page.getByLabel(/^Copper/).selectOption("temperature");
  await page.getByRole("button", { name: "Read these as records" }).click();
  await page.getByText(/^Now read as records: Resistances, row 3/).waitFor({ timeout: 30_000 });
  await page.getByRole("button", { name: "=H02 · Breaker Q0 · L3 Missing" }).waitFor();

  await page.getByRole("button", { name: "Paste readings" }).click();
  await page
    .getByLabel("Readings, with their column titles")
    .fill("Panel\tPart\tPole\tR (µΩ)\n=H02\tBreaker Q0\tL3\t45");
  await page.getByRole("button", { name: "Read the pasted text" }).click();
  await page.getByRole("button", { name: "Write 1 cell in 1 row" }).click();
  await page.getByText("Written: 1 cell.").waitFor({ timeout: 30_000 });
  const cells = () =>
    page.evaluate(() =>
      window.bench.host.book.sheets[0]?.cells.map((row) => row.map((box) => box?.value ?? null)),
    );
  await expect
    .poll(cells)
    .toMatchObject([
      ...ROWS.slice(0, 3),
      ["=H02", "Breaker Q0", 100, 0.041, 0.042, 0.045, 20],
      ROWS[4],
    ]);

  // What is typed into the sheet is followed at once, in one round trip.
  const before = await batchCount(page);
  await type(page, "Resistances", "E4", 9);
  await page.getByRole("button", { name: "=H02 · Breaker Q0 · L2 Fail" }).waitFor();
  await expect.poll(() => batchesFrom(page, before)).toHaveLength(1);
  await type(page, "Resistances", "E4", 0.042);
  await page.getByRole("button", { name: "=H02 · Breaker Q0 · L2 Pass" }).waitFor();

  await page.getByRole("tab", { name: "Check" }).click();
  await page.locator("#panel-check").getByLabel("Record").selectOption("contact");
  await page
    .getByRole("button", { name: /=H03 · Breaker Q0 · L2: .*stop · Resistances!E5/ })
    .waitFor();
  await page.getByRole("button", { name: "List the findings on a sheet" }).click();
  await page.getByText(/^The sheet Findings lists \d+ findings/).waitFor({ timeout: 30_000 });
  await page.context().close();
}, 120_000);
