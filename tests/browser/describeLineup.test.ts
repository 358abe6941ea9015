import { expect, test } from "vitest";
import { inBrowser } from "./bench";

/** A lineup described in the pane alone, from an empty workbook. */
const { open } = inBrowser();

test("a lineup of 40 panels is set up from an empty workbook in under 60 actions", async () => {
  const page = await open();
  let actions = 0;
  const click = async (name: string | RegExp, exact = true) => {
    actions++;
    await page.getByRole("button", { name, exact }).first().click();
  };
  const fill = async (label: string, value: string) => {
    actions++;
    await page.getByLabel(label, { exact: true }).fill(value);
  };
  const choose = async (label: string, value: string) => {
    actions++;
    await page.getByLabel(label, { exact: true }).selectOption(value);
  };
  await click("Empty workbook");
  await click("Read the workbook again");
  await page.getByText("This workbook has no lineup yet.").waitFor();
  await click("Describe a lineup");
  await fill("Project", "Quay board (invented)");
  await fill("Site", "Nowhere (invented)");
  await click("Basis and ratings");
  await fill("Rated voltage, kV", "17.5");
  await fill("Busbar current, A", "2500");
  await fill("Control voltage, V", "110");
  await click("Panels");
  const series = async (
    first: string,
    count: number,
    type: string,
    section: string,
    medium: string,
    rated: string,
  ) => {
    await click("Add a series");
    await fill("First designation", first);
    await fill("How many", String(count));
    await choose("Type", type);
    await fill("Bus section", section);
    await choose("Breaker", medium);
    await fill("Rated current, A", rated);
    await click(/^Add \d+ panels?$/);
  };
  await series("=K01", 2, "incomer", "Bus A", "vacuum", "2500");
  await series("=K03", 17, "feeder", "Bus A", "vacuum", "1250");
  await series("=K20", 1, "bus coupler", "Bus A", "vacuum", "2500");
  await series("=K21", 18, "motor feeder", "Bus B", "SF6", "630");
  await series("=K39", 2, "incomer", "Bus B", "vacuum", "2500");
  await expect
    .poll(() =>
      page
        .getByRole("group", { name: /^Front elevation/ })
        .getByRole("button")
        .count(),
    )
    .toBe(42);
  await click("Preview");
  await page.getByText(/^add the sheet Insulation with \d+ rows$/).waitFor();
  await click("Build");
  await page.getByText(/^Built: \d+ new sheets/).waitFor({ timeout: 90_000 });
  await page.getByRole("heading", { name: "State" }).waitFor({ timeout: 60_000 });
  expect(actions).toBeLessThan(60);
  const sheets = await page.evaluate(
    () => window.bench.host.book.sheets.find(({ name }) => name === "Panels")?.cells.length,
  );
  expect(sheets).toBe(4 + 40);

  // A panel taken out and one put in: readings stay, what is no longer needed is set aside.
  await page.evaluate(() => window.bench.grid.type("Insulation", "H17", 9000));
  await page.evaluate(() => window.bench.settled());
  await page.getByRole("button", { name: "Change the lineup" }).click();
  await page.getByRole("button", { name: "=K02 · incomer" }).click();
  await page.getByRole("button", { name: "Remove", exact: true }).click();
  await page.getByRole("button", { name: "Paste a list" }).click();
  await page
    .getByLabel("Panels, one per line")
    .fill("Panel\tCircuit\tType\tBus\tBreaker\tIn A\n=K41\tSpare\tFeeder\tBus B\tVacuum\t630");
  await page.getByRole("button", { name: "Add 1 panel", exact: true }).click();
  await page.getByRole("button", { name: "Preview" }).click();
  await page.getByText(/^set aside in Insulation, with their readings: =K02/).waitFor();
  await page.getByText(/keep every reading \(1 cell filled in\)/).waitFor();
  await page.getByRole("button", { name: "Build", exact: true }).click();
  await page
    .getByText(/\d+ rows? no longer in the lineup set aside with (?:its|their) readings\.$/)
    .waitFor({ timeout: 90_000 });
  await expect
    .poll(() => page.evaluate(() => window.bench.grid.read("Insulation", "H17")))
    .toBe(9000);
  await page.context().close();
}, 240_000);

test("errors stand where they occur, in words", async () => {
  const page = await open();
  await page.getByRole("button", { name: "Change the lineup" }).click();
  await page.getByRole("button", { name: "=H02 · Feeder, north quay" }).click();
  await page.getByLabel("Designation", { exact: true }).fill("=H01");
  await page.getByText('two panels are named "=H01"').waitFor();
  await page.getByLabel("Rated current, A").fill("lots");
  await page.getByText("must be a number", { exact: true }).waitFor();
  await expect
    .poll(() => page.getByLabel("Rated current, A").getAttribute("aria-invalid"))
    .toBe("true");
  await page.getByRole("button", { name: "Preview" }).click();
  await page.getByText("Correct 2 errors before building:").waitFor();
  await page.context().close();
}, 90_000);
