import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { unzipSync } from "fflate";
import { expect, test } from "vitest";
import { verify } from "../../src/cli/verify";
import { inBrowser } from "./bench";

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
