import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { writeXlsx } from "hucre/xlsx";
import { beforeAll, describe, expect, test } from "vitest";
import { checkSchema } from "../../src/cli/checkSchema";
import { type Ran, run } from "../support/commandLine";

/** A workbook in somebody's own layout, without a lineup: invented, with one reading below its minimum. */

const folder = mkdtempSync(join(tmpdir(), "gearproof-survey-"));
const at = (name: string) => join(folder, name);
const BOOK = at("board.xlsx");

const ROWS = [
  ["Insulation resistance, 5 kV DC, 1 min"],
  ["Panel", "Connection", "Reading (GΩ)", "Minimum (GΩ)", "Result"],
  ["W1", "A-E", 31.2, 2, "Pass"],
  ["W1", "B-E", 33.5, 2, "Pass"],
  ["W2", "A-E", 1.4, 2, "Pass"],
  ["W2", "B-E", 36.7, 2, "Pass"],
];

const filesOf = ({ out }: Ran) => checkSchema.parse(JSON.parse(out)).files;

beforeAll(async () => {
  writeFileSync(BOOK, await writeXlsx({ sheets: [{ name: "IR", rows: ROWS }] }));
  const notes = [["Minutes of a site walk"], ["Monday", "gate locked"]];
  writeFileSync(at("notes.xlsx"), await writeXlsx({ sheets: [{ name: "Notes", rows: notes }] }));
});

test("--json lists tables and findings as the published schema says, and asks nothing that was answered", async () => {
  const ran = await run("check", BOOK, "--rated", "15", "--basis", "NETA", "--json");
  expect(ran.code).toBe(1);
  expect(filesOf(ran)).toMatchObject([
    {
      file: BOOK,
      blocks: [
        { sheet: "IR", range: "A2:E6", kind: "insulation", panels: ["W1", "W2"], readings: 4 },
      ],
      findings: [
        { rule: "survey-limit", weight: "stop", sheet: "IR", address: "C5", found: "1.4" },
      ],
      questions: [],
      counts: { pass: 3, fail: 1, missing: 0, inconclusive: 0, notRequired: 0 },
    },
  ]);
});

test("what no cell says is asked for with the option that answers it, and the check goes on without", async () => {
  const ran = await run("check", BOOK, "--json");
  const [file] = filesOf(ran);
  expect(file?.questions).toEqual([
    expect.stringContaining("--rated 15"),
    expect.stringContaining("--basis"),
  ]);
  expect(file?.findings).toMatchObject([{ address: "C5" }]);
  const { out } = await run("check", BOOK);
  expect(out).toContain("IR!A2:E6: insulation, 2 panels, 4 readings");
  expect(out).toContain("Rated voltage? Say --rated");
});

test("--marked writes a copy with marks and leaves the workbook as it was", async () => {
  const before = readFileSync(BOOK);
  const { out } = await run(
    "check",
    BOOK,
    "--rated",
    "15",
    "--basis",
    "NETA",
    "--marked",
    at("m.xlsx"),
  );
  expect(out).toContain(at("m.xlsx"));
  expect(readFileSync(BOOK).equals(before)).toBe(true);
  const sheetOf = (file: string) =>
    new TextDecoder().decode(unzipSync(readFileSync(file))["xl/worksheets/sheet1.xml"]);
  expect(sheetOf(BOOK)).not.toContain("conditionalFormatting");
  expect(sheetOf(at("m.xlsx"))).toMatch(/<conditionalFormatting[^>]*sqref="C5"/);
});

test.each([
  ["--rated", "high", "use kilovolts from 0.4 to 52"],
  ["--rated", "15000", "use kilovolts from 0.4 to 52"],
  ["--basis", "both", "Allowed choices are"],
])("%s %s is refused in words", async (option, value, words) => {
  const { code, err } = await run("check", BOOK, option, value, "--marked", at("never.xlsx"));
  expect(code).not.toBe(0);
  expect(err).toContain(words);
  expect(existsSync(at("never.xlsx"))).toBe(false);
});

test("--add-columns writes a copy with results beside the table, and --remove-columns one without them again", async () => {
  const before = readFileSync(BOOK);
  const says = ["--rated", "15", "--basis", "NETA"];
  const { out } = await run("check", BOOK, ...says, "--add-columns", at("with.xlsx"));
  expect(out).toContain(`Wrote ${at("with.xlsx")}, with result columns beside 1 table`);
  expect(readFileSync(BOOK).equals(before)).toBe(true);
  const partsOf = (file: string) => unzipSync(readFileSync(file));
  const sheet = new TextDecoder().decode(partsOf(at("with.xlsx"))["xl/worksheets/sheet1.xml"]);
  expect(sheet).toMatch(/<c r="G5"[^>]*><f>[^<]*_xldudf_GEAR_JUDGE\(C5,F5,[^<]*<\/f><v>Fail</);

  const back = await run("check", at("with.xlsx"), ...says, "--remove-columns", at("back.xlsx"));
  expect(back.out).toContain("without the result columns of 1 table");
  expect(partsOf(at("back.xlsx"))).toEqual(partsOf(BOOK));
});

describe("answers", () => {
  const kept = at("told.xlsx");
  const beside = at("told.answers.json");
  beforeAll(async () => {
    const rows = ROWS.map((row) => row.filter((_, column) => column !== 3));
    writeFileSync(kept, await writeXlsx({ sheets: [{ name: "IR", rows }] }));
  });

  test("are kept in a small file beside the workbook, which is said, and go for the next check", async () => {
    const first = await run("check", kept, "--rated", "15", "--basis", "NETA");
    expect(first.out).toContain(`The answers are kept in ${beside} for the next check.`);
    expect(JSON.parse(readFileSync(beside, "utf8"))).toMatchObject({ ratedkV: 15, basis: "NETA" });
    const next = await run("check", kept);
    expect(next.out).toContain(`Answered before, in ${beside}: --rated 15 --basis NETA.`);
    expect(next.out).not.toContain("Rated voltage?");
    expect(filesOf(await run("check", kept, "--json"))).toMatchObject([
      { questions: [], findings: [{ address: "C5" }] },
    ]);
  });

  test("that are given now take the place of those of before, one by one", async () => {
    const { out } = await run("check", kept, "--basis", "IEC");
    expect(out).toContain("The answers are kept in");
    expect(JSON.parse(readFileSync(beside, "utf8"))).toMatchObject({ ratedkV: 15, basis: "IEC" });
    expect(out).toContain("--rated 15");
  });

  test("are kept in the workbook itself where one is written, and leave it with the columns", async () => {
    const says = ["--rated", "27", "--basis", "NETA"];
    const copy = at("told-columns.xlsx");
    await run("check", kept, ...says, "--add-columns", copy);
    const { out } = await run("check", copy);
    expect(out).toContain(`Answered before, in ${copy}: --rated 27 --basis NETA.`);
    expect(existsSync(at("told-columns.answers.json"))).toBe(false);
    await run("check", copy, "--remove-columns", at("told-back.xlsx"));
    const partsOf = (file: string) => unzipSync(readFileSync(file));
    expect(partsOf(at("told-back.xlsx"))).toEqual(partsOf(kept));
  });

  test("that cannot be read are asked for again, and programs leave nothing behind", async () => {
    writeFileSync(beside, "{ spoilt");
    const { out } = await run("check", kept);
    expect(out).toContain("Rated voltage? Say --rated");
    expect(readFileSync(beside, "utf8")).toBe("{ spoilt");
    const quiet = at("quiet.xlsx");
    writeFileSync(quiet, readFileSync(kept));
    await run("check", quiet, "--rated", "15", "--basis", "NETA", "--json");
    expect(existsSync(at("quiet.answers.json"))).toBe(false);
  });
});

test("what needs a lineup is refused, and nothing is written", async () => {
  const { code, err } = await run(
    "check",
    BOOK,
    "--html",
    at("page.html"),
    "--sheet",
    at("s.xlsx"),
  );
  expect(code).toBe(2);
  expect(err).toContain("--html and --sheet cannot be made of a workbook without a lineup");
  expect([existsSync(at("page.html")), existsSync(at("s.xlsx"))]).toEqual([false, false]);
});

test("a workbook in which no records are recognised is told so, with what a table needs", async () => {
  const { code, err } = await run("check", at("notes.xlsx"), "--rated", "15", "--basis", "IEC");
  expect(code).toBe(2);
  expect(err).toMatch(/no records were recognised: a table needs titles/);
});
