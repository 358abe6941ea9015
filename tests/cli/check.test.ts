import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { checkJsonSchema, checkSchema } from "../../src/cli/checkSchema";
import { run } from "../support/commandLine";
import { SAMPLE } from "../support/lineups";

const folder = mkdtempSync(join(tmpdir(), "gearproof-check-"));
const at = (name: string) => join(folder, name);
beforeAll(async () => {
  await run("lineup", SAMPLE, "-o", at("old.xlsx"));
  mkdirSync(at("empty"));
  mkdirSync(at("many/below"), { recursive: true });
  // A megabyte of workbooks together, from which on they are checked by workers.
  for (const name of ["1", "2", "3", "4", "5", "below/6"])
    copyFileSync(at("old.xlsx"), at(`many/${name}.xlsx`));
});

test("a folder is checked by workers, in the order of its names, with one summary", async () => {
  expect(6 * statSync(at("old.xlsx")).size).toBeGreaterThan(1_000_000);
  const { code, out } = await run("check", "--final", at("many"));
  expect(code).toBe(1);
  const lines = out.trim().split("\n");
  expect(lines.map((line) => /([\w/]+)\.xlsx:/.exec(line)?.[1]?.slice(-1))).toEqual([
    "1",
    "2",
    "3",
    "4",
    "5",
    "6",
    undefined,
  ]);
  expect(lines.at(-1)).toMatch(/^6 workbooks, [\d,]+ rows: 6 with stops, 0 without/);
});

test("a folder without workbooks says so", async () => {
  const { code, err } = await run("check", at("empty"));
  expect([code, err]).toEqual([2, expect.stringContaining("is a folder without .xlsx")]);
});

test("--json is what the published schema says, also with --against", async () => {
  const { out } = await run("check", at("old.xlsx"), "--against", at("old.xlsx"), "--json");
  const { files } = checkSchema.parse(JSON.parse(out));
  expect(files[0]?.against).toMatchObject({ closed: [], fresh: [], changed: [], altered: [] });
  expect(files[0]?.against?.same).toBe(files[0]?.findings?.length);
  expect(JSON.parse(readFileSync("src/cli/check.schema.json", "utf8"))).toEqual(
    JSON.parse(checkJsonSchema()),
  );
});

test("--sheet writes a copy with the findings on a sheet, and checks as before", async () => {
  await run("check", at("old.xlsx"), "--sheet", at("sheet.xlsx"));
  const findings = async (name: string) =>
    JSON.parse((await run("check", at(name), "--json")).out).files[0].findings;
  expect(await findings("sheet.xlsx")).toEqual(await findings("old.xlsx"));
});
