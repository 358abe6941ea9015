import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { serve } from "../../src/standin/bench/serve";
import { writeBook } from "../../src/xlsx/file";
import { browser } from "../browser/browser";
import { filledPlan, SOUND } from "../support/fill";
import { longLineup } from "../support/lineups";

/**
 * `npm run bench:pane [rows]`: how long the pane takes to show what a person did, in the bench, in headless
 * Chromium: the middle of seven times for a workbook of so many record rows (10,000), over the same for
 * the sample. From the event to the second frame after the change stands on the page.
 */
const rows = Number(process.argv[2] ?? 10_000);
mkdirSync(".cache", { recursive: true });
const file = `.cache/pane-${rows}.xlsx`;
const perPanel = filledPlan(longLineup(10), 1, SOUND).sheets.reduce(
  (sum, sheet) => sum + ("id" in sheet ? sheet.rows.length : 0),
  0,
);
if (!existsSync(file)) {
  const plan = filledPlan(longLineup(Math.ceil((10 * rows) / perPanel)), 1, SOUND);
  writeFileSync(file, (await writeBook(plan)).file);
}

const chrome = await browser();
const { server, address } = await serve("out/bench", 0);

/** What is measured: what a person does, and what then stands on the page. */
const DEEDS: Readonly<Record<string, (page: Page) => Promise<number>>> = {
  "a step is changed to Readings": (page) => timed(page, '[id="step-readings"]', "step-readings"),
  "a step is changed to Check": (page) => timed(page, '[id="step-check"]', "step-check"),
  "a step is changed to Lineup": (page) => timed(page, '[id="step-lineup"]', "step-lineup"),
  "a panel is chosen": (page) => timed(page, "svg g[role=button][tabindex='0']:nth-of-type(3)", ""),
  "a reading is edited": (page) =>
    page.evaluate(async () => {
      const { host } = window.bench;
      const sheet = host.book.sheets.find(({ name }) => name === "Insulation");
      const box = sheet?.cells[4]?.[8];
      if (!box) throw new Error("no reading");
      const counts = () => document.querySelector("main ul")?.textContent;
      const before = counts();
      const verdict = sheet?.cells[4]?.find(
        (one) => one?.value === "Pass" || one?.value === "Fail",
      );
      const sound = verdict?.value === "Pass";
      box.value = sound ? 1 : 250_000;
      if (verdict) verdict.value = sound ? "Fail" : "Pass";
      const start = performance.now();
      host.tell("changed", "Insulation", { top: 4, left: 8, bottom: 4, right: 8 });
      while (counts() === before) {
        if (performance.now() - start > 20_000) throw new Error("the counts did not follow");
        await new Promise((next) => requestAnimationFrame(next));
      }
      await new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next)));
      return performance.now() - start;
    }),
  // With the time that the bench's grid takes to compute what follows.
  "14 readings are pasted": (page) =>
    page.evaluate(async () => {
      const { grid } = window.bench;
      const counts = () => document.querySelector("main ul")?.textContent;
      const before = counts();
      const value = grid.read("Insulation", "I7") === 1 ? 250_000 : 1;
      const start = performance.now();
      grid.paste(
        "Insulation",
        "I6",
        Array.from({ length: 14 }, () => [value]),
      );
      while (counts() === before) {
        if (performance.now() - start > 20_000) throw new Error("the counts did not follow");
        await new Promise((next) => requestAnimationFrame(next));
      }
      await new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next)));
      return performance.now() - start;
    }),
};

const timed = (page: Page, selector: string, step: string): Promise<number> =>
  page.evaluate(
    async ([selector, step]) => {
      const target = document.querySelector(selector ?? "");
      if (!target) throw new Error(`no ${selector}`);
      const body = document.querySelector("main");
      const start = performance.now();
      const changed = new Promise<void>((done) => {
        const watch = new MutationObserver(() => {
          const panel = document.querySelector(`[role=tabpanel][aria-labelledby="${step}"]`);
          if (step && !panel?.checkVisibility()) return;
          watch.disconnect();
          done();
        });
        watch.observe(body as Node, { subtree: true, childList: true, attributes: true });
      });
      target.dispatchEvent(new MouseEvent("click", { bubbles: true }));
      await changed;
      await new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next)));
      return performance.now() - start;
    },
    [selector, step] as const,
  );

/** Waits until the page has been idle for a while: the bench's grid computes and paints in the same thread. */
async function still(): Promise<void> {
  for (let calm = 0; calm < 20; ) {
    const before = performance.now();
    await new Promise((next) => setTimeout(next, 10));
    calm = performance.now() - before < 25 ? calm + 1 : 0;
  }
}

/** The middle time of each deed with one workbook in the bench. */
async function measured(book: string | undefined): Promise<Map<string, number>> {
  const context = await chrome.newContext({ viewport: { width: 1200, height: 900 } });
  const page = await context.newPage();
  // tsx marks functions by a helper of its own, which the page lacks.
  await page.addInitScript("globalThis.__name = (one) => one");
  await page.goto(address);
  await page.getByRole("heading", { name: "State" }).waitFor({ timeout: 120_000 });
  if (book) {
    await page.locator("#file").setInputFiles(book);
    await page.getByText(/ is open\. Read/).waitFor({ timeout: 300_000 });
    await page.getByRole("button", { name: "Read the workbook again" }).click();
    await page
      .getByRole("status", { name: "Working…" })
      .waitFor({ state: "hidden", timeout: 120_000 });
  }
  const times = new Map<string, number[]>();
  for (let run = 0; run < 7; run++)
    for (const [name, deed] of Object.entries(DEEDS)) {
      await page.evaluate(still);
      times.set(name, [...(times.get(name) ?? []), await deed(page)]);
    }
  await context.close();
  return new Map([...times].map(([name, all]) => [name, all.sort((a, b) => a - b)[3] ?? 0]));
}

const sample = await measured(undefined);
const big = await measured(file);
console.log(`${rows} record rows over the sample, middle of seven, ms`);
for (const [name, time] of big)
  console.log(
    `${name.padEnd(32)} ${time.toFixed(0).padStart(6)} ${(sample.get(name) ?? 0).toFixed(0).padStart(6)}  ratio ${(time / (sample.get(name) ?? 1)).toFixed(1)}`,
  );
await chrome.close();
server.close();
