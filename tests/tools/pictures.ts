/**
 * `npx tsx tests/tools/pictures.ts [page]`: the pictures of the README, from headless Chromium, and a page of the
 * report by Debian's `poppler-utils`; `page` makes that alone. It wants what `npm start` makes: the built bench, and the
 * demo's page and hand-over in `out/`.
 */
import { execFileSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { serve } from "../../src/standin/bench/serve";
import { browser } from "../browser/browser";
import { SAMPLE_FOLDER } from "./sampleBooks";

const FOLDER = "docs/pictures";
const FOREIGN = `${SAMPLE_FOLDER}/quay-test-sheets.xlsx`;
const REPORT = "out/harbour-substation.html";
const HANDED = "out/handover/report.pdf";

const WAIT = { timeout: 180_000 };
const button = (page: Page, name: string) =>
  page.getByRole("button", { name, exact: true }).click(WAIT);

/** The bench with somebody else's workbook open and surveyed. */
async function surveyed(chrome: Browser, address: string): Promise<Page> {
  const page = await chrome.newPage({ viewport: { width: 1180, height: 640 } });
  page.setDefaultTimeout(WAIT.timeout);
  await page.goto(address);
  await page.getByRole("heading", { name: "State" }).waitFor(WAIT);
  await page.locator("#file").setInputFiles(FOREIGN);
  await page.getByText(/ is open\. Read/).waitFor(WAIT);
  await button(page, "Read the workbook again");
  await page.getByRole("button", { name: "Check this workbook" }).click(WAIT);
  await button(page, "Check");
  await page.getByRole("heading", { name: "Findings" }).waitFor(WAIT);
  return page;
}

const still = (page: Page) => page.waitForTimeout(1500);

async function benchPictures(chrome: Browser, address: string): Promise<void> {
  const page = await surveyed(chrome, address);
  await page.getByRole("heading", { name: "Findings" }).scrollIntoViewIfNeeded();
  await page.getByRole("button", { name: "Insulation!C11" }).first().click(WAIT);
  await still(page);
  await page.screenshot({ path: `${FOLDER}/bench.png` });
  await page.getByRole("button", { name: "Mark the findings in the sheets" }).click(WAIT);
  await page.getByText(/^Marked: \d+ cells\.$/).waitFor(WAIT);
  await page.getByRole("button", { name: "Withstand!C9" }).first().click(WAIT);
  await still(page);
  await page.locator("#grid").screenshot({ path: `${FOLDER}/marked.png` });
}

async function reportPicture(chrome: Browser): Promise<void> {
  const page = await chrome.newPage({ viewport: { width: 1000, height: 640 } });
  await page.goto(pathToFileURL(resolve(REPORT)).href);
  await page.screenshot({ path: `${FOLDER}/report.png` });
}

/** The first page of the records of a panel whose retest the hand-over has. */
const PANEL = "=H07: records";

function panelPicture(): void {
  const pages = execFileSync("pdftotext", [HANDED, "-"], { encoding: "utf8" }).split("\f");
  const page = String(pages.findIndex((text) => text.includes(PANEL)) + 1);
  const wanted = ["-png", "-r", "80", "-f", page, "-l", page, "-singlefile"];
  execFileSync("pdftoppm", [...wanted, HANDED, `${FOLDER}/panel`]);
}

mkdirSync(FOLDER, { recursive: true });
panelPicture();
if (process.argv[2] === "page") process.exit();
const { server, address } = await serve("out/bench", 0);
const chrome = await browser();
await reportPicture(chrome);
await benchPictures(chrome, address);
await chrome.close();
server.close();
process.stdout.write(`${FOLDER} written\n`);
