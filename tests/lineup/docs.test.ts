import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";
import { readLineup } from "../../src/records/readLineup";

const PAGES = [
  "README.md",
  ...readdirSync("docs").flatMap((name) => (name.endsWith(".md") ? join("docs", name) : [])),
];

/** A heading as links name it. */
const anchor = (heading: string) =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} -]/gu, "")
    .replaceAll(" ", "-");
const anchorsOf = (file: string) =>
  [...readFileSync(file, "utf8").matchAll(/^#+ (.*)$/gm)].map(([, heading = ""]) =>
    anchor(heading),
  );

test.each(PAGES)("every link and picture of %s leads to something that is there", (page) => {
  const links = [...readFileSync(page, "utf8").matchAll(/\]\((?!https?:)([^)]+)\)/g)];
  for (const [, link = ""] of links) {
    const [path = "", heading] = link.split("#");
    const file = path === "" ? page : join(dirname(page), path);
    expect(existsSync(file), `${page}: ${link}`).toBe(true);
    if (heading !== undefined) expect(anchorsOf(file), link).toContain(heading);
  }
});

const shown = [...readFileSync("docs/lineup.md", "utf8").matchAll(/```json\n([\s\S]*?)```/g)].map(
  ([, json = ""]) => json,
);

test("the page on lineups shows one for each basis", () => {
  expect(shown.map((json) => JSON.parse(json).basis)).toEqual(["IEC", "NETA"]);
});

test.each(shown)("a lineup that the page shows is one: %.60s", (json) => {
  expect(readLineup(json)).toMatchObject({ ok: true });
});
