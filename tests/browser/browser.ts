import chromium from "@sparticuz/chromium";
import { type Browser, chromium as playwright } from "playwright-core";

/** Headless Chromium from its npm package; nothing of it is installed by hand. */
export const browser = async (): Promise<Browser> =>
  playwright.launch({
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
