import { expect, test } from "vitest";
import { guessMaps } from "../../../src/intake/ownLayout/guessMaps";
import { mappedTables } from "../../../src/intake/ownLayout/mappedTables";
import { placeReadings } from "../../../src/intake/place/placeReadings";
import { readExport } from "../../../src/intake/table/readExport";
import type { CellValue } from "../../../src/records/kind";
import { readMapFile, writeMapFile } from "../../../src/sheets/kept/layoutMap";
import { refill } from "../../../src/sheets/plan/refill";
import type { SheetSnapshot, Snapshot } from "../../../src/sheets/snapshot";
import { check } from "../../support/checkBook";
import { english, inWords } from "../../support/inWords";
import { sampleLineup } from "../../support/lineups";

const lineup = sampleLineup();

const sheet = (name: string, rows: readonly (readonly CellValue[])[]): SheetSnapshot => ({
  name,
  tables: [],
  cells: {
    rowCount: rows.length,
    columnCount: Math.max(...rows.map(({ length }) => length)),
    cell: (row, column) => rows[row]?.[column] ?? null,
    formula: () => undefined,
  },
});
const book = (...sheets: SheetSnapshot[]): Snapshot => ({ lineup, sheets });

/** Invented: two blocks on one sheet, titles of two lines, phases across, German, a comment, a sum. */
const OWN = book(
  sheet("Messungen", [
    ["Prüfprotokoll (erfunden)"],
    ["Datum", "03.11.2026"],
    [],
    ["Feld", "Teil", "Stufe", "Isolationswiderstand (GΩ)", null, null, "Temperatur (°C)"],
    [null, null, null, "L1-E", "L2-E", "L3-E", null],
    ["H01", "Circuit", "vor", 52.5, "61,2", 48, 20],
    ["H02", "Circuit", "vor", "> 2 TΩ", null, "55 (nach Reinigung)", 20],
    ["Mittelwert", null, null, 57, 61, 51],
    [],
    ["Kontaktwiderstand"],
    ["Feld", "Gerät", "Pol", "Widerstand (µΩ)", "Prüfstrom (A)", "Leitertemperatur (°C)"],
    ["H01", "Q0", 1, 31.5, 200, 19],
    ["H01", "Q0", 2, "trip", 200, 19],
    ["H99", "Q0", 3, 30, 200, 19],
  ]),
);

const guessed = guessMaps(OWN, lineup);
const maps = guessed.map(({ map }) => map);

test("blocks of a sheet are guessed, with how sure that is", () => {
  expect(
    inWords(guessed).map(({ map, evidence }) => [
      map.kind,
      map.titles,
      map.titleLines,
      map.shape,
      evidence,
    ]),
  ).toEqual([
    ["insulation", 4, 2, "wide", "2 of 2 lines find their row of insulation"],
    [
      "contact",
      11,
      1,
      "long",
      '1 of 3 lines find their row of contact; row 13: "trip" is not a reading',
    ],
  ]);
  expect(maps[0]?.columns).toEqual({
    Feld: "object",
    Teil: "part",
    Stufe: "stage",
    "Isolationswiderstand (GΩ) L1-E": "resistance of L1-E",
    "Isolationswiderstand (GΩ) L2-E": "resistance of L2-E",
    "Isolationswiderstand (GΩ) L3-E": "resistance of L3-E",
    "Temperatur (°C)": "temperature",
  });
  expect(maps[0]).toMatchObject({ last: 10, decimal: ",", facts: { Datum: "03.11.2026" } });
});

test("a map file is written and read back; what is wrong with one is said", () => {
  expect(readMapFile(writeMapFile(maps))).toEqual({ ok: true, value: maps });
  expect(inWords(readMapFile('{"maps": [{"sheet": "A", "kind": "contact"}]}'))).toMatchObject({
    say: expect.stringMatching(/^is not a map: at maps\[1\]\.titles: .*; write, for example, /),
  });
  const wrongIn = (json: string) => {
    const read = readMapFile(json);
    return read.ok ? "" : read.say(english);
  };
  expect(wrongIn('{"maps": [{"sheet": "A", "kind": "contact"}]}')).toMatch(
    /at maps\[1\]\.titles: is missing; it is a number/,
  );
  expect(wrongIn('{"map": []}')).toMatch(/at maps: is missing; it is a list in brackets/);
  expect(
    wrongIn('{"maps": [{"sheet": "A", "kind": "contact",\n "kind": "torque", "titles": 1}]}'),
  ).toBe('says "kind" a second time in the same braces, on line 2; keep one.');
  expect(inWords(readMapFile("x"))).toMatchObject({
    say: expect.stringMatching(/^is not JSON; write/),
  });
});

test("each phase of a line is a record, read in the layout's units, at its own cell", () => {
  const { tables, problems } = mappedTables(OWN, lineup, maps);
  const [insulation] = tables;
  expect(
    insulation?.rows.map(({ object, combination, stage, reading, temperature, date }) => [
      object,
      combination,
      stage,
      reading,
      temperature,
      date,
    ]),
  ).toEqual([
    ["=H01", "L1-E", "before", 52_500, 20, 46329],
    ["=H01", "L2-E", "before", 61_200, 20, 46329],
    ["=H01", "L3-E", "before", 48_000, 20, 46329],
    ["=H02", "L1-E", "before", "> 2 TΩ", 20, 46329],
    ["=H02", "L2-E", "before", undefined, 20, 46329],
    ["=H02", "L3-E", "before", 55_000, 20, 46329],
  ]);
  const at = insulation?.at.get("reading") ?? -1;
  expect([0, 1, 2, 5].map((row) => insulation?.table.ownLayout?.place(row, at))).toEqual([
    { row: 5, column: 3 },
    { row: 5, column: 4 },
    { row: 5, column: 5 },
    { row: 6, column: 5 },
  ]);
  expect(inWords(problems).map(({ row, column, message }) => [row, column, message])).toEqual([
    [
      6,
      5,
      expect.stringMatching(
        /"55 \(nach Reinigung\)" has a comment beside its number: "nach Reinigung"/,
      ),
    ],
    [
      13,
      0,
      expect.stringMatching(
        /^Row 14 is taken for no record of Contacts: panel or section "H99" has no row/,
      ),
    ],
  ]);
});

test("the check works on them without changing their layout, and names their cells", () => {
  const checked = check({ ...OWN, maps }, 46_400);
  if (!checked.ok) throw new Error(checked.reason);
  const { findings } = checked.report;
  const at = (rule: string) =>
    findings.filter((one) => one.rule === rule).map(({ address }) => address);
  expect(at("missing-column")).toEqual([]);
  expect(at("missing-reading")).toContain("E7");
  expect(at("unreadable")).toContain("D13");
  expect(at("unmapped")).toEqual(["F7", "A14"]);
  const contact = checked.report.context.tables.find(({ kind }) => kind.id === "contact");
  expect(contact?.judged[0]).toMatchObject({ reading: 31.5, result: "Pass", ratedA: 2000 });
});

test("without a map, a sheet of somebody's own is no record table", () => {
  expect(check(OWN, 46_400)).toMatchObject({ ok: false });
});

test("readings are placed into them, in the layout's unit", () => {
  const { tables } = mappedTables(OWN, lineup, maps);
  const exported = readExport(
    "Panel,Part,Combination,Stage,R (MΩ)\nH02,Circuit,L2-E,before,47300",
    {
      name: "a.csv",
    },
  );
  if (!exported.ok) throw new Error(exported.say(english));
  const { placed } = placeReadings(exported.value, tables, { replace: false });
  const [insulation] = tables;
  if (!insulation) throw new Error("no table");
  const writes = refill(insulation, placed, lineup).map(({ row, column, value }) => [
    insulation.table.ownLayout?.place(row, column),
    insulation.table.ownLayout?.written(row, column, value),
  ]);
  expect(writes).toEqual([[{ row: 6, column: 4 }, 47.3]]);
});

test("a map that does not fit says so", () => {
  const problem = (change: object) =>
    mappedTables(OWN, lineup, [
      { ...maps[0], ...change } as (typeof maps)[number],
    ]).problems[0]?.message(english);
  expect(problem({ sheet: "None" })).toMatch(
    /names a sheet "None", which this workbook does not have/,
  );
  expect(problem({ kind: "none" })).toMatch(
    /names an unknown record kind "none"; use one of documents/,
  );
});

test("an own layout needs no sheets of ours: the lineup lists its instruments, by Id or serial number", () => {
  const snapshot = book(
    sheet("Contacts", [
      ["Panel", "Breaker", "Pole", "R (µΩ)", "Test current (A)", "Instrument", "Date"],
      ["H01", "Q0", "L1", 31, 200, "MO-1", 46_329],
      ["H01", "Q0", "L2", 32, 200, "INV-0582", 46_329],
      ["H01", "Q0", "L3", 33, 200, "X-9", 46_329],
      ["H02", "Q0", "L1", 33, 200, "INV-0391", 46_329],
    ]),
  );
  const checked = check(
    { ...snapshot, maps: guessMaps(snapshot, lineup).map(({ map }) => map) },
    46_400,
  );
  if (!checked.ok) throw new Error(checked.reason);
  const at = (rule: string) =>
    checked.report.findings.filter((one) => one.rule === rule).map(({ address }) => address);
  expect(at("instrument-unknown")).toEqual(["F4"]);
  // INV-0391 is MO-2, whose calibration ended before the test.
  expect(at("instrument-lapsed")).toEqual(["F5"]);
  expect(at("sheets-differ")).toEqual([]);
});

test("what no line of a layout has is said once; where insulation is left out, one query asks where it is", () => {
  const elsewhere = {
    ...lineup,
    leaveOut: [{ kind: "insulation" as const, reason: "kept in another workbook (invented)" }],
  };
  const own = sheet("HV", [
    ["Panel", "Part", "Phase", "Applied (kV AC)", "Time (s)", "Air temp", "Date"],
    ["H01", "Circuit", "L1", 22.5, 60, 19, 46_329],
    ["H01", "Circuit", "L2", 22.5, 60, 19, 46_329],
    ["H01", "Circuit", "L3", "22.5 kV DC", 60, 19, 46_329],
  ]);
  const snapshot = { ...book(own), lineup: elsewhere };
  const maps = guessMaps(snapshot, elsewhere).map(({ map }) => map);
  const checked = check({ ...snapshot, maps }, 46_400);
  if (!checked.ok) throw new Error(checked.reason);
  const of = (rule: string) =>
    checked.report.findings
      .filter((one) => one.rule === rule)
      .map(({ address, weight, message }) => [address, weight, message]);
  expect(of("missing-trail")).toEqual([
    ["D2", "query", expect.stringMatching(/every other line of the block: .*"Instrument"/)],
  ]);
  expect(of("withstand-before-insulation")).toEqual([
    ["A1", "query", expect.stringMatching(/left out .*kept in another workbook/)],
  ]);
  // A number under a title without a unit is asked about once; a DC test does not stand for an AC one.
  expect(of("number-as-text")).toEqual([
    ["F2", "query", expect.stringMatching(/"Air °C" is 19 without a known unit.*\(°C\)/)],
  ]);
  expect(of("unreadable")).toEqual([
    ["D4", expect.anything(), expect.stringMatching(/"kV DC" is not a unit/)],
  ]);
});
