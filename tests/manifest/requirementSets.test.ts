import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import ts from "typescript";
import { expect, test } from "vitest";

/**
 * Every member of Office.js that is used is looked up in its published types, which say by `[Api set: …]`
 * from which requirement set on it is there: none is beyond what the manifest asks Excel for, unless it is
 * asked for beforehand whether this Excel has the set.
 */

const FOLDERS = ["src/excel", "src/functions", "src/pane"];
const files = FOLDERS.flatMap((folder) =>
  (readdirSync(folder, { recursive: true }) as string[])
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => resolve(folder, name))
    .filter((file) => /\b(?:Excel|Office)\b/.test(readFileSync(file, "utf8"))),
);

/** Asked for only where the running Excel says that it has the set (`hasSet`), by file. */
const ASKED: Readonly<Record<string, readonly string[]>> = {
  "src/excel/read/readBeside.ts": ["1.10", "1.13", "1.18"],
};

const { options } = ts.parseJsonConfigFileContent(
  ts.readConfigFile("tsconfig.json", (name) => readFileSync(name, "utf8")).config,
  ts.sys,
  ".",
);
const TYPES = resolve("node_modules/@types/office-js/index.d.ts");
// Nothing else is looked up, so that what the pane is made of is not read for it.
const program = ts.createProgram([...files, TYPES], {
  ...options,
  types: [],
  noEmit: true,
  noResolve: true,
  skipLibCheck: true,
});
const checker = program.getTypeChecker();

interface Use {
  readonly name: string;
  readonly set: string;
  readonly version: string;
  readonly file: string;
}

const setOf = (symbol: ts.Symbol): { set: string; version: string } | undefined => {
  const [declared] = symbol.declarations ?? [];
  if (!declared?.getSourceFile().fileName.includes("@types/office-js")) return undefined;
  for (let node: ts.Node | undefined = declared; node; node = node.parent) {
    const text = node.getSourceFile().text.slice(node.getFullStart(), node.getStart());
    const [, set = "", version = ""] =
      /\[?Api set:\s*(\w+)\s+(\d+\.\d+|BETA[^\]]*)/.exec(text) ?? [];
    if (set !== "") return { set, version };
  }
  return undefined;
};

const uses: Use[] = files.flatMap((file) => {
  const source = program.getSourceFile(file);
  const found: Use[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node)) {
      const symbol = checker.getSymbolAtLocation(node);
      const at = symbol && setOf(symbol);
      if (at) found.push({ ...at, name: node.text, file: file.slice(resolve(".").length + 1) });
    }
    ts.forEachChild(node, visit);
  };
  if (source) visit(source);
  return found;
});

const declared = new Map(
  [
    ...readFileSync("manifest.xml", "utf8").matchAll(/<Set Name="(\w+)" MinVersion="([\d.]+)"\/>/g),
  ].map(([, set = "", version = ""]) => [set, version]),
);

/** 1.9 is before 1.10. */
const isBeyond = (one: string, other: string): boolean => {
  const [major = 0, minor = 0] = one.split(".").map(Number);
  const [most = 0, least = 0] = other.split(".").map(Number);
  return major > most || (major === most && minor > least);
};

test("the types tell the set of what is used", () => {
  expect(uses.filter(({ set }) => set === "ExcelApi").length).toBeGreaterThan(200);
  // Office.js reference, Range.getMergedAreasOrNullObject and Workbook.customXmlParts.
  for (const [name, version] of [
    ["getMergedAreasOrNullObject", "1.13"],
    ["customXmlParts", "1.5"],
  ])
    expect(uses).toContainEqual(expect.objectContaining({ name, version }));
});

test("nothing in preview is used", () => {
  expect(uses.filter(({ version }) => !/^\d+\.\d+$/.test(version))).toEqual([]);
});

test("no member is of a set that the manifest does not ask for, save those that are asked for first", () => {
  const beyond = uses.filter(
    ({ set, version, file }) =>
      set === "ExcelApi" &&
      isBeyond(version, declared.get(set) ?? "0.0") &&
      !ASKED[file]?.includes(version),
  );
  expect(beyond).toEqual([]);
  const asked = Object.keys(ASKED);
  const needless = asked.flatMap((file) =>
    (ASKED[file] ?? []).filter(
      (version) => !readFileSync(file, "utf8").includes(`hasSet("${version}")`),
    ),
  );
  expect(needless).toEqual([]);
});
