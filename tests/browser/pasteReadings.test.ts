import { expect, test } from "vitest";
import { batchCount, batchesFrom, inBrowser } from "./bench";

/** Readings brought into a workbook by paste. */
const { open } = inBrowser();

test("a pasted block, one column corrected, fills its rows, and is taken back in one step", async () => {
  const page = await open();
  const applied = () =>
    page.evaluate(() => {
      const sheet = window.bench.host.book.sheets.find(({ name }) => name === "Torque");
      const titles = sheet?.cells[3]?.map((box) => box?.value) ?? [];
      const row = sheet?.cells.find(
        (cells) => cells[0]?.value === "=H03" && cells[1]?.value === "Earth bar",
      );
      return row?.[titles.indexOf("Applied N·m")]?.value ?? null;
    });
  await expect.poll(applied).toBeNull();
  await page.getByRole("tab", { name: "Readings" }).click();
  await page.getByRole("button", { name: "Paste readings" }).click();
  await page
    .getByLabel("Readings, with their column titles")
    .fill(
      "Test\tPanel\tJoint\tWhat it took (N·m)\tMarked\tRe-checked\nTorque\t=H03\tEarth bar\t38\tYes\tYes\nTorque\t=H99\tEarth bar\t38\tYes\tYes",
    );
  await page.getByRole("button", { name: "Read the pasted text" }).click();
  await page.getByLabel(/^What it took/).selectOption("reading");
  await page.getByText(/=H99/).first().waitFor();
  await page.getByText("=H03 · Earth bar, Applied N·m: – → 38").waitFor({ state: "attached" });
  const from = await batchCount(page);
  await page.getByRole("button", { name: /^Write \d+ cells in 1 row$/ }).click();
  await page.getByText(/^Written: \d+ cells?\.$/).waitFor({ timeout: 30_000 });
  // What is remembered and the cells: one round trip each to look and one to write; the client's release; the
  // rows that were written, read again.
  expect((await batchesFrom(page, from)).length).toBeLessThanOrEqual(6);
  await expect.poll(applied).toBe(38);
  const takeBack = page.getByRole("button", { name: /^Undo the readings from Pasted block/ });
  await takeBack.click();
  await page.getByText(/^Restored: \d+ cells?\.$/).waitFor({ timeout: 30_000 });
  await expect.poll(applied).toBeNull();

  // Again, and what was corrected is kept under a name for blocks of this shape.
  const paste = async (value: number) => {
    await page.getByRole("button", { name: "Paste readings" }).click();
    await page
      .getByLabel("Readings, with their column titles")
      .fill(
        `Test\tPanel\tJoint\tWhat it took (N·m)\tMarked\tRe-checked\nTorque\t=H03\tEarth bar\t${value}\tYes\tYes`,
      );
    await page.getByRole("button", { name: "Read the pasted text" }).click();
  };
  const write = page.getByRole("button", { name: /^Write \d+ cells? in 1 row$/ });
  await paste(38);
  await page.getByLabel(/^What it took/).selectOption("reading");
  await page.getByLabel(/^Save these settings for files like this one/).fill("Torque wrench");
  await write.click();
  await page.getByText(/^Written: \d+ cells?\.$/).waitFor({ timeout: 30_000 });

  // Another reading for the same joint is held back until it is let in; the earlier goes to the history.
  await paste(39);
  await page.getByText('Read with the saved settings "Torque wrench".').waitFor();
  const nothing = page.getByRole("button", { name: "Write 0 cells in 0 rows" });
  await expect.poll(() => nothing.isDisabled()).toBe(true);
  await page.getByLabel("Replace the readings that are there").check();
  await write.click();
  await page.getByText(/^Written: \d+ cells?\.$/).waitFor({ timeout: 30_000 });
  await expect.poll(applied).toBe(39);
  const history = () =>
    page.evaluate(() =>
      window.bench.host.book.sheets
        .find(({ name }) => name === "Reading history")
        ?.cells.slice(4)
        .flatMap((row) => (row?.[3]?.value ? [row[3].value] : [])),
    );
  await expect.poll(history).toContain(38);
  await takeBack.click();
  await page.getByText(/^Restored: \d+ cells?\.$/).waitFor({ timeout: 30_000 });
  await expect.poll(applied).toBe(38);
  await expect.poll(history).not.toContain(38);
  await page.context().close();
}, 120_000);

test("a block that is pasted beside an open record is taken to be of that record, which is said and can be changed", async () => {
  const page = await open();
  await page.getByRole("tab", { name: "Readings" }).click();
  await page.getByLabel("Record", { exact: true }).selectOption("torque");
  await page.getByRole("button", { name: "Paste readings" }).click();
  await page
    .getByLabel("Readings, with their column titles")
    .fill("Panel\tJoint\tApplied (N·m)\tMarked\tRe-checked\n=H03\tEarth bar\t38\tYes\tYes");
  await page.getByRole("button", { name: "Read the pasted text" }).click();
  await page.getByText(/^Taken from the record that is open/).waitFor();
  const kind = page.getByLabel("Record of all lines");
  await expect.poll(() => kind.inputValue()).toBe("torque");
  await page.getByRole("button", { name: /^Write \d+ cells? in 1 row$/ }).waitFor();
  await kind.selectOption("insulation");
  await page.getByRole("button", { name: "Write 0 cells in 0 rows" }).waitFor();
  await page.getByLabel("Part of all lines").selectOption("Breaker Q0");
  await kind.selectOption("");
  await expect.poll(() => page.getByText(/^Taken from the record that is open/).count()).toBe(0);
  await page.context().close();
}, 120_000);
