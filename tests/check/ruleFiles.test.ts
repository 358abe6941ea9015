import { readdirSync } from "node:fs";
import { expect, test } from "vitest";

test("every rule has its test file, and every test file its rule", () => {
  const names = (folder: string, end: string) =>
    readdirSync(folder)
      .map((file) => file.replace(end, ""))
      .sort();
  expect(names("tests/check/rules", ".test.ts")).toEqual(names("src/check/rules", ".ts"));
});
