import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { check } from "../../src/check/check";
import { takenWords } from "../../src/cli/intakeBook";
import { kneePoint } from "../../src/engineering/kneePoint";
import { readConstants, type SaidConstants } from "../../src/intake/constants";
import { openBook } from "../../src/intake/openBook";
import { guessMaps } from "../../src/intake/ownLayout/guessMaps";
import { mappedTables } from "../../src/intake/ownLayout/mappedTables";
import { NO_ANSWERS, takeIn } from "../../src/intake/takeIn";
import { commandLineFor } from "../../src/messages/commandLine";
import { messagesFor } from "../../src/messages/messages";
import type { Said } from "../../src/messages/reasons";
import { type Told, toldIn } from "../../src/messages/told";
import { readReading } from "../../src/quantities/reading/readReading";
import { LINEUP } from "../../src/records/columns/common";
import { storedKindWords } from "../../src/records/kindWords";
import { readLineup } from "../../src/records/readLineup";
import { reportHtml } from "../../src/report/html";
import { BookError } from "../../src/sheets/bookError";
import { readMapFile } from "../../src/sheets/kept/layoutMap";
import type { RecordBook } from "../../src/sheets/recordBook";
import { ctLimit } from "../../src/standards/ctLimit";
import { withstandVoltage } from "../../src/standards/withstandVoltage";
import { readBook } from "../../src/xlsx/file";
import { bracketed, isOfMessages, outside } from "../support/otherLanguage";
import { sampleBook, TODAY } from "../support/sampleIntake";

/** What is told, in a language that nobody speaks. */
const OTHER = bracketed(toldIn("en"));

/** The texts that are not of the messages as a whole. */
const strayIn = (said: readonly Said<Told>[]): string[] =>
  said.map((say) => say(OTHER)).filter((shown) => !isOfMessages(shown));

const HARBOUR = "harbour-substation";
const book = sampleBook(HARBOUR);
const lineup = book.lineup as NonNullable<RecordBook["lineup"]>;
const taken = (content: string | Uint8Array, name = "other.csv") =>
  takeIn(book, [{ name, content }], NO_ANSWERS, TODAY);

/** Exports with something to say of lines, cells, titles, dates and numbers. */
const EXPORTS = [
  "Panel,Part,Pole,R (µΩ),Date,Time\n=H01,Q0,1,60,2026-11-02,\n=H01,Q0,1,25,2026-11-02,\n",
  "Panel;Part;Pole;R (µΩ);Remarks\n=H01;Q0;1;31,250;=cmd\n=H99;Q0;1;31;\n;Q0;1;31;\n",
  "Panel,Part,Pole,R\n=H01,Q0,1,25\n=H01,Arrester,1,25 µΩ\n=H01,Q0,9,25 µΩ\n",
  "Panel,Combination,Stage,R 1 min (GΩ),Temp (°C)\n=H01,L1-E,during,5,20\n=H01,L1-E,before,OL,900\n",
  "Panel,Phase,Applied voltage (kV DC)\n=H01,L1,22.4\n",
  "Panel,Part,Pole,R (µΩ),Date\n=H01,Q0,L1,31,03/11/2026\n=H01,Q0,L2,31,25/11/2026,x,y,z\n",
  'Panel,Part,Pole,R (µΩ)\n=H01,Q0,L1,"31\n',
  "Panel,Part,Pole,R (G?)\n=H01,Q0,L1,31\n",
  "Panel,Part,Pole,R (µΩ),R (µΩ)\n=H01,Q0,L1,31,32\nMean,,,31,32\n",
];

describe("what is told of exports is of the messages", () => {
  test.each(EXPORTS)("%j", (content) => {
    const intake = taken(content);
    if (!intake.ok) return expect(strayIn([intake.reason])).toEqual([]);
    const [{ table, placement }] = intake.taken as [(typeof intake.taken)[number]];
    const { delimiter, decimal, dateOrder, blocks, skipped } = table.inspection;
    const evidence = [
      ...[delimiter, decimal, dateOrder],
      ...blocks.flatMap(({ titles, titleLines, units, shape, columns }) => [
        ...[titles, titleLines, units, shape],
        ...columns.map(({ field }) => field),
      ]),
    ];
    const reasons = [...placement.unplaced, ...skipped].map(({ reason }) => reason);
    expect(strayIn([...evidence.map((one) => one.evidence), ...reasons])).toEqual([]);
  });

  test.each([
    ["nothing", ""],
    ["no titles", "1,2\n3,4\n"],
    ["a NUL", "Panel,R\n=H01,\0\n"],
    ["an archive", new Uint8Array([0x50, 0x4b, 3, 4])],
    ["two encodings", new Uint8Array([...Buffer.from("R (µΩ)\n18 "), 0xb0])],
  ])("%s", (_what, content) => {
    const intake = taken(content);
    expect(intake.ok ? ["taken"] : strayIn([intake.reason])).toEqual([]);
  });

  test("as the command line shows it, but for titles, names and numbers of the file", () => {
    const words = bracketed(commandLineFor("en"));
    const file = { file: "other.csv", name: "other.csv" };
    for (const content of EXPORTS) {
      const intake = takeIn(book, [{ ...file, content }], NO_ANSWERS, TODAY);
      if (!intake.ok) continue;
      const [one] = intake.taken as [(typeof intake.taken)[number]];
      const shown = outside(takenWords(one, words)).replace(/"[^"]*"/g, "");
      expect(shown).not.toMatch(/\p{L}{3}/u);
    }
  });
});

test("so is what is said for all lines, and what a map comes to", () => {
  const said: readonly SaidConstants[] = [
    { stage: "during" },
    { part: "Nobody" },
    { reading: "5" },
    { test: "Noise" },
  ];
  const constants = said.map((one) => readConstants(one, book));
  const [guess] = guessMaps(
    {
      sheets: [
        {
          name: "Own",
          tables: [],
          cells: {
            rowCount: 3,
            columnCount: 4,
            cell: (row: number, column: number) => SHEET[row]?.[column] ?? null,
            formula: () => undefined,
          },
        },
      ],
    } as never,
    lineup,
  );
  const maps = ["x", '{"maps": [{"sheet": "A", "kind": "contact"}]}'].map(readMapFile);
  const { problems } = mappedTables({ sheets: [] }, lineup, [
    { sheet: "None", kind: "contact", titles: 1 },
  ]);
  expect(
    strayIn([
      ...[...constants, ...maps].flatMap((read) => (read.ok ? [] : read.say)),
      ...(guess ? [guess.evidence, ...guess.block.columns.map(({ field }) => field.evidence)] : []),
      ...problems.map(({ message }) => message),
    ]),
  ).toEqual([]);
  expect(guess).toBeDefined();
});

const SHEET = [
  ["Panel", "Part", "Pole", "R (µΩ)"],
  ["=H01", "Q0", "L1", 31],
  ["=H77", "Q0", "L2", 31],
];

test("so is why a reading, a calculation or a standard refuses", () => {
  const refused = [
    readReading("OL", { unit: "MΩ" }),
    readReading("5 kV", { unit: "MΩ" }),
    readReading("1,250", { unit: "MΩ" }),
    readReading("5 mΩ", { unit: "MΩ" }),
    readReading("", { unit: "MΩ" }),
    kneePoint([1, 2], [1], "IEEE 45"),
    kneePoint([1, 2, 3, 4], [1, 2, 3, 2], "IEEE 45"),
    ctLimit("0.5", 150),
    ctLimit("0.7", 100),
    withstandVoltage(13, { basis: "NETA", place: "site", wave: "AC", part: "main" }),
    withstandVoltage(12, { basis: "IEC", place: "site", wave: "DC", part: "main" }),
    withstandVoltage(-1, { basis: "IEC", place: "site", wave: "AC", part: "main" }),
  ];
  expect(refused.filter(({ ok }) => ok)).toEqual([]);
  expect(strayIn(refused.flatMap((one) => (one.ok ? [] : one.say)))).toEqual([]);
});

test("so is everything that is wrong in a lineup", () => {
  const json = JSON.parse(readFileSync(`sample-workbooks/${HARBOUR}.lineup.json`, "utf8"));
  json.basis = "ISO";
  json.colour = "red";
  json.ratings.voltagekV = 110;
  json.ratings.frequencyHz = "50";
  json.panels[0].joints[1].name = "bus-bar";
  json.panels[1].breaker.ratedA = -1;
  json.panels[2].designation = "= h 01";
  json.panels[3].designation = "Bus A";
  json.panels[4].designation = " ";
  json.criteria[0].applies = ["=H99"];
  json.criteria[0].quantity = "unheard of";
  json.instruments[2].due = "2020-01-01";
  json.project.drawings = [{ number: "E-1" }, { number: "E-1" }];
  json.project.name = undefined;
  const errors = [JSON.stringify(json), "{", '{"basis": 1, "basis": 2}'].flatMap((text) => {
    const read = readLineup(text);
    return read.ok ? [] : read.errors;
  });
  expect(errors.length).toBeGreaterThan(14);
  expect(strayIn(errors.map(({ message }) => message))).toEqual([]);
});

test("so is why a file is no workbook", async () => {
  const sample = new Uint8Array(readFileSync("sample-workbooks/harbour-tested.xlsx"));
  const files = [
    new Uint8Array(),
    new Uint8Array([1, 2, 3]),
    new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0, 0]),
    sample.subarray(0, sample.length / 2),
    sample.with(sample.length - 30, 0xff),
    ...[200, 1000, 5000, 20_000].map((at) => sample.with(at, (sample[at] ?? 0) ^ 0xff)),
  ];
  const errors = await Promise.all(
    files.map((file) =>
      readBook(file).then(
        () => undefined,
        (error: unknown) => error,
      ),
    ),
  );
  const told = errors.filter((error) => error !== undefined);
  expect(told.length).toBeGreaterThan(5);
  expect(told.filter((error) => !(error instanceof BookError))).toEqual([]);
  expect(strayIn(told.map((error) => (error as BookError).say))).toEqual([]);
});

test("so is the page of a check, but for what the workbook and its lineup say themselves", async () => {
  const text = bracketed(messagesFor("en"));
  const opened = openBook(await readBook(readFileSync("sample-workbooks/harbour-tested.xlsx")));
  const checked = check(opened, TODAY, text.findings);
  if (!checked.ok) throw new Error(checked.reason);
  const { report } = checked;
  const page = reportHtml("other.xlsx", "2026-11-30", report, text);
  const shown = [
    ...page.replace(/<style.*?<\/style>/gs, "").split(/<[^>]*>/),
    ...[...page.matchAll(/(?:aria-label|title|alt)="([^"]*)"/g)].map(([, label = ""]) => label),
  ];
  const own = [
    ...[JSON.stringify(opened.lineup), `other.xlsx ${LINEUP}`],
    ...report.findings.map(({ rule }) => rule),
    ...opened.tables.flatMap(({ kind, table }) => [
      ...[table.sheet, storedKindWords(kind.id).title],
      ...kind.columns.map(({ header }) => header),
    ]),
  ].join(" ");
  const words = shown.flatMap((one) => outside(one).match(/\p{L}{3,}/gu) ?? []);
  expect(words.length).toBeGreaterThan(100);
  expect([...new Set(words)].filter((word) => !own.includes(word))).toEqual([]);
});
