import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { analyse } from "scslre";
import ts from "typescript";

// Lint: no pattern takes exponential time, and each that takes longer than in proportion to what it reads
// is listed: those are given short texts alone (tests/fuzz/longTexts.test.ts). `--keep` writes the list.

const SOURCES = "src";
const LIST = "tests/tools/slowPatterns.json";

interface Pattern {
  readonly file: string;
  readonly line: number;
  readonly text: string;
}

/** Every pattern that is written as such in a file. */
function patternsIn(file: string): Pattern[] {
  const source = ts.createSourceFile(
    file,
    readFileSync(file, "utf8"),
    ts.ScriptTarget.Latest,
    true,
  );
  const found: Pattern[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isRegularExpressionLiteral(node)) {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart());
      found.push({ file, line: line + 1, text: node.text });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** How long a pattern takes for what it reads: `exponential`, `slow`, or in proportion. */
function pace({ text }: Pattern): "exponential" | "slow" | "even" {
  const end = text.lastIndexOf("/");
  const { reports } = analyse(
    { source: text.slice(1, end), flags: text.slice(end + 1) },
    { assumeRejectingSuffix: false },
  );
  if (reports.some(({ exponential }) => exponential)) return "exponential";
  return reports.length > 0 ? "slow" : "even";
}

const files = (readdirSync(SOURCES, { recursive: true }) as string[])
  .map((name) => join(SOURCES, name).replaceAll("\\", "/"))
  .filter((name) => /\.tsx?$/.test(name))
  .toSorted();
const paced = files.flatMap(patternsIn).map((pattern) => ({ pattern, pace: pace(pattern) }));
const slow = paced.filter(({ pace }) => pace === "slow").map(({ pattern }) => pattern);

if (process.argv.includes("--keep")) {
  const list: Record<string, string[]> = {};
  for (const { file, text } of slow) list[file] = [...new Set([...(list[file] ?? []), text])];
  writeFileSync(LIST, `${JSON.stringify(list, null, 2)}\n`);
}

const listed = JSON.parse(readFileSync(LIST, "utf8")) as Record<string, readonly string[]>;
const wrong = [
  ...paced
    .filter(({ pace }) => pace === "exponential")
    .map(
      ({ pattern: { file, line, text } }) =>
        `${file}:${line} ${text} may take exponential time: write it so that a text can be read in one way only.`,
    ),
  ...slow
    .filter(({ file, text }) => !listed[file]?.includes(text))
    .map(
      ({ file, line, text }) =>
        `${file}:${line} ${text} may take the square of what it reads: write it so that a text can be read in one way only, or cut what it is given short and list it (npx tsx tests/tools/slowPatterns.ts --keep).`,
    ),
  ...Object.entries(listed).flatMap(([file, texts]) =>
    texts
      .filter((text) => !slow.some((one) => one.file === file && one.text === text))
      .map(
        (text) => `${LIST}: ${file} has no slow pattern ${text} any more; take it out (--keep).`,
      ),
  ),
];
for (const line of wrong) console.error(line);
console.log(`${paced.length} patterns, ${slow.length} of them for short texts alone.`);
process.exitCode = wrong.length > 0 ? 1 : 0;
