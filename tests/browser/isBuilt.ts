import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";

/** What the bench is made of, and what is made of it. */
const SOURCES = ["src", "sample-workbooks", "package.json", "webpack.config.cjs"];
export const MADE = [
  "out/harbour-substation.xlsx",
  "out/harbour-substation.html",
  "dist/pane.js",
  "dist/functions.js",
  "out/bench/bench.js",
];

const newest = (path: string): number => {
  const stat = statSync(path);
  return stat.isDirectory()
    ? Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))))
    : stat.mtimeMs;
};

/** Whether the demo's workbook, the add-in and the bench stand there, and are younger than every source of theirs. */
export function isBuilt(): boolean {
  const source = Math.max(...SOURCES.map(newest));
  return MADE.every((path) => (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0) > source);
}
