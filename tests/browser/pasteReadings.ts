import type { Browser } from "playwright-core";
import { expect, test } from "vitest";

/** Readings brought into a workbook by paste. */
export function pasteReadings(chrome: () => Browser, address: () => string): void {
  test("a pasted block, one column corrected, fills its rows, and is taken back in one step", async () => {
    const context = await chrome().newContext({ viewport: { width: 1400, height: 1000 } });
    const page = await context.newPage();
    await page.goto(address());
    await page.getByRole("heading", { name: "State" }).waitFor({ timeout: 60_000 });
    const applied = () =>
      page.evaluate(() => {
        const sheet = window.bench.host.book.sheets.find(({ name }) => name === "Torque");
        const titles = sheet?.cells[3]?.map((box) => box?.value) ?? [];
        const row = sheet?.cells.find(
          (cells) => cells[0]?.value === "=H03" && cells[1]?.value === "Earth bar",
        );
        return row?.[titles.indexOf("Applied N·m")]?.value ?? null;
      });
    expect(await applied()).toBeNull();
    await page.getByRole("tab", { name: "Readings" }).click();
    await page.getByRole("button", { name: "Paste readings" }).click();
    await page
      .getByLabel("Readings with their row of titles")
      .fill(
        "Test\tPanel\tJoint\tWhat it took (N·m)\tMarked\tRe-checked\nTorque\t=H03\tEarth bar\t38\tYes\tYes\nTorque\t=H99\tEarth bar\t38\tYes\tYes",
      );
    await page.getByRole("button", { name: "Read what was pasted" }).click();
    await page.getByLabel(/^What it took/).selectOption("reading");
    await page.getByText(/=H99/).first().waitFor();
    await page.getByText("=H03 · Earth bar, Applied N·m: – → 38").waitFor({ state: "attached" });
    await page.getByRole("button", { name: /^Write \d+ cells on 1 row$/ }).click();
    await page.getByText(/^\d+ cells written\.$/).waitFor({ timeout: 30_000 });
    expect(await applied()).toBe(38);
    await page.getByRole("button", { name: "Take back what came from Pasted block" }).click();
    await page.getByText(/cells are as they were\.$/).waitFor({ timeout: 30_000 });
    expect(await applied()).toBeNull();
    await context.close();
  }, 120_000);
}
