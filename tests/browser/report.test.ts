import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import AxeBuilder from "@axe-core/playwright";
import { expect, test } from "vitest";
import { inBrowser } from "./bench";

const PAGE = "out/harbour-substation.html";

/** What an A4 page leaves between margins of 12 mm, in CSS pixels. */
const A4_INSIDE = 703;

/** The page that a check writes: the demo's. */
const { blank } = inBrowser();

test("the report is one file, has drawing, matrix, pictures and findings, and axe finds nothing", async () => {
  const html = readFileSync(PAGE, "utf8");
  // Nothing is fetched: no script, no link to a style sheet, no picture from elsewhere.
  expect(html).not.toMatch(/<script|<link|<img|@import|url\(/i);
  const page = await blank({ viewport: { width: 900, height: 1100 } });
  const asked: string[] = [];
  page.on("request", (request) => asked.push(request.url()));
  await page.goto(pathToFileURL(resolve(PAGE)).href);
  expect(asked).toHaveLength(1);
  await page.getByRole("heading", { name: "Results by panel and record" }).waitFor();
  await expect
    .poll(() => page.getByRole("img", { name: /logarithmic axis/ }).count())
    .toBeGreaterThan(0);
  await page.getByRole("link", { name: /^=H07/ }).click();
  await expect
    .poll(() => page.evaluate(() => document.querySelector(":target")?.tagName))
    .toBe("TR");
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html.slice(0, 200)])).toEqual([]);
  await page.screenshot({ path: "out/screenshots/report.png" });
  await page.context().close();
}, 120_000);

test("the printed report is whole on a portrait page, and its words are dark on white", async () => {
  const page = await blank({ viewport: { width: A4_INSIDE, height: 1000 } });
  await page.goto(pathToFileURL(resolve(PAGE)).href);
  await page.emulateMedia({ media: "print" });
  const cut = await page
    .locator("table, svg, svg text")
    .evaluateAll(
      (all, width) =>
        all
          .filter((one) => one.getBoundingClientRect().right > width + 1)
          .map((one) => one.textContent?.slice(0, 60)),
      A4_INSIDE,
    );
  expect(cut).toEqual([]);
  const looks = await page
    .locator(".counts li, thead th")
    .evaluateAll((all) =>
      all.map((one) => [getComputedStyle(one).color, getComputedStyle(one).backgroundColor].join()),
    );
  expect(new Set(looks)).toEqual(new Set(["rgb(27, 42, 51),rgb(255, 255, 255)"]));
  await page.pdf({ path: "out/screenshots/report.pdf", format: "A4" });
  await page.context().close();
}, 120_000);
