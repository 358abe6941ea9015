import { join } from "node:path";
import AxeBuilder from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { inBrowser } from "./bench";
import { SHOTS } from "./shots";

const { open } = inBrowser();
const NARROW = { width: 1000, height: 1100 };

/** How the pane is looked at: its width, and the colours that the user's system asks for. */
const MODES = {
  light: { width: 320, colorScheme: "light", forcedColors: "none" },
  wide: { width: 450, colorScheme: "light", forcedColors: "none" },
  dark: { width: 320, colorScheme: "dark", forcedColors: "none" },
  contrast: { width: 320, colorScheme: "light", forcedColors: "active" },
  mirrored: { width: 320, colorScheme: "light", forcedColors: "none" },
} as const;
type Mode = keyof typeof MODES;

const step = (name: string) => async (page: Page) => {
  await page.getByRole("tab", { name }).click();
  // Its own heading, not what stands there until the step is loaded.
  await page.getByRole("tabpanel", { name }).getByRole("heading").first().waitFor();
};

const press = (page: Page, name: string) =>
  page.getByRole("button", { name, exact: true }).first().click();

/** What is looked at, and how one comes to it from the one before. */
const VIEWS: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  lineup: step("Lineup"),
  readings: step("Readings"),
  check: step("Check"),
  "hand-over": step("Hand over"),
  evidence: async (page) => {
    await step("Readings")(page);
    await page
      .getByRole("tabpanel", { name: "Readings" })
      .getByLabel("Record", { exact: true })
      .selectOption({ label: "Insulation resistance, main circuit" });
    await page.getByRole("button", { name: /Bus A · Busbar · L1-E · before/ }).click();
    await page.getByRole("button", { name: "Show as a picture" }).click();
    await page.locator("figure svg").first().waitFor();
  },
  editor: async (page) => {
    await step("Lineup")(page);
    await page.getByRole("button", { name: "Change the lineup" }).click();
    await page.getByRole("button", { name: "=H02 · Feeder, north quay" }).click();
  },
  "panel-table": (page) => press(page, "Show as a table"),
  sets: async (page) => {
    await press(page, "Equipment of several panels");
    await press(page, "New set");
  },
  functions: async (page) => {
    await press(page, "Close without building");
    await press(page, "Worksheet functions");
    await press(page, "Fill in this example");
  },
};

/** Nothing cut off, no accessibility violation, a screenshot to be looked at. */
async function look(page: Page, mode: Mode, view: string): Promise<void> {
  const { width, ...media } = MODES[mode];
  await page.emulateMedia(media);
  await page.getByRole("button", { name: `Pane ${width} px` }).click();
  // In Excel the pane is a window of its own, which hears of its new width.
  await page.evaluate(() => window.dispatchEvent(new Event("resize")));
  const pane = page.locator("#pane");
  await pane.evaluate((element) => element.scrollTo(0, 0));
  await pane.screenshot({ path: join(SHOTS, `${mode}-${view}.png`) });
  await expect
    .poll(() => pane.evaluate((one) => one.scrollWidth <= one.clientWidth), { message: mode })
    .toBe(true);
  // Wider, the same elements stand in the same colours.
  if (mode !== "wide") expect(await violations(page, mode)).toEqual([]);
}

/** What axe finds in the pane, each with the first element that it is of. */
const violations = async (page: Page, mode: Mode): Promise<string[]> => {
  const found = await new AxeBuilder({ page })
    .include("#pane")
    .options({ resultTypes: ["violations"] })
    .setLegacyMode()
    .analyze();
  return found.violations.map(({ id, nodes }) => `${mode}: ${id}: ${nodes[0]?.html}`);
};

test.each<{ name: string; modes: readonly Mode[]; query: string }>([
  {
    name: "light, wide, dark and contrast",
    modes: ["light", "wide", "dark", "contrast"],
    query: "",
  },
  { name: "mirrored", modes: ["mirrored"], query: "?language=ar" },
])(
  "every step is right: $name",
  async ({ modes, query }) => {
    const page = await open({ viewport: NARROW, query });
    for (const [view, go] of Object.entries(VIEWS)) {
      await go(page);
      for (const mode of modes) await look(page, mode, view);
    }
    await page.context().close();
  },
  300_000,
);

test("numbers are in the user's language", async () => {
  const page = await open({ viewport: NARROW, query: "?language=de" });
  await page.getByRole("button", { name: "Change the lineup" }).click();
  await page.getByRole("button", { name: "Basis and ratings" }).click();
  await page
    .getByRole("button", { name: /^Further facts/ })
    .first()
    .click();
  await page.getByLabel("Operating voltage, kV").fill("10,5");
  await page.getByLabel("Operating voltage, kV").blur();
  await expect.poll(() => page.getByLabel("Operating voltage, kV").inputValue()).toBe("10,5");
  await page.getByRole("button", { name: "Preview" }).click();
  await page.getByText("Build will").waitFor();
  await page.context().close();
}, 90_000);

test("everything can be reached and done by keyboard", async () => {
  const page = await open({ viewport: NARROW });
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
  await expect.poll(() => panel.getAttribute("aria-pressed")).toBe("true");
  await page.context().close();
}, 90_000);
