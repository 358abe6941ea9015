import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { unzipSync } from "fflate";
import { expect, test } from "vitest";
import { verify } from "../../src/cli/verify";
import { inBrowser, shot, type } from "./bench";

/** The hand-over made in the pane, with an export that goes with it. */
const { open } = inBrowser();
const EXPORT = "harbour-2-contact-resistance.txt";

test("the pane saves a hand-over that verifies; the punch list is brought up to date beside it", async () => {
  const room = mkdtempSync(join(tmpdir(), "pane-handover-"));
  const page = await open();
  try {
    await page.getByRole("tab", { name: "Hand over" }).click();
    await page.getByRole("button", { name: "Bring the punch list up to date" }).click();
    await page.getByText(/^The sheet Punch list is up to date: \d+ items open/).waitFor({
      timeout: 60_000,
    });
    await page.locator("#besides").setInputFiles(`sample-workbooks/${EXPORT}`);
    await page.getByRole("button", { name: /1 file chosen/ }).waitFor();
    const download = page.waitForEvent("download", { timeout: 180_000 });
    await page.getByRole("button", { name: "Make the hand-over" }).click();
    const saved = await download;
    expect(saved.suggestedFilename()).toMatch(/^[\p{L}\p{N}-]+-\d{4}-\d{2}-\d{2}\.zip$/u);
    const zip = join(room, "handed.zip");
    await saved.saveAs(zip);
    await page.getByText(/^Made .*\.zip with \d+ files\. Fingerprint/).waitFor();
    for (const [name, bytes] of Object.entries(unzipSync(readFileSync(zip)))) {
      mkdirSync(dirname(join(room, name)), { recursive: true });
      writeFileSync(join(room, name), bytes);
    }
    // The open workbook against what was handed over: nothing is other, until a reading is changed.
    const { fingerprint } = JSON.parse(
      readFileSync(
        join(room, saved.suggestedFilename().replace(/\.zip$/, ""), "manifest.json"),
        "utf8",
      ),
    );
    await page.locator("#handed-before").setInputFiles(zip);
    await page.getByText("This workbook matches the hand-over.").waitFor({ timeout: 60_000 });
    const printed = page.getByLabel("Fingerprint printed on the report");
    await printed.fill(`Fingerprint ${fingerprint.match(/.{8}/g)?.join(" ")}`);
    await page.getByText("It matches the fingerprint on the report.").waitFor();
    await printed.fill(fingerprint.replace(/^./, "z"));
    await page.getByText(/^It does not match the fingerprint on the report/).waitFor();
    await type(page, "Contacts", "G6", 31.5);
    const told = page.getByRole("button", { name: /^Contacts!G6 \(.*now 31\.5$/ });
    await told.waitFor({ timeout: 60_000 });
    await told.click();
    await expect.poll(() => page.evaluate(() => window.bench.grid.active())).toBe("Contacts!G6");
    await shot(page, "compared-with-hand-over");
    await page.locator("#handed-before").setInputFiles(`sample-workbooks/${EXPORT}`);
    await page.getByText(/holds no records of a hand-over/).waitFor();
    const { changes, manifest } = await verify(
      join(room, saved.suggestedFilename().replace(/\.zip$/, "")),
    );
    expect(changes).toEqual([]);
    expect(manifest.files.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        "report.pdf",
        "records.xlsx",
        "punch-list.xlsx",
        `exports/${EXPORT}`,
      ]),
    );
  } finally {
    await page.context().close();
    rmSync(room, { recursive: true, force: true });
  }
}, 400_000);
