import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readLineup } from "../../src/records/readLineup";

test("the lineup that the README shows is one", () => {
  const [, json = ""] = /```json\n([\s\S]*?)```/.exec(readFileSync("README.md", "utf8")) ?? [];
  expect(readLineup(json)).toMatchObject({ ok: true });
});
