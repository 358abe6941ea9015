import { expect, test } from "vitest";
import { checked, drawSheet } from "./support";

/** Titles and lines of one table, whose fourth line has no reading; names and values are invented. */
const TITLES = { by: "Tested by", phase: "Connection", reading: "Reading (µΩ)", panel: "Panel" };
const LINES = ["26.3", "26.1", "25.9", "", "26.4", "25.8"].map((reading, at) => ({
  result: "Pass",
  by: "N. Example",
  phase: "ABC"[at % 3] ?? "",
  reading,
  panel: `W${Math.floor(at / 3) + 1}`,
  maximum: "60",
}));
const drawn = (columns: readonly (keyof (typeof LINES)[number])[]) => {
  const titles: Readonly<Record<string, string>> = {
    ...TITLES,
    result: "Result",
    maximum: "Maximum (µΩ)",
  };
  const lines = LINES.map((line) => columns.map((column) => line[column]).join("|"));
  const head = columns.map((column) => titles[column]).join("|");
  return checked([drawSheet("Sheet", ["Contact resistance", head, ...lines])]);
};

test.each([
  [["panel", "phase", "reading", "maximum", "by", "result"]],
  [["result", "by", "phase", "reading", "panel", "maximum"]],
  [["by", "result", "phase", "reading", "panel", "maximum"]],
] as const)("a line that a blank reading cuts in two is no line of titles: %j", (columns) => {
  const { blocks, findings } = drawn(columns);
  expect(blocks.map(({ range }) => range)).toEqual(["A2:F8"]);
  expect(findings.map(({ rule }) => rule)).toContain("survey-missing");
});
