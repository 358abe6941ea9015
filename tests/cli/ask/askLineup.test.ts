import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import * as z from "zod";
import { askLineup } from "../../../src/cli/ask/askLineup";
import { readPanelFile } from "../../../src/cli/ask/readPanelFile";
import { lineupJsonSchema, SCHEMA_FILE } from "../../../src/lineup/lineupSchema";
import { commandLineFor } from "../../../src/messages/commandLine";
import { readLineup } from "../../../src/records/readLineup";

const words = commandLineFor("en");
const text = words.new;

/** A conversation: these answers in turn; what was said besides the questions. */
const talk = (answers: readonly string[], isPatient = false) => {
  const left = [...answers];
  const said: string[] = [];
  const asked = askLineup(
    { answer: async () => left.shift(), say: (words) => said.push(words), isPatient },
    words,
  );
  return { asked, said };
};

const ANSWERS = ["Invented", "Nowhere", "neta", "15", "60", "2000", "125", "36", "95", "A B C"];
const PANELS = ["52-M1; Main 1; main; 1; vacuum; 2000", "52-F1; Pumps; feeder; ; vacuum; 1200", ""];

test("the answers come to a lineup that can be built", async () => {
  const lineup = await talk([...ANSWERS, ...PANELS]).asked;
  expect(lineup).toMatchObject({
    basis: "NETA",
    phases: ["A", "B", "C"],
    ratings: { voltagekV: 15, frequencyHz: 60, busbarA: 2000, controlV: 125 },
    panels: [
      {
        designation: "52-M1",
        type: "main",
        breaker: { designation: "52", medium: "vacuum", ratedA: 2000 },
      },
      { designation: "52-F1", type: "feeder", section: "1" },
    ],
  });
  expect(readLineup(JSON.stringify(lineup))).toMatchObject({ ok: true });
});

test("what may be left blank is left out", async () => {
  const blank = [...ANSWERS.slice(0, 6), "", "", "", ""];
  const lineup = await talk([...blank, ...PANELS]).asked;
  expect(lineup).toMatchObject({ ratings: { voltagekV: 15, frequencyHz: 60, busbarA: 2000 } });
  expect(lineup).not.toHaveProperty("phases");
  expect(lineup).not.toHaveProperty("ratings.controlV");
});

test("in a terminal a wrong answer is said and asked again, panels too", async () => {
  const { asked, said } = talk(
    [
      ...["", "Invented", "Nowhere", "ISO", "IEC", "0", "12", "55", "50", "1250", "", "", ""],
      ...["A B", "A B C"],
      ...["K01; Incomer; windmill", "", "K01; Incomer; incomer; A; vacuum; 1250", ""],
    ],
    true,
  );
  expect(await asked).toMatchObject({ basis: "IEC", panels: [{ designation: "K01" }] });
  expect(said.join("\n")).toMatch(/must not be blank[\s\S]*"ISO" is none of IEC, NETA/);
  expect(said.join("\n")).toMatch(/"0" is no number above 0[\s\S]*"55" is none of 50, 60/);
  expect(said.join("\n")).toMatch(/three different names[\s\S]*panel 1: Unknown type of panel/);
});

test.each([
  [
    "a wrong answer that nobody can give again",
    ["Invented", "Nowhere", "ISO"],
    /none of IEC, NETA/,
  ],
  ["answers that end too early", ["Invented"], /answers ended before "Site\?"/],
  ["no panel", [...ANSWERS, ""], /No panel was given/],
  [
    "two panels of one name",
    [...ANSWERS, PANELS[0] ?? "", PANELS[0] ?? "", ""],
    /stands on line 1 as well/,
  ],
])("%s stops it, and says why", async (_name, answers, why) => {
  await expect(talk(answers).asked).rejects.toThrow(why);
});

describe("panels from a table", () => {
  const folder = mkdtempSync(join(tmpdir(), "panels-"));
  const tableOf = (lines: readonly string[]) => {
    const file = join(folder, "panels.csv");
    writeFileSync(file, lines.join("\n"));
    return file;
  };
  afterAll(() => rmSync(folder, { recursive: true }));
  const TABLE = [
    "Cubicle;Service;Duty;CB;Rating;Remark",
    "F1;Pumps;outgoing;52-F1;1200;spare door",
  ];

  test("take the place of the last question", async () => {
    const said: string[] = [];
    const listed = readPanelFile(
      tableOf(TABLE),
      { medium: "Vacuum" },
      (words) => said.push(words),
      text,
    );
    expect(said.join()).toContain('"Remark"');
    const left = [...ANSWERS];
    const asked = { answer: async () => left.shift(), say: () => {}, isPatient: false };
    const lineup = await askLineup(asked, words, listed);
    expect(readLineup(JSON.stringify(lineup))).toMatchObject({ ok: true });
    expect(lineup).toMatchObject({
      panels: [
        {
          designation: "F1",
          name: "Pumps",
          type: "feeder",
          breaker: { designation: "52-F1", medium: "vacuum", ratedA: 1200 },
        },
      ],
    });
  });

  test.each([
    [
      "a line that is none",
      [...TABLE, "F2;Fans;windmill;;;"],
      { medium: "SF6" },
      /line 3: Unknown type/,
    ],
    ["a breaker without a medium", TABLE, {}, /line 2: a breaker without its medium/],
    ["a medium that is none", TABLE, { medium: "oil" }, /--medium: "oil" is none of vacuum, SF6/],
    [
      "a column that panels do not have",
      TABLE,
      { columns: "Remark=colour" },
      /one of designation, .* spare/,
    ],
    ["titles alone", TABLE.slice(0, 1), {}, /No panel was given/],
  ])("%s stops it, and says why", (_name, lines, said, why) => {
    expect(() => readPanelFile(tableOf(lines), said, () => {}, text)).toThrow(why);
  });
});

describe("the schema for editors", () => {
  const file = JSON.parse(readFileSync(`sample-workbooks/${SCHEMA_FILE}`, "utf8"));

  test("is what `npm run docs` writes", () => {
    expect(readFileSync(`sample-workbooks/${SCHEMA_FILE}`, "utf8")).toBe(lineupJsonSchema());
  });

  test.each(["harbour-substation", "mesa-metal-clad"])("%s names it and fits it", (name) => {
    const lineup = JSON.parse(readFileSync(`sample-workbooks/${name}.lineup.json`, "utf8"));
    expect(lineup.$schema).toBe(`./${SCHEMA_FILE}`);
    expect(z.fromJSONSchema(file).safeParse(lineup)).toMatchObject({ success: true });
    const { basis: _left, ...without } = lineup;
    expect(z.fromJSONSchema(file).safeParse(without).success).toBe(false);
    expect(z.fromJSONSchema(file).safeParse({ ...lineup, colour: "red" }).success).toBe(false);
  });
});
