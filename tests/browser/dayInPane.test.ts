import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { idle, inBrowser, shot } from "./bench";

/** From an empty workbook to the first row to fill in, a rename, and the findings of a day, in the pane. */
const { open } = inBrowser();

const LINEUP = "sample-workbooks/harbour-substation.lineup.json";

/** Clicks that a person makes, counted. */
function clicker(page: Page) {
  let clicks = 0;
  return {
    click: async (name: string | RegExp) => {
      clicks++;
      await page
        .getByRole("button", { name, exact: typeof name === "string" })
        .first()
        .click();
    },
    tab: async (name: string) => {
      clicks++;
      await page.getByRole("tab", { name }).click();
    },
    count: () => clicks,
  };
}

const sheets = (page: Page) =>
  page.evaluate(() => window.bench.host.book.sheets.map(({ name }) => name));

test("a build is told in sight, takes the blank sheet along, goes to the first reading and can be undone", async () => {
  const page = await open({ viewport: { width: 1400, height: 900 } });
  await page.getByRole("button", { name: "Empty workbook" }).click();
  const blank = await sheets(page);
  const { click, tab, count } = clicker(page);
  await click("Read the workbook again");
  await page.getByText("This workbook has no lineup yet.").waitFor();
  await page.locator("#lineup-file").setInputFiles(LINEUP);
  const build = async () => {
    await click("Preview");
    await page.getByText("add the sheet Insulation with 120 rows").waitFor();
    await click("Build");
    await page.getByText(/^Built: \d+ new sheets/).waitFor({ timeout: 90_000 });
    await idle(page);
  };
  await build();
  await shot(page, "day-1-built");
  await expect.poll(() => sheets(page)).not.toContain(blank[0]);
  // What was built stands in sight, and the workbook shows a record to begin with.
  const told = await page.getByText(/^Built: /).boundingBox();
  const pane = await page.locator("#pane").boundingBox();
  expect((told?.y ?? 0) - (pane?.y ?? 0)).toBeGreaterThan(0);
  expect((told?.y ?? 0) - (pane?.y ?? 0)).toBeLessThan(400);
  const [sheet = ""] = (await page.evaluate(() => window.bench.grid.active())).split("!");
  expect(["Cover", "Panels", "Equipment", ""]).not.toContain(sheet);

  await page.getByRole("button", { name: "Undo the build" }).click();
  await page.getByText(/^The build is undone/).waitFor({ timeout: 90_000 });
  await idle(page);
  await expect.poll(() => sheets(page)).toEqual(blank);
  await page.locator("#lineup-file").setInputFiles(LINEUP);
  await build();

  await tab("Readings");
  await page.getByText(/^Built: /).waitFor({ state: "hidden" });
  // The row that was gone to is looked at, with the way back to all of them.
  await click("Back to the rows");
  expect(count()).toBeLessThanOrEqual(12);
  await page.context().close();
}, 300_000);

test("a panel is called otherwise in the pane: its readings go with it", async () => {
  const page = await open({ viewport: { width: 1400, height: 900 } });
  const names = () =>
    page.evaluate(() => {
      const cells = window.bench.host.book.sheets.find(({ name }) => name === "Insulation")?.cells;
      return (cells ?? []).map((row) => [
        row?.[0]?.value,
        row?.slice(4, 12).map((box) => box?.value),
      ]);
    });
  const before = await names();
  await page.getByRole("button", { name: "Change the lineup" }).click();
  await page.getByRole("button", { name: "=H02 · Feeder, north quay" }).click();
  await page.getByLabel("Designation", { exact: true }).first().fill("=H92");
  await page.getByRole("button", { name: "Preview" }).click();
  await page.getByText(/^rename \d+ rows in Insulation, with their readings$/).waitFor();
  await shot(page, "day-4-renamed");
  await page.getByRole("button", { name: "Build", exact: true }).click();
  await page.getByText(/^Built: /).waitFor({ timeout: 90_000 });
  await idle(page);
  const after = await names();
  expect(after).toEqual(before.map(([name, cells]) => [name === "=H02" ? "=H92" : name, cells]));
  expect(after).not.toEqual(before);
  await page.getByRole("button", { name: "Undo the build" }).click();
  await page.getByText(/^The build is undone/).waitFor({ timeout: 90_000 });
  await idle(page);
  await expect.poll(names).toEqual(before);
  await page
    .getByRole("button", { name: /^=H02 / })
    .first()
    .waitFor();
  await page.context().close();
}, 240_000);

test("findings of one cause are folded, accepted together and taken back; filters are remembered", async () => {
  const page = await open({ viewport: { width: 1400, height: 900 } });
  await page.getByRole("tab", { name: "Check" }).click();
  await page.getByRole("heading", { name: "Findings" }).waitFor();
  await page.getByLabel("Result", { exact: true }).selectOption({ label: "missing" });
  await page.getByLabel("Group by").selectOption({ label: "Rule" });
  await page
    .getByRole("button", { name: /^and \d+ more of the same cause$/ })
    .first()
    .waitFor();
  await page.getByRole("list").last().getByRole("button").first().click();
  await idle(page);
  await shot(page, "day-5-folded");
  await page.getByRole("button", { name: "Accept with a reason" }).click();
  const together = page.getByLabel(/^All \d+ open findings of this cause/);
  if ((await together.count()) > 0) await together.check();
  await page.getByLabel("Reason, and the document that says so").fill("INV-NCR-4 (invented)");
  await page.getByLabel("Name", { exact: true }).fill("A. N. Other");
  await page.getByRole("button", { name: /^Accept (this finding|these \d+ findings)$/ }).click();
  await page.getByText(/^Accepted[.:]/).waitFor({ timeout: 60_000 });
  await idle(page);
  await page
    .getByRole("list")
    .last()
    .getByRole("button", { name: /accepted · / })
    .first()
    .click();
  await idle(page);
  await page.getByRole("button", { name: "Withdraw the acceptance" }).click();
  await page.getByText(/^The acceptance is withdrawn/).waitFor({ timeout: 60_000 });
  await page.reload();
  await page.getByRole("heading", { name: "State" }).waitFor({ timeout: 60_000 });
  await page.getByRole("tab", { name: "Check" }).click();
  await page.getByRole("heading", { name: "Findings" }).waitFor();
  await expect.poll(() => page.getByLabel("Result", { exact: true }).inputValue()).toBe("Missing");
  await page.context().close();
}, 240_000);
