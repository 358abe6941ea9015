import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { USUAL_POINTS } from "../../src/lineup/settings";
import { KINDS, RECORD_KINDS } from "../../src/records/kinds";

test("a kind, and what waits for it, is named as it is", () => {
  const named = [
    ...KINDS.flatMap(({ after = [] }) => after.map(({ kind }) => kind)),
    ...USUAL_POINTS.flatMap(({ guards = [] }) => guards),
  ];
  expect(named.filter((kind) => !RECORD_KINDS.includes(kind))).toEqual([]);
  expect(new Set(RECORD_KINDS).size).toBe(KINDS.length);
});

// What a kind is asked for is declared in its file, so that a further kind is one file and its line.
test("no other file asks which kind it is, nor what a header says", () => {
  const asks = [
    ...RECORD_KINDS.map((id) => new RegExp(`(kind|id) [!=]== "${id}"`)),
    /header\.(starts|ends)With/,
    /header [!=]== "/,
  ];
  const files = readdirSync("src", { recursive: true, encoding: "utf8" }).filter(
    // The survey sorts the columns of other people's sheets by words of its own.
    (file) => /\.tsx?$/.test(file) && !/^(records\/kinds|survey)\//.test(file),
  );
  const found = files.flatMap((file) => {
    const text = readFileSync(`src/${file}`, "utf8");
    return asks.some((one) => one.test(text)) ? [file] : [];
  });
  expect(files.length).toBeGreaterThan(400);
  expect(found).toEqual([]);
});
