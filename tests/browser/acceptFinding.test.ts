import { expect, test } from "vitest";
import { inBrowser } from "./bench";

/** A finding accepted in the pane. */
const { open } = inBrowser();

test("a finding is accepted with reason, name and date; it stays listed and is open no longer", async () => {
  const page = await open();
  await page.getByRole("tab", { name: "Check" }).click();
  const stops = async () =>
    Number((await page.getByText(/^\d+ stop, /).textContent())?.replace(/ stop.*/s, ""));
  const before = await stops();
  await page.getByRole("button", { name: /=H07 · Breaker Q0 · L2: "R at 20/ }).click();
  await page.getByRole("button", { name: "Accept with a reason" }).click();
  const accept = page.getByRole("button", { name: "Accept this finding" });
  await expect.poll(() => accept.isDisabled()).toBe(true);
  await page.getByLabel("Reason, and the document that says so").fill("INV-NCR-3 (invented)");
  await page.getByLabel("Name", { exact: true }).fill("A. N. Other");
  await accept.click();
  await page.getByText(/^Accepted\. The finding stays listed/).waitFor({ timeout: 30_000 });
  await accept.waitFor({ state: "hidden" });
  await page.getByText(/^accepted · Contacts!/).waitFor();
  // The row is written, the workbook computed anew and read: nothing else has changed by that.
  await expect.poll(stops).toBe(before - 1);
  await page.context().close();
}, 120_000);
