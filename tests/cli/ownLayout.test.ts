import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync } from "fflate";
import { readXlsx, type Sheet, writeXlsx } from "hucre/xlsx";
import { beforeAll, expect, test } from "vitest";
import type { FileReport } from "../../src/cli/jobs/checkFile";
import { run } from "../support/commandLine";
import { SAMPLE } from "../support/lineups";

/** A workbook that Gearproof never made, as a person works with it: map, check, intake, check. */

const folder = mkdtempSync(join(tmpdir(), "gearproof-own-"));
const at = (name: string) => join(folder, name);
/** Made by tests/xlsx/fixtures/make.py with openpyxl; invented. */
const fixture = (name: string) => `tests/xlsx/fixtures/${name}.xlsx`;
const OWN = fixture("own-layout");

const checked = async (book: string) => {
  const { out } = await run("check", book, "--map", at("map.json"), "--lineup", SAMPLE, "--json");
  return (JSON.parse(out) as { files: FileReport[] }).files[0];
};
const on = (report: FileReport | undefined, rule: string) =>
  report?.findings?.filter((one) => one.rule === rule && one.sheet === "Messungen") ?? [];
const addresses = (report: FileReport | undefined, rule: string) =>
  on(report, rule)
    .map(({ address }) => address)
    .sort();

let mapped: Awaited<ReturnType<typeof run>>;
let before: FileReport | undefined;
let taken: Awaited<ReturnType<typeof run>>;
let after: FileReport | undefined;

beforeAll(async () => {
  mapped = await run("map", OWN, "-o", at("map.json"), "--lineup", SAMPLE);
  before = await checked(OWN);
  writeFileSync(
    at("more.csv"),
    "Panel;Part;Combination;Stage;R (MΩ);Humidity (%)\nH01;Circuit;L3-E;after;47300;45\nH02;Circuit;L2-E;before;52500;\n",
  );
  writeFileSync(
    at("contacts.csv"),
    "Panel;Part;Pole;R (mΩ);Test current (A)\nH01;Q0;L2;0,0325;200\n",
  );
  taken = await run(
    ...["intake", OWN, at("more.csv"), at("contacts.csv"), "-o", at("out.xlsx")],
    ...["--map", at("map.json"), "--lineup", SAMPLE],
  );
  after = await checked(at("out.xlsx"));
}, 120_000);

test("map guesses both blocks and says how sure it is", () => {
  expect(mapped).toMatchObject({ code: 0, err: "" });
  expect(mapped.out).toMatch(/Messungen row 4: insulation \(likely: 3 of 3 lines/);
  expect(mapped.out).toMatch(/Messungen row 12: contact/);
});

test("check finds what is missing at its own cells, and tells comments and formulas", () => {
  expect(addresses(before, "missing-reading")).toEqual(["D14", "E8", "F7"]);
  expect(on(before, "unmapped").map(({ address, message }) => [address, message])).toEqual([
    ["F6", expect.stringMatching(/comment beside its number: "nach Reinigung"/)],
    ["E6", expect.stringMatching(/A reading of this block is a formula \(E6\)/)],
  ]);
});

test("intake writes the readings in the layout's own units, and check misses them no longer", async () => {
  expect(taken).toMatchObject({ code: 0, err: "" });
  const sheet = await sheetOf(at("out.xlsx"));
  expect([sheet.rows[6]?.[5], sheet.rows[7]?.[4], sheet.rows[13]?.[3]]).toEqual([47.3, 52.5, 32.5]);
  expect(addresses(after, "missing-reading")).toEqual([]);
});

test("what map guesses is put right by what columns and names mean, typed or in a file", async () => {
  const said = await run(
    ...["map", OWN, "-o", at("said.json"), "--lineup", SAMPLE],
    ...["--columns", "Temperatur (°C)=left out, Prüfstrom (A)=current"],
    ...["--means", "object: H02==H03; part: Q0=Breaker Q0"],
  );
  const columns = { "Temperatur (°C)": "left out", "Prüfstrom (A)": "current" };
  const means = { object: { H02: "=H03" }, part: { Q0: "Breaker Q0" } };
  writeFileSync(at("columns.json"), JSON.stringify(columns));
  writeFileSync(at("means.json"), JSON.stringify(means));
  await run(
    ...["map", OWN, "-o", at("file.json"), "--lineup", SAMPLE],
    ...["--columns", at("columns.json"), "--means", at("means.json")],
  );
  expect(said).toMatchObject({ code: 0, err: "" });
  const { maps } = JSON.parse(readFileSync(at("said.json"), "utf8"));
  expect(maps).toMatchObject([
    { kind: "insulation", columns: { "Temperatur (°C)": "left out" }, means },
    { kind: "contact", columns: { "Prüfstrom (A)": "current" }, means },
  ]);
  expect(readFileSync(at("file.json"), "utf8")).toBe(readFileSync(at("said.json"), "utf8"));
}, 60_000);

test.each([
  [
    ["--columns", "Feld=panle"],
    'Unknown field "panle"; use one of object (panel or section), circuit',
  ],
  [["--columns", "Panel=object"], 'has no column titled "Panel"; its titles are "Feld", '],
  [["--columns", "Feld="], "give a JSON file with an object of column title and field"],
  [["--means", "panel: X==H01"], "give a JSON file with an object of field"],
])("map %s is refused with what would be right", async (more, right) => {
  const refused = await run("map", OWN, "-o", at("no.json"), "--lineup", SAMPLE, ...more);
  expect(refused).toMatchObject({ code: 2, err: expect.stringContaining(right) });
  expect(existsSync(at("no.json"))).toBe(false);
});

test.each([
  ["position and reading said together", "Zwischen was=combination, Gemessen (MΩ)=resistance", 0],
  ["one of two blocks is found without", "Zwischen was=position", 0],
  ["a title of a block that is not found", "Gemessen (MΩ)=resistance", 0],
  ["a title that stands nowhere", "Zwischen was=position, Gemessen=resistance", 2],
])("map, where %s", async (how, columns, code) => {
  const sheets = [
    {
      name: "IR",
      rows: [
        ["Panel", "Part", "Zwischen was", "Stage", "Gemessen (MΩ)"],
        ["H01", "Circuit", "L1-E", "before", 52_000],
      ],
    },
    {
      name: "R",
      rows: [
        ["Panel", "Part", "Pole", "R (µΩ)"],
        ["H01", "Q0", "L1", 31],
      ],
    },
  ];
  writeFileSync(at("said.xlsx"), await writeXlsx({ sheets }));
  const to = ["-o", at(`${how}.json`), "--lineup", SAMPLE];
  expect(await run("map", at("said.xlsx"), ...to, "--columns", columns)).toMatchObject({
    code,
    err:
      code === 0 ? "" : expect.stringMatching(/no column titled "Gemessen"; .*"Gemessen \(MΩ\)"/),
  });
});

test("titles in one's own words are recognised by map", async () => {
  const rows = [
    ["Skap", "Del", "Pol", "R (µΩ)"],
    ["H01", "Q0", "L1", 31],
  ];
  writeFileSync(at("own-words.xlsx"), await writeXlsx({ sheets: [{ name: "Motstand", rows }] }));
  writeFileSync(at("words.json"), '{"object": ["Skap"], "part": ["Del"]}');
  const map = (...more: string[]) =>
    run("map", at("own-words.xlsx"), "-o", at("own-words.json"), "--lineup", SAMPLE, ...more);
  expect((await map()).code).toBe(2);
  expect((await map("--synonyms", at("words.json"))).out).toMatch(/Motstand row 1: contact/);
});

test("one temperature cell for several records is not written over by the export that comes second", async () => {
  const rows = [
    ["Panel", "Part", "Pole", "R (µΩ)", "Temperature (°C)"],
    ["H01", "Q0", "L1", 31, null],
    ["H01", "Q0", "L2", null, null],
    ["H01", "Q0", "L3", null, null],
  ];
  const merges = [{ startRow: 1, endRow: 3, startCol: 4, endCol: 4 }];
  writeFileSync(at("joined.xlsx"), await writeXlsx({ sheets: [{ name: "Poles", rows, merges }] }));
  const head = "Panel,Part,Pole,R (µΩ),Temperature (°C)\n";
  writeFileSync(at("first.csv"), `${head}H01,Q0,L2,32,18.5\n`);
  writeFileSync(at("second.csv"), `${head}H01,Q0,L3,33,24\n`);
  await run("map", at("joined.xlsx"), "-o", at("joined.json"), "--lineup", SAMPLE);
  const both = await run(
    ...[
      "intake",
      at("joined.xlsx"),
      at("first.csv"),
      at("second.csv"),
      "-o",
      at("joined-out.xlsx"),
    ],
    ...["--map", at("joined.json"), "--lineup", SAMPLE],
  );
  expect(both.out).toMatch(/"Conductor °C": 18.5 in the workbook, 24 in the export/);
  const { sheets } = await readXlsx(readFileSync(at("joined-out.xlsx")));
  expect(sheets[0]?.rows.slice(1).map((row) => row[3] ?? null)).toEqual([31, 32, null]);
  expect(sheets[0]?.rows[1]?.[4]).toBe(18.5);
}, 60_000);

const sheetOf = async (book: string): Promise<Sheet> => {
  const { sheets } = await readXlsx(readFileSync(book), { readStyles: true });
  const found = sheets.find(({ name }) => name === "Messungen");
  if (!found) throw new Error("the sheet is gone");
  return found;
};

test("what the layout has no cell for is told by its column and sheet", () => {
  expect(taken.out).toContain(
    'line 2: the sheet "Messungen" has no cell for "Humidity %" (45) of =H01 · Circuit · L3-E · after',
  );
});

test("the layout stays: every other cell, its look and formula, joined cells, widths, heights and panes", async () => {
  const [was, is] = [await sheetOf(OWN), await sheetOf(at("out.xlsx"))];
  const written = new Set(["6,5", "7,4", "13,3", "13,4"]);
  expect(is.rows.length).toBe(was.rows.length);
  was.rows.forEach((row, at) => {
    for (let column = 0; column < row.length; column++) {
      const key = `${at},${column}`;
      const [old, now] = [was.cells?.get(key), is.cells?.get(key)];
      expect(now?.style?.numFmt, key).toEqual(old?.style?.numFmt);
      expect(now?.style?.fill, key).toEqual(old?.style?.fill);
      expect(now?.style?.font?.bold, key).toEqual(old?.style?.font?.bold);
      expect(now?.formula, key).toEqual(old?.formula);
      if (!written.has(key))
        expect(is.rows[at]?.[column] ?? null, key).toEqual(row[column] ?? null);
    }
  });
  expect(is.merges).toEqual(was.merges);
  expect(is.columns?.map((column) => column?.width)).toEqual(
    was.columns?.map((column) => column?.width),
  );
  expect(is.rowDefs?.get(3)?.height).toBe(was.rowDefs?.get(3)?.height);
  expect(is.freezePane).toEqual(was.freezePane);
});

test("the intake is taken back, and the cells are as they were", async () => {
  const undone = await run(
    ...["intake", at("out.xlsx"), "--undo", "-o", at("back.xlsx")],
    ...["--map", at("map.json"), "--lineup", SAMPLE],
  );
  expect(undone).toMatchObject({ code: 0, err: "" });
  const plain = ({ rows }: Sheet) => rows.map((row) => row.map((cell) => cell ?? null));
  expect(plain(await sheetOf(at("back.xlsx")))).toEqual(plain(await sheetOf(OWN)));
});

test("a workbook with a chart and a picture keeps both, byte for byte, filled and marked", async () => {
  const book = fixture("chart-and-picture");
  await run("map", book, "-o", at("chart.json"), "--lineup", SAMPLE);
  writeFileSync(
    at("one.csv"),
    "Panel;Part;Combination;Stage;R (MΩ)\nH01;Circuit;L2-E;before;47300\n",
  );
  const said = ["--map", at("chart.json"), "--lineup", SAMPLE];
  const intake = await run("intake", book, at("one.csv"), "-o", at("chart.xlsx"), ...said);
  expect(intake).toMatchObject({ code: 0 });
  await run("check", book, ...said, "--marked", at("marked.xlsx"));
  const drawn = (file: string) =>
    Object.entries(unzipSync(readFileSync(file))).filter(([name]) =>
      /^xl\/(charts|drawings|media)\//.test(name),
    );
  expect(drawn(book).length).toBeGreaterThan(3);
  expect(drawn(at("chart.xlsx"))).toEqual(drawn(book));
  expect(drawn(at("marked.xlsx"))).toEqual(drawn(book));
}, 60_000);
