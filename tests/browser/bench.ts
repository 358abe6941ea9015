import { join } from "node:path";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject } from "vitest";
import type { BenchGrid } from "../../src/standin/bench/grid";
import type { StandInHost } from "../../src/standin/host";
import { browser } from "./browser";
import { SHOTS } from "./shots";

declare global {
  interface Window {
    bench: { grid: BenchGrid; host: StandInHost; settled: () => Promise<void> };
  }
}

/**
 * A browser for the tests of a file: the built pane and functions bundles, the genuine Office.js client,
 * the stand-in. After each test it is seen to that no script has failed on a page.
 */
export function inBrowser() {
  let chrome: Browser;
  const faults: string[] = [];
  beforeAll(async () => {
    chrome = await browser();
  });
  afterEach(() => expect(faults.splice(0)).toEqual([]));
  afterAll(() => chrome?.close());

  /** A blank page of its own. */
  const blank = async (options: BrowserContextOptions = {}): Promise<Page> => {
    const context = await chrome.newContext({
      viewport: { width: 1400, height: 1000 },
      ...options,
    });
    const page = await context.newPage();
    page.on("pageerror", (error) => faults.push(String(error.stack ?? error)));
    return page;
  };
  /** The bench with its sample, read by the pane. */
  const open = async (options: BrowserContextOptions & { query?: string } = {}): Promise<Page> => {
    const { query = "", ...rest } = options;
    const page = await blank(rest);
    await page.goto(inject("bench") + query);
    await page.getByRole("heading", { name: "State" }).waitFor({ timeout: 60_000 });
    return page;
  };
  return { blank, open };
}

/** How many batches the pane has sent. */
export const batchCount = (page: Page): Promise<number> =>
  page.evaluate(() => window.bench.host.batches.length);

/** The batches that the pane has sent after so many. */
export const batchesFrom = (page: Page, from: number) =>
  page.evaluate((from) => window.bench.host.batches.slice(from), from);

/** What a cell of the grid shows. */
export const read = (page: Page, sheet: string, address: string) =>
  page.evaluate(([sheet, address]) => window.bench.grid.read(sheet, address), [
    sheet,
    address,
  ] as const);

/** Types into a cell of the grid, and waits until the grid has computed what follows. */
export const type = async (page: Page, sheet: string, address: string, value: string | number) => {
  await page.evaluate(([sheet, address, value]) => window.bench.grid.type(sheet, address, value), [
    sheet,
    address,
    value,
  ] as const);
  await page.evaluate(() => window.bench.settled());
};

/** Selects a cell of the grid, and waits until the pane would be told of it as well; row and column from 0. */
export const select = async (page: Page, sheet: string, row: number, column: number) => {
  await page.evaluate(([sheet, row, column]) => window.bench.grid.select(sheet, row, column), [
    sheet,
    row,
    column,
  ] as const);
  await expect
    .poll(() => selected(page), { timeout: 15_000 })
    .toMatchObject({ sheet, top: row, left: column });
};

/** The cells that are selected, as the pane is told of them. */
export const selected = (page: Page) =>
  page.evaluate(() => {
    const { active } = window.bench.host.book;
    return active && { sheet: active.sheet, ...active.area };
  });

/** Waits until the pane and the grid are done. */
export const idle = async (page: Page) => {
  await page.getByRole("status", { name: "Working…" }).waitFor({ state: "hidden" });
  await page.evaluate(() => window.bench.settled());
};

export const shot = (page: Page, name: string) =>
  page.screenshot({ path: join(SHOTS, `${name}.png`) });
