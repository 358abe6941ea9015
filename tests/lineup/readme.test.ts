import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readLineup } from "../../src/records/readLineup";

const shown = [...readFileSync("README.md", "utf8").matchAll(/```json\n([\s\S]*?)```/g)].map(
  ([, json = ""]) => json,
);

test("the README shows a lineup for each basis", () => {
  expect(shown.map((json) => JSON.parse(json).basis)).toEqual(["IEC", "NETA"]);
});

test.each(shown)("a lineup that the README shows is one: %.60s", (json) => {
  expect(readLineup(json)).toMatchObject({ ok: true });
});
