import { spawnSync } from "node:child_process";
import { type Browser, chromium as playwright } from "playwright-core";

/**
 * Headless Chromium from its npm package; nothing of it is installed by hand. The package also carries
 * the few shared libraries that a bare machine lacks, and unpacks them where it is told that it runs on
 * a bare system.
 */
export const browser = async (): Promise<Browser> => {
  const libraries = spawnSync("/sbin/ldconfig", ["-p"], { encoding: "utf8" }).stdout ?? "";
  if (!libraries.includes("libnss3.so")) process.env.AWS_LAMBDA_JS_RUNTIME ??= "nodejs20.x";
  const { default: chromium } = await import("@sparticuz/chromium");
  return playwright.launch({
    executablePath: await chromium.executablePath(),
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--no-first-run",
    ],
    headless: true,
  });
};
