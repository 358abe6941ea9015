import { expect, test } from "vitest";
import { inBrowser, shot } from "./bench";

/** A lineup typed and pasted as a table, and equipment put into many of its panels at once. */
const { open } = inBrowser();

const SCHEDULE = [
  "Cubicle\tService\tDuty\tBus\tCB\tRating\tBay",
  "=K01\tIncomer 1\tmain\tBus A\t52-M1\t2000\tM1",
  "=K02\tPumps\tfeeder\tBus A\t52-F1\t1200\tF1",
  "=K03\tFans\tmotor\tBus A\t52-F2\t1200\tF2",
  "=K04\tTie\ttie\tBus A\t52-T1\t2000\tT1",
  "=K05\tSpare\tfeeder\tBus B\t52-F3\t1200\tF3",
].join("\n");

test("typed, pasted, equipped by type with one exception kept, as the single line shows", async () => {
  const page = await open();
  const button = (name: string | RegExp) => page.getByRole("button", { name, exact: true }).first();
  await button("Empty workbook").click();
  await button("Read the workbook again").click();
  await page.getByText("This workbook has no lineup yet.").waitFor();
  await button("Describe a lineup").click();
  await button("Panels").click();
  await button("Show as a table").click();
  // Typed: letter by letter, the cell keeps the cursor when its panel begins.
  await page.getByLabel("Panel 1", { exact: true }).focus();
  await page.keyboard.type("=K00");
  await expect.poll(() => page.getByLabel("Panel 1", { exact: true }).inputValue()).toBe("=K00");
  await page.getByLabel("Type 1", { exact: true }).selectOption("metering");
  await page.getByLabel("Medium 1", { exact: true }).selectOption("vacuum");
  await page.getByLabel("Rated A 1", { exact: true }).fill("lots");
  await page.getByText("Rated A: must be a number").waitFor();
  await page.getByLabel("Medium 1", { exact: true }).selectOption("");
  await page.getByText("Rated A: must be a number").waitFor({ state: "detached" });

  // Pasted into a cell: what the table does not say is asked.
  await page.getByLabel("Panel 2", { exact: true }).focus();
  await page.evaluate((text) => {
    const data = new DataTransfer();
    data.setData("text", text);
    document.activeElement?.dispatchEvent(
      new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }, SCHEDULE);
  await page.getByLabel('What does "Bay" hold, such as "M1"?').waitFor();
  await page.getByText("Line 2: a breaker without its medium", { exact: false }).waitFor();
  await page.getByLabel("Medium of the breakers whose line does not say it").selectOption("vacuum");
  await button("Add 5 panels").click();
  await expect.poll(() => page.getByLabel("Breaker 3", { exact: true }).inputValue()).toBe("52-F1");

  await page.getByText("Current transformers: =K01, =K02, =K03, =K04, =K05").waitFor();
  await button("Equipment of several panels").click();
  await page.getByLabel("Equipment", { exact: true }).selectOption("panels.cables");
  const make = async (name: string, choose: () => Promise<void>, panels: number) => {
    await button("New set").click();
    await button("(no designation)").click();
    await page.getByLabel("Designation", { exact: true }).fill(name);
    await page.getByLabel("Rated voltage U, kV", { exact: true }).fill("12");
    await choose();
    await button(new RegExp(`^Put into ${panels} panels?$`)).click();
  };
  await make("W-own", () => page.getByLabel(/^=K05/).check(), 1);
  // Of the feeders one has its own, and keeps it.
  await make(
    "{panel}-W1",
    async () => {
      await button("feeder (1 of 2)").click();
      await button("main (1)").click();
      await button("motor feeder (1)").click();
    },
    3,
  );
  await page.getByText("{panel}-W1 · 3 panels").waitFor();
  await page.getByText("W-own · 1 panel").waitFor();
  await button("{panel}-W1 · 3 panels").click();
  await page.getByText(/=K05.*has its own: W-own/).waitFor();
  await shot(page, "equipment-sets");
  await button("Panels").click();
  await page.getByText("Cables: =K01").waitFor({ state: "detached" });
  await expect
    .poll(() => page.locator("svg title", { hasText: "=K02" }).last().textContent())
    .toBe("=K02, not described yet: Current transformers, Protection");
  await shot(page, "panel-table");
  await page.context().close();
}, 120_000);
