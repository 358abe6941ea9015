import { join } from "node:path";
import AxeBuilder from "@axe-core/playwright";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { expect, test } from "vitest";

const SHOTS = "out/screenshots";
const STEPS = ["Lineup", "Readings", "Check", "Hand over"] as const;

const MODES: readonly (BrowserContextOptions & { name: string; query: string; width: number })[] = [
  { name: "light", query: "", width: 320, colorScheme: "light" },
  { name: "wide", query: "", width: 450, colorScheme: "light" },
  { name: "dark", query: "", width: 320, colorScheme: "dark" },
  { name: "contrast", query: "", width: 320, forcedColors: "active" },
  { name: "mirrored", query: "?language=ar", width: 320, colorScheme: "light" },
];

/** Every step in every mode: nothing cut off, no accessibility violation, a screenshot to be looked at. */
export function modes(chrome: () => Browser, address: () => string): void {
  test.each(MODES)(
    "every step is right in mode $name at $width px",
    async ({ name, query, width, ...options }) => {
      const context = await chrome().newContext({
        viewport: { width: 1000, height: 1100 },
        ...options,
      });
      const page = await context.newPage();
      await page.goto(address() + query);
      await page.getByRole("heading", { name: "State" }).waitFor({ timeout: 60_000 });
      await page.getByRole("button", { name: `Pane ${width} px` }).click();
      for (const step of STEPS) {
        await page.getByRole("tab", { name: step }).click();
        // Its own heading, not what stands there until the step is loaded.
        await page.getByRole("tabpanel", { name: step }).getByRole("heading").first().waitFor();
        await look(page, `${name}-${step.toLowerCase().replace(" ", "-")}`);
      }
      await page.getByRole("tab", { name: "Readings" }).click();
      await page
        .getByRole("tabpanel", { name: "Readings" })
        .getByLabel("Record", { exact: true })
        .selectOption({ label: "Insulation resistance, main circuit" });
      await page.getByRole("button", { name: /Bus A · Busbar · L1-E · before/ }).click();
      await page.getByRole("button", { name: "Show as a picture" }).click();
      await page.locator("figure svg").first().waitFor();
      await look(page, `${name}-evidence`);
      await page.getByRole("tab", { name: "Lineup" }).click();
      await page.getByRole("button", { name: "Change the lineup" }).click();
      await page.getByRole("button", { name: "=H02 · Feeder, north quay" }).click();
      await look(page, `${name}-editor`);
      await context.close();
    },
    180_000,
  );

  test("numbers are in the user's language", async () => {
    const context = await chrome().newContext({ viewport: { width: 1000, height: 900 } });
    const page = await context.newPage();
    await page.goto(`${address()}?language=de`);
    await page.getByRole("heading", { name: "State" }).waitFor({ timeout: 60_000 });
    await page.getByRole("button", { name: "Change the lineup" }).click();
    await page.getByRole("button", { name: "Basis and ratings" }).click();
    await page.getByLabel("Operating voltage, kV").fill("10,5");
    await page.getByLabel("Operating voltage, kV").blur();
    expect(await page.getByLabel("Operating voltage, kV").inputValue()).toBe("10,5");
    await page.getByRole("button", { name: "Preview" }).click();
    await page.getByText("Build will").waitFor();
    await context.close();
  }, 90_000);

  test("everything can be reached and done by keyboard", async () => {
    const context = await chrome().newContext({ viewport: { width: 1000, height: 900 } });
    const page = await context.newPage();
    await page.goto(address());
    await page.getByRole("heading", { name: "State" }).waitFor({ timeout: 60_000 });
    await page.getByRole("tab", { name: "Lineup" }).focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    await page.getByRole("tabpanel", { name: "Check" }).waitFor();
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Enter");
    await page.getByRole("tabpanel", { name: "Lineup" }).waitFor();
    const panel = page.getByRole("button", { name: /^=H03 / }).first();
    await panel.focus();
    await page.keyboard.press("Space");
    await page.getByRole("heading", { name: "Records of =H03" }).waitFor();
    expect(await panel.getAttribute("aria-pressed")).toBe("true");
    await context.close();
  }, 90_000);
}

async function look(page: Page, name: string): Promise<void> {
  const pane = page.locator("#pane");
  await pane.evaluate((element) => element.scrollTo(0, 0));
  await pane.screenshot({ path: join(SHOTS, `${name}.png`) });
  const { violations } = await new AxeBuilder({ page }).include("#pane").analyze();
  expect(violations.map(({ id, nodes }) => `${name}: ${id}: ${nodes[0]?.html}`)).toEqual([]);
  expect(await pane.evaluate((one) => one.scrollWidth <= one.clientWidth)).toBe(true);
}
