import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { expect, test } from "vitest";
import { inBrowser } from "./bench";

const { open } = inBrowser();

test("nothing of the bench, the stand-in or the Office.js package is in what is shipped", () => {
  const shipped = readdirSync("dist").filter((name) => name.endsWith(".js"));
  expect(shipped).toContain("pane.js");
  for (const name of shipped) {
    const text = readFileSync(join("dist", name), "utf8");
    expect(text).not.toMatch(/univerjs|univerAPI|stand-in\.invalid|_createRequestExecutorOrNull/i);
  }
  expect(readFileSync("dist/pane.html", "utf8")).toContain(
    "https://appsforoffice.microsoft.com/lib/1/hosted/office.js",
  );
  expect(readFileSync("out/bench/pane.js")).toEqual(readFileSync("dist/pane.js"));
});

test("the functions are at most 37 KB gzipped, the pane's first load at most 180 KB", async () => {
  const size = (name: string) => gzipSync(readFileSync(join("dist", name))).length;
  // A fifth of it are the words in seven languages by which a remark beside a result is doubted.
  expect(size("functions.js")).toBeLessThanOrEqual(37_000);
  const page = await open();
  const loaded = await page.evaluate(() => {
    const shown = performance.getEntriesByName("gearproof pane shown")[0]?.startTime ?? 0;
    return performance.getEntriesByType("resource").map((entry) => ({
      name: new URL(entry.name).pathname.slice(1),
      first: (entry as PerformanceResourceTiming).responseEnd <= shown,
    }));
  });
  await page.context().close();
  const pane = loaded.filter(({ name }) => /^pane.*\.js$/.test(name));
  const total = (scripts: typeof pane) => scripts.reduce((sum, { name }) => sum + size(name), 0);
  const first = pane.filter((script) => script.first);
  expect(first.map(({ name }) => name)).toContain("pane.js");
  expect(first.length).toBeGreaterThan(1);
  expect(total(first)).toBeLessThanOrEqual(180_000);
  // And with the whole check, which comes after it, with the texts of all that it may tell.
  expect(total(pane)).toBeLessThanOrEqual(510_000);
  // The plots' library is there, and not among what is loaded at first.
  const plots = readdirSync("dist").filter(
    (name) => name.endsWith(".js") && readFileSync(join("dist", name), "utf8").includes("echarts"),
  );
  expect(plots.length).toBeGreaterThan(0);
  expect(pane.filter(({ name }) => plots.includes(name))).toEqual([]);
}, 60_000);
