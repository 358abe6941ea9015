import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { idle, inBrowser, shot } from "./bench";

/**
 * The three ways in, each from opening to the first judged reading: what is clicked or chosen is counted,
 * what is typed or pasted is not. How long it took is printed.
 */
const { open } = inBrowser();

/** At most so many clicks besides typing. */
const MOST = 12;

const SCHEDULE = [
  "Panel\tCircuit\tType\tSection\tMedium\tRated A\tBreaker",
  "=K01\tIncomer 1\tincomer\tBus A\tvacuum\t1250\tQ01",
  "=K02\tPumps\tfeeder\tBus A\tvacuum\t630\tQ02",
  "=K03\tFans\tmotor feeder\tBus A\tvacuum\t630\tQ03",
].join("\n");

/** A person who clicks: each click and choice counted. */
function person(page: Page) {
  const start = performance.now();
  let clicks = 0;
  const counted = (act: Promise<unknown>) => {
    clicks++;
    return act;
  };
  return {
    click: (name: string) =>
      counted(page.getByRole("button", { name, exact: true }).first().click()),
    tab: (name: string) => counted(page.getByRole("tab", { name }).click()),
    choose: (label: string, value: string) =>
      counted(page.getByLabel(label, { exact: true }).first().selectOption(value)),
    file: (id: string, path: string) => counted(page.locator(id).setInputFiles(path)),
    type: (label: string, value: string) => page.getByLabel(label, { exact: true }).fill(value),
    done: (way: string) => {
      const seconds = ((performance.now() - start) / 1000).toFixed(1);
      process.stdout.write(`${way}: ${clicks} clicks, ${seconds} s in the bench\n`);
      expect(clicks).toBeLessThanOrEqual(MOST);
    },
  };
}

const empty = async () => {
  const page = await open();
  await page.getByRole("button", { name: "Empty workbook" }).click();
  await page.getByRole("button", { name: "Read the workbook again" }).click();
  await page.getByText("This workbook has no lineup yet.").waitFor();
  return page;
};

/** Builds, and types the first row that is asked for; its verdict is told. */
async function firstReading(page: Page, { click, tab }: ReturnType<typeof person>) {
  await click("Preview");
  await click("Build");
  await page.getByText(/^Built: \d+ new sheets/).waitFor({ timeout: 120_000 });
  await idle(page);
  await tab("Readings");
  const form = page.getByRole("form", { name: "Fill in this row" });
  await form.waitFor();
  for (const field of await form.locator("[data-column]").all()) {
    const select = field.locator("select");
    const input = field.locator("input");
    if ((await select.count()) > 0) await select.selectOption({ index: 1 });
    else if ((await input.getAttribute("type")) === "date")
      await input.fill(new Date().toISOString().slice(0, 10));
    else await input.fill("A. N. Other");
  }
  await form.locator("input").last().press("Enter");
  await page
    .getByRole("region", { name: "Last entered" })
    .getByText(/Pass|Fail|Inconclusive/)
    .first()
    .waitFor({ timeout: 60_000 });
}

test("from a lineup file", async () => {
  const page = await empty();
  const one = person(page);
  await one.file("#lineup-file", "sample-workbooks/harbour-substation.lineup.json");
  await firstReading(page, one);
  await shot(page, "ways-file");
  one.done("from a lineup file");
  await page.context().close();
}, 240_000);

test("from a panel schedule, described in the pane", async () => {
  const page = await empty();
  const one = person(page);
  await one.click("Describe a lineup");
  await one.type("Project", "Quay board (invented)");
  await one.type("Site", "Nowhere (invented)");
  await one.click("Basis and ratings");
  await one.type("Rated voltage, kV", "12");
  await one.type("Busbar current, A", "1250");
  await one.click("Panels");
  await one.click("Paste a list");
  await one.type("Panels, one per line", SCHEDULE);
  await one.click("Add 3 panels");
  await firstReading(page, one);
  await shot(page, "ways-schedule");
  one.done("from a panel schedule");
  await page.context().close();
}, 240_000);

test("from a workbook in a layout of its own", async () => {
  const page = await open();
  await page.locator("#file").setInputFiles("sample-workbooks/quay-test-sheets.xlsx");
  await page.getByText(/ is open\. Read/).waitFor();
  await page.getByRole("button", { name: "Read the workbook again" }).click();
  const one = person(page);
  await one.click("Check this workbook");
  await one.click("Check");
  await page.getByRole("heading", { name: "Findings" }).waitFor({ timeout: 60_000 });
  await page.getByLabel("Readings by result").getByText(/\d/).first().waitFor();
  await shot(page, "ways-own-layout");
  one.done("from a workbook in a layout of its own");
  await page.context().close();
}, 240_000);
