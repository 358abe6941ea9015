import { expect, test } from "vitest";
import { idle, inBrowser, read, select, shot, type } from "./bench";

/** The worksheet functions in the pane: chosen, filled with cells by pointing, inserted, and all on a sheet. */
const { open } = inBrowser();

test("a function is filled with cells, seen with its source, and inserted where nothing stands", async () => {
  const page = await open({ viewport: { width: 1200, height: 1100 } });
  const button = (name: string | RegExp) => page.getByRole("button", { name, exact: true }).first();
  await button("Empty workbook").click();
  await button("Read the workbook again").click();
  await page.getByText("This workbook has no lineup yet.").waitFor();
  await type(page, "Sheet1", "B2", 1200);
  await type(page, "Sheet1", "B3", 30);
  /** A cell of the column B, counted from 1. */
  const choose = (row: number) => select(page, "Sheet1", row - 1, 1);
  await button("Worksheet functions").click();
  await page.getByLabel("Function", { exact: true }).selectOption("IRCORRECT");
  await page
    .getByText(
      "Still to give: Insulation resistance, MΩ; Temperature of the insulation, °C, -10 to 105.",
    )
    .waitFor();
  await choose(2);
  await button("Take the selected cells for: Insulation resistance, MΩ").click();
  // The cells are read by then, and another may be selected.
  await page
    .getByText("Still to give: Temperature of the insulation, °C, -10 to 105.", { exact: true })
    .waitFor();
  await choose(3);
  await button(/^Take the selected cells for: Temperature of the insulation/).click();
  const outcome = page.getByRole("region", { name: "Result" });
  await outcome.getByText("=GEAR.IRCORRECT('Sheet1'!B2, 'Sheet1'!B3)").waitFor();
  await outcome.getByText(/Source: .*ANSI\/NETA ATS-2025, table 100\.14/).waitFor();
  await shot(page, "function-wizard");
  // A cell that holds something is never written over.
  await button("Insert into the selected cell").click();
  await page.getByText("Sheet1!B3 is not empty.", { exact: false }).waitFor();
  expect(await read(page, "Sheet1", "B3")).toBe(30);
  await choose(5);
  await button("Insert into the selected cell").click();
  await page.getByText("Inserted into Sheet1!B5.").waitFor();
  await idle(page);
  // ANSI/NETA ATS-2025 table 100.14.1, solid insulation: 1.58 at 30 °C.
  await expect.poll(() => read(page, "Sheet1", "B5")).toBeCloseTo(1200 * 1.58, 6);

  await button("Put all examples on a sheet").click();
  await page
    .getByText(/^The sheet Function examples has \d+ examples/)
    .waitFor({ timeout: 60_000 });
  await idle(page);
  await shot(page, "function-examples");
  const results = await page.evaluate(() => {
    const sheet = window.bench.host.book.sheets.find(({ name }) => name === "Function examples");
    return sheet?.tables.length;
  });
  expect(results).toBe(1);
  await page.context().close();
}, 120_000);
