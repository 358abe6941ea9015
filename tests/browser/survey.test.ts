import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import AxeBuilder from "@axe-core/playwright";
import type { Locator, Page } from "playwright-core";
import { expect, test } from "vitest";
import { FAULTS, ownBook } from "../support/ownBook";
import { inBrowser, select, selected } from "./bench";
import { SHOTS } from "./shots";

const { open } = inBrowser();

/** The bench with a workbook in somebody's own layout, as the pane shows it at first. */
async function openOwn(): Promise<Page> {
  const file = join(mkdtempSync(join(tmpdir(), "gearproof-")), "own.xlsx");
  writeFileSync(file, await ownBook());
  const page = await open({ viewport: { width: 1000, height: 1100 } });
  await page.locator("#file").setInputFiles(file);
  await page.getByText(/ is open\. Read/).waitFor({ timeout: 60_000 });
  await page.getByRole("button", { name: "Read the workbook again" }).click();
  await page.getByText("This workbook has no lineup yet.").waitFor();
  return page;
}

/** Nothing cut off and no accessibility violation, narrow and wide, in light, dark and forced colours. */
async function look(page: Page, view: string): Promise<void> {
  for (const [mode, width, media] of [
    ["light", 320, { colorScheme: "light", forcedColors: "none" }],
    ["dark", 320, { colorScheme: "dark", forcedColors: "none" }],
    ["contrast", 320, { colorScheme: "light", forcedColors: "active" }],
    ["wide", 450, { colorScheme: "light", forcedColors: "none" }],
  ] as const) {
    await page.emulateMedia(media);
    await page.getByRole("button", { name: `Pane ${width} px` }).click();
    await page.evaluate(() => window.dispatchEvent(new Event("resize")));
    const pane = page.locator("#pane");
    await pane.evaluate((element) => element.scrollTo(0, 0));
    await pane.screenshot({ path: join(SHOTS, `${mode}-${view}.png`) });
    const { violations } = await new AxeBuilder({ page })
      .include("#pane")
      .options({ resultTypes: ["violations"] })
      .setLegacyMode()
      .analyze();
    expect(violations.map(({ id, nodes }) => `${mode}: ${id}: ${nodes[0]?.html}`)).toEqual([]);
    await expect
      .poll(() => pane.evaluate((one) => one.scrollWidth <= one.clientWidth), { message: mode })
      .toBe(true);
  }
}

/** How many conditional formats each sheet carries. */
const formats = (page: Page) =>
  page.evaluate(() => window.bench.host.book.sheets.map(({ formats }) => formats.length));

const cells = (page: Page) =>
  page.evaluate(() =>
    window.bench.host.book.sheets.map(({ name, cells }) => [
      name,
      cells.map((row) =>
        row
          .slice(0, row.findLastIndex((box) => box !== undefined) + 1)
          .map((box) => box && [box.value, box.formula]),
      ),
    ]),
  );

test("a workbook in a layout of its own is checked and marked with four clicks at most", async () => {
  const page = await openOwn();
  const before = await cells(page);
  let clicks = 0;
  const click = async (what: Locator) => {
    clicks += 1;
    await what.click();
  };
  const button = (name: string | RegExp) => page.getByRole("button", { name });

  await click(button("Check this workbook"));
  await page.getByRole("heading", { name: "This workbook as it stands" }).waitFor();
  await button("Recognised: 2 tables, 59 readings").waitFor();
  // What cells say of the two questions is filled in, with where they say it.
  await expect.poll(() => page.getByLabel("Rated voltage, kV").inputValue()).toBe("15");
  await expect.poll(() => page.getByLabel("Basis").inputValue()).toBe("NETA");
  await expect.poll(() => page.getByText("in IR summary!A1: please confirm").count()).toBe(2);
  await look(page, "survey-asked");

  await click(page.getByRole("button", { name: "Check", exact: true }));
  await page.getByRole("heading", { name: "Findings" }).waitFor();
  await click(button("Mark the findings in the sheets"));
  await page.getByText(/^Marked: \d+ cells\.$/).waitFor();
  expect(clicks).toBeLessThanOrEqual(4);
  await expect.poll(async () => (await formats(page)).every((count) => count > 0)).toBe(true);
  await expect.poll(() => cells(page)).toEqual(before);
  await look(page, "survey-found");

  for (const place of Object.values(FAULTS))
    await page.getByRole("button", { name: place }).first().waitFor();
  await page.getByRole("button", { name: FAULTS.typedOver }).first().click();
  await expect.poll(() => selected(page)).toMatchObject({ sheet: "Contacts", top: 6, left: 4 });

  await button("Remove the marks").click();
  await page.getByText("The marks are removed.").waitFor();
  await expect.poll(() => formats(page)).toEqual([0, 0]);
  await expect.poll(() => cells(page)).toEqual(before);
  await page.context().close();
}, 180_000);

test("result columns are added beside the user's own table and removed again", async () => {
  const page = await openOwn();
  const before = await cells(page);
  const button = (name: string) => page.getByRole("button", { name, exact: true });
  await button("Check this workbook").click();
  await button("Check").click();
  await button("Add result columns").click();
  await page.getByText(/^Result columns stand beside 1 table\./).waitFor();
  await page
    .getByText(/Contacts A1:E11: without columns, since no limit is stated in it/)
    .waitFor();
  await page.evaluate(() => window.bench.settled());
  const resultAt = (row: number) =>
    page.evaluate((at) => window.bench.host.book.sheets[0]?.cells[at]?.[6]?.value, row);
  await expect.poll(() => resultAt(5)).toBe("Pass");
  await expect.poll(() => resultAt(11)).toBe("Fail");
  await expect.poll(() => resultAt(13)).toBe("Missing");
  // The grid computes the functions anew after an edit.
  await page.evaluate(() => window.bench.grid.type("IR summary", "C12", 18));
  await page.evaluate(() => window.bench.settled());
  await expect.poll(() => resultAt(11)).toBe("Pass");
  await page.screenshot({ path: join(SHOTS, "survey-columns.png") });
  await page.evaluate(() => window.bench.grid.type("IR summary", "C12", 0.8));
  await button("Remove the result columns").click();
  await page.getByText("The result columns of 1 table are removed.").waitFor();
  await page.evaluate(() => window.bench.settled());
  await expect.poll(() => cells(page)).toEqual(before);
  await page.context().close();
}, 120_000);

test("a recognised table is pointed at, an answer put right, and all of it by keyboard", async () => {
  const page = await openOwn();
  await page.getByRole("button", { name: "Check this workbook" }).focus();
  await page.keyboard.press("Enter");
  const line = page.getByRole("button", {
    name: /^IR summary A4:E15: Insulation resistance.*; 10 panels; 29 readings in GΩ/,
  });
  await line.waitFor();
  await line.focus();
  await page.keyboard.press("Enter");
  await expect
    .poll(() => selected(page))
    .toMatchObject({ sheet: "IR summary", top: 3, left: 0, bottom: 14, right: 4 });

  const rated = page.getByLabel("Rated voltage, kV");
  const check = page.getByRole("button", { name: "Check", exact: true });
  await rated.fill("150");
  await page.getByText("Enter kilovolts from 0.4 to 52.").waitFor();
  await expect.poll(() => check.isDisabled()).toBe(true);
  await rated.fill("");
  await page.getByText(/a reading is judged only by what the workbook states itself/).waitFor();
  await rated.fill("17.5 kV");
  await rated.press("Tab");
  await page.keyboard.press("ArrowUp");
  await expect.poll(() => page.getByLabel("Basis").inputValue()).toBe("IEC");
  await check.focus();
  await page.keyboard.press("Space");
  await page.getByRole("heading", { name: "Findings" }).waitFor();

  // What is put right in the sheet is no longer told at the next check.
  const told = () => page.getByRole("button", { name: FAULTS.belowLimit }).count();
  await expect.poll(told).toBeGreaterThan(0);
  await page.evaluate(() => window.bench.grid.type("IR summary", "C12", 18));
  await page.evaluate(() => window.bench.settled());
  await page.getByRole("button", { name: "Check again" }).click();
  await expect.poll(told).toBe(0);

  await page.getByRole("button", { name: "Back to the overview" }).click();
  await page.getByText("This workbook has no lineup yet.").waitFor();
  await page.context().close();
}, 120_000);

test("each part of a recognised table is put right by pointing at a cell, or from a list", async () => {
  const page = await openOwn();
  const button = (name: string | RegExp) => page.getByRole("button", { name });
  await button("Check this workbook").click();
  const line = (readings: number) =>
    button(new RegExp(`^IR summary A4:E15: .*; ${readings} readings in GΩ`));
  await line(29).waitFor();
  await button("Put right IR summary A4:E15").click();
  const point = async (what: string, row: number, column: number) => {
    await page.getByLabel("The selected cell", { exact: true }).selectOption(what);
    await select(page, "IR summary", row, column);
    await button("Take the selected cell").click();
  };
  // This column holds no readings of this test.
  await point("column nothing", 4, 3);
  await line(20).waitFor();
  // This row is the head: the lines under it alone are records.
  await point("row head", 8, 1);
  await button(/^IR summary A9:E15: /).waitFor();
  await button("Take back: B9 is in the row of titles").click();
  await line(20).waitFor();
  await page.getByRole("button", { name: "From lists" }).click();
  await page.getByLabel("D5 Phase to earth, GΩ L3-E").selectOption("reading");
  await line(29).waitFor();
  await look(page, "survey-put-right");
  await page.context().close();
}, 180_000);

test("what surveys a workbook is loaded only when it is asked for", async () => {
  const page = await openOwn();
  const scripts = () =>
    page.evaluate(() =>
      performance
        .getEntriesByType("resource")
        .flatMap(({ name }) => (/pane.*\.js$/.test(name) ? name : [])),
    );
  const before = await scripts();
  await page.getByRole("button", { name: "Check this workbook" }).click();
  await page.getByRole("heading", { name: "This workbook as it stands" }).waitFor();
  expect((await scripts()).length).toBeGreaterThan(before.length);
  await page.context().close();
}, 90_000);
