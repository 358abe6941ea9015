import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeXlsx } from "hucre/xlsx";
import { beforeAll, expect, test } from "vitest";
import { run } from "../support/commandLine";
import { SAMPLE } from "../support/lineups";

/** The commands as a person runs them: a process of its own, real files, exit codes. */

const folder = mkdtempSync(join(tmpdir(), "gearproof-cli-"));
const at = (name: string) => join(folder, name);

const EXPORTS = readdirSync("sample-workbooks")
  .filter((name) => /\.(csv|tsv|txt)$/.test(name))
  .sort()
  .map((name) => `sample-workbooks/${name}`);

let built: Awaited<ReturnType<typeof run>>;
let taken: Awaited<ReturnType<typeof run>>;

beforeAll(async () => {
  built = await run("lineup", SAMPLE, "-o", at("book.xlsx"));
  taken = await run("intake", at("book.xlsx"), ...EXPORTS, "-o", at("full.xlsx"));
});

test("another project's lineup is not built onto it", async () => {
  const other = JSON.parse(readFileSync(SAMPLE, "utf8"));
  writeFileSync(
    at("other.json"),
    JSON.stringify({ ...other, project: { ...other.project, name: "Elsewhere", number: "X-1" } }),
  );
  const before = readFileSync(at("book.xlsx"));
  const refused = await run("lineup", at("other.json"), "-o", at("book.xlsx"));
  expect(refused).toMatchObject({
    code: 2,
    err: expect.stringMatching(
      /holds the records of another lineup \(.*Elsewhere.*give another name/,
    ),
  });
  expect(readFileSync(at("book.xlsx"))).toEqual(before);
});

test.each([
  ["check", "--html", "full.xlsx"],
  ["check", "--marked", "full.xlsx"],
  ["map", "-o", "full.xlsx"],
  ["map", "-o", "kept.json"],
])("%s %s %s writes over nothing that is there", async (command, option, file) => {
  writeFileSync(at("kept.json"), "corrected by hand");
  const before = readFileSync(at(file));
  const refused = await run(command, at("full.xlsx"), option, at(file));
  expect(refused).toMatchObject({ code: 2, err: expect.stringContaining(at(file)) });
  expect(readFileSync(at(file))).toEqual(before);
});

test("lineup builds a workbook and says what is in it", () => {
  expect(built).toMatchObject({ code: 0, err: "" });
  expect(built.out).toContain("Insulation (120 rows)");
  expect(existsSync(at("book.xlsx"))).toBe(true);
});

test("intake places what it can, says what it held back and why, and leaves its input as it was", async () => {
  expect(taken.code).toBe(0);
  expect(taken.out).toMatch(/[\d,]+ cells placed in [\d,]+ rows/);
  expect(taken.out).toContain("Decimal mark: decimal comma, because");
  expect(taken.out).toContain("Would overwrite; held back");
  expect(taken.out).toContain('"=H13" has no row');
  const before = readFileSync(at("book.xlsx"));
  await run("intake", at("book.xlsx"), ...EXPORTS, "-o", at("other.xlsx"));
  expect(readFileSync(at("book.xlsx")).equals(before)).toBe(true);
});

test("taking the same exports in again places nothing new", async () => {
  const again = await run("intake", at("full.xlsx"), ...EXPORTS, "-o", at("again.xlsx"));
  expect([...again.out.matchAll(/(\d+) cells placed/g)].map(([, count]) => count)).toEqual(
    EXPORTS.map(() => "0"),
  );
});

test("--replace takes the held-back readings, and only then", async () => {
  const json = async (book: string) => JSON.parse((await run("check", at(book), "--json")).out);
  const replaced = await run(
    "intake",
    at("full.xlsx"),
    ...EXPORTS,
    "-o",
    at("replaced.xlsx"),
    "--replace",
  );
  expect(replaced.out).not.toContain("Would overwrite");
  expect(await json("replaced.xlsx")).not.toEqual(await json("full.xlsx"));
});

test("check --json prints one object; exit code 1 where something stops", async () => {
  const { code, out } = await run("check", at("full.xlsx"), "--json");
  expect(code).toBe(1);
  const { files } = JSON.parse(out);
  expect(files).toHaveLength(1);
  expect(files[0]).toMatchObject({ file: at("full.xlsx") });
  expect(
    Object.values(files[0].counts).reduce((sum, count) => Number(sum) + Number(count), 0),
  ).toBe(
    // Documents 4, permits 2, handling 10, inspection 5, installation 176, dimensions 35, torque 28, earthing 30,
    // contacts 51, insulation 120, over time 3, withstand 30, control wiring 45, mechanisms 8, undervoltage 1,
    // timing 16, gas 1, current transformers 54, excitation 30, voltage transformers 9, metering 27, protection 46,
    // cables 15, function 161.
    907,
  );
  const rules = new Set(files[0].findings.map(({ rule }: { rule: string }) => rule));
  for (const rule of [
    "out-of-limits",
    "missing-reading",
    "inconclusive",
    "withstand-before-insulation",
    "instrument-lapsed",
  ])
    expect(rules).toContain(rule);
  for (const finding of files[0].findings)
    expect(finding).toMatchObject({
      rule: expect.any(String),
      weight: expect.stringMatching(/^(stop|query|note)$/),
      sheet: expect.any(String),
      address: expect.stringMatching(/^[A-Z]+[1-9]\d*$/),
      message: expect.any(String),
    });
});

test("check --html writes one page that asks for nothing from elsewhere", async () => {
  await run("check", at("full.xlsx"), "--html", at("page.html"));
  const page = readFileSync(at("page.html"), "utf8");
  expect(page).toContain("<!doctype html>");
  expect(page.match(/\b(src|href)="(?!#)[^"]*"|url\(|@import/g)).toBeNull();
  expect(page).toContain("never says that equipment is safe to energize");
  expect(page.match(/<svg/g)?.length).toBeGreaterThanOrEqual(4);
  expect(page).toContain('<meta name="generator" content="Gearproof"/>');
});

test("the matrix of the page is parted into tables that a printed page holds, each with its panels", async () => {
  await run("check", at("full.xlsx"), "--html", at("page.html"));
  const tables = readFileSync(at("page.html"), "utf8")
    .split("<table")
    .filter((one) => one.includes(">Overall<"));
  expect(tables.length).toBeGreaterThan(1);
  const heads = tables.map((one) =>
    [...one.matchAll(/<th scope="col">([^<]*)</g)].map(([, title]) => title),
  );
  for (const titles of heads) {
    expect(titles.length).toBeLessThanOrEqual(10);
    expect([titles[0], titles.at(-1)]).toEqual(["Panel or section", "Overall"]);
  }
  expect(new Set(heads.flat()).size).toBe(heads.flat().length - 2 * (heads.length - 1));
  const panels = tables.map((one) => one.match(/<th scope="row">[^<]*/g));
  for (const some of panels) expect(some).toEqual(panels[0]);
});

test("check --marked writes a copy with the findings marked, and nothing else changed", async () => {
  const { out } = await run("check", at("full.xlsx"), "--marked", at("marked.xlsx"));
  expect(out).toContain(`Marked copy: ${at("marked.xlsx")}`);
  const findings = async (book: string) =>
    JSON.parse((await run("check", at(book), "--json")).out).files[0].findings;
  expect(await findings("marked.xlsx")).toEqual(await findings("full.xlsx"));
});

test("check never writes to its input", async () => {
  const before = readFileSync(at("full.xlsx"));
  await run("check", at("full.xlsx"), "--html", at("page.html"));
  expect(readFileSync(at("full.xlsx")).equals(before)).toBe(true);
});

const bad = async () => {
  writeFileSync(at("text.xlsx"), "Panel,R\n");
  writeFileSync(
    at("locked.xlsx"),
    new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...Array(600).fill(0)]),
  );
  writeFileSync(at("plain.xlsx"), await writeXlsx({ sheets: [{ name: "A", rows: [["x"], [1]] }] }));
  const whole = readFileSync(at("book.xlsx"));
  writeFileSync(at("half.xlsx"), whole.subarray(0, whole.length / 2));
  writeFileSync(at("odd.csv"), "colour,weather\nred,fine\n");
  const lineup = JSON.parse(readFileSync(SAMPLE, "utf8"));
  lineup.panels[1].designation = lineup.panels[0].designation;
  writeFileSync(at("twice.json"), JSON.stringify(lineup));
  lineup.panels[1].designation = "=H02";
  lineup.ratings.voltagekV = 110;
  writeFileSync(at("high.json"), JSON.stringify(lineup));
};

test.each([
  ["a file that is not there", ["check", at("none.xlsx")], /none\.xlsx: no such file/],
  [
    "a folder in a lineup's place",
    ["lineup", folder, "-o", at("never.xlsx")],
    /is a folder; give a file/,
  ],
  ["no workbook", ["check", at("text.xlsx")], /text\.xlsx: is not a workbook; give an \.xlsx/],
  ["an encrypted workbook", ["check", at("locked.xlsx")], /is encrypted or an old \.xls file/],
  ["a damaged workbook", ["check", at("half.xlsx")], /is damaged or not a workbook/],
  [
    "a workbook without record tables",
    ["check", at("plain.xlsx")],
    /no records were recognised: a table needs titles/,
  ],
  [
    "intake into a workbook without record tables",
    ["intake", at("plain.xlsx"), EXPORTS[0] ?? "", "-o", at("never.xlsx")],
    /has no record tables to place readings in/,
  ],
  [
    "an export with no recognisable column",
    ["intake", at("book.xlsx"), at("odd.csv"), "-o", at("never.xlsx")],
    /odd\.csv: .*colour.*weather/s,
  ],
  [
    "a lineup with two panels of one name",
    ["lineup", at("twice.json"), "-o", at("never.xlsx")],
    /panels\[1\]\.designation: two panels are named "=H01"/,
  ],
  [
    "a rated voltage outside every basis",
    ["lineup", at("high.json"), "-o", at("never.xlsx")],
    /ratings\.voltagekV: must be at most 72\.5 kV/,
  ],
  ["no command of ours", ["frobnicate"], /unknown command/],
  ["an output that is missing", ["lineup", SAMPLE], /required option/],
])("%s: a message, exit code 2, and no file half written", async (_name, args, message) => {
  await bad();
  const { code, err } = await run(...args);
  expect(err).toMatch(message);
  expect(code).toBe(2);
  expect(
    readdirSync(folder).filter((name) => name.includes("never") || name.endsWith(".part")),
  ).toEqual([]);
});

test("one workbook that cannot be read does not keep the others from being checked", async () => {
  await bad();
  const { code, out } = await run("check", at("text.xlsx"), at("full.xlsx"), "--json");
  const { files } = JSON.parse(out);
  expect(code).toBe(2);
  expect(files[0].error).toMatch(/^is not a workbook/);
  expect(files[1].findings.length).toBeGreaterThan(10);
});

test("the demo prints the matrix and the findings and names what it wrote", async () => {
  const { code, out } = await run("demo", "-o", at("demo"));
  expect(code).toBe(0);
  expect(out).toContain("invented");
  expect(out).toMatch(/^Contacts .*1F/m);
  expect(out).toMatch(/^Findings: \d+ stop, \d+ query/m);
  expect(out.split("\n").filter((line) => line.length > 80 && !line.includes(at("")))).toEqual([]);
  // One record failed, was repaired and tested again, and the hand-over tells all three.
  const { repairs, history } = JSON.parse(
    readFileSync(at(join("demo", "handover", "records.json")), "utf8"),
  );
  expect(repairs).toMatchObject([
    {
      panel: "=H07",
      found: "Drop V 14.2; Fail",
      work: "Earth connection",
      left: "Drop V 0.236; Pass",
    },
  ]);
  expect(history).toContainEqual(
    expect.objectContaining({
      row: "=H07 · Door",
      value: 14.2,
      source: "harbour-4-earthing.csv line 25",
    }),
  );
  for (const name of [
    "harbour-substation.xlsx",
    "harbour-substation.html",
    join("handover", "report.pdf"),
  ]) {
    expect(out).toContain(name);
    expect(existsSync(at(join("demo", name)))).toBe(true);
  }
});
