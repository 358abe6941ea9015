import { describe, expect, test } from "vitest";
import { placeReadings } from "../../src/intake/place/placeReadings";
import { readExport } from "../../src/intake/table/readExport";
import { takeIn } from "../../src/intake/takeIn";
import { evaluate } from "../../src/records/evaluate";
import { keyIds, type RecordKind, type Row, rowKey } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { rowsOf } from "../../src/records/rowsOf";
import { english } from "../support/inWords";
import { sampleLineup } from "../support/lineups";
import { sampleBook, TODAY } from "../support/sampleIntake";
import { RETEST, retestExport, sampleExports, sampleFile } from "../tools/sampleExports";

const lineup = sampleLineup();
const texts = sampleExports(lineup);
const names = Object.keys(texts);

/** The three files placed one after the other on the blank tables of the lineup. */
const taken = () => {
  const tables: { kind: RecordKind; rows: Row[] }[] = KINDS.map((kind) => ({
    kind,
    rows: rowsOf(kind, lineup),
  }));
  const placements = names.map((name) => {
    const read = readExport(texts[name] ?? "", { name });
    if (!read.ok) throw new Error(read.say(english));
    const placement = placeReadings(read.value, tables, {
      replace: false,
      instruments: lineup.instruments,
      wave: lineup.withstand.wave,
    });
    for (const { table, row, column, value } of placement.placed)
      table.rows[row] = { ...table.rows[row], [column]: value };
    return { name, table: read.value, placement };
  });
  return { tables, placements };
};

describe.each(names)("%s", (name) => {
  test("is the file that is committed, and says that it is invented", () => {
    expect(sampleFile(name)).toBe(texts[name]);
    expect(texts[name]).toMatch(/^# Invented data: no such site/);
  });
});

test("the retest of the demo is the file that is committed", () => {
  expect(sampleFile(RETEST)).toBe(retestExport());
});

test("in the workbook that knows its lineup all of a sheet's lines are placed, with the whole name of its crew", () => {
  const book = sampleBook("harbour-substation");
  const take = (name: string) =>
    takeIn(book, [{ name, content: texts[name] ?? "" }], { replace: false }, TODAY);
  for (const name of ["harbour-4-earthing.csv", "harbour-22-mechanisms.csv"]) {
    const intake = take(name);
    if (!intake.ok) throw new Error(intake.reason(english));
    expect(intake.taken[0]?.placement.unplaced).toEqual([]);
    const people = intake.cells.filter(({ column }) => column === "by").map(({ value }) => value);
    expect(people.length).toBeGreaterThan(5);
    expect(new Set(people)).toEqual(new Set(["Crew 2 (invented)"]));
  }
});

test("three shapes are recognised", () => {
  const [...shapes] = taken().placements.map(({ table }) => [table.delimiter, table.decimal.mark]);
  expect(shapes.slice(0, 3)).toEqual([
    [",", "."],
    [";", ","],
    ["\t", "."],
  ]);
});

test("every row of the three record kinds has its reading, but for those that are meant to lack it", () => {
  const without = taken().tables.flatMap(({ kind, rows }) => {
    if (!["contact", "insulation", "withstand"].includes(kind.id)) return [];
    const reading = kind.columns.find(({ need }) => need === "reading")?.id ?? "";
    return rows
      .filter((row) => row[reading] === undefined)
      .map((row) =>
        [kind.id, row.object, row.part, row.combination ?? row.pole ?? row.phase, row.stage]
          .filter(Boolean)
          .join(" "),
      );
  });
  expect(without.sort()).toEqual([
    "contact =H09 Breaker Q0 L2",
    "contact =H10 Breaker Q0 L1",
    "insulation =H01 Circuit L2-E after",
    "insulation =H03 Circuit L3-E before",
    "insulation =H05 Breaker Q0 L3 open after",
    "insulation =H08 Circuit L2-E before",
    "insulation =H09 Circuit L3-E before",
    "withstand =H09 Circuit L3",
  ]);
});

test("of the other record kinds every line is placed, and a handful of rows is faulty", () => {
  const { tables, placements } = taken();
  for (const { name, placement } of placements.slice(3))
    expect([name, placement.unplaced, placement.conflicts]).toEqual([name, [], []]);
  const faults = tables
    .filter(({ kind }) => !["contact", "insulation", "withstand"].includes(kind.id))
    .flatMap(({ kind, rows }) =>
      evaluate(kind, rows, lineup)
        .filter(({ result }) => result !== "Pass")
        .map((row) => `${kind.id} ${rowKey(row, keyIds(kind))}: ${row.result}`),
    );
  expect(faults).toEqual([
    "documents Lineup · INV-E-1044: Fail",
    "installation =H06 · Labels and warning signs as on the drawing: Fail",
    "torque =H03 · Earth bar: Missing",
    "torque =H09 · Cable lugs: Fail",
    "earthing =H07 · Door: Fail",
    "control =H08 · Tripping: Fail",
    "mechanism =H09 · Breaker Q0: Fail",
    "timing =H02 · Breaker Q0 opening: Fail",
    // The lineup gives no window for this breaker.
    "timing =H08 · Breaker Q0 closing: Inconclusive",
    "timing =H08 · Breaker Q0 opening: Inconclusive",
    "currentTransformer =H08 · 1S1-1S2 · L1: Missing",
    "currentTransformer =H09 · 2S1-2S2 · L2: Fail",
    "excitation =H03 · 2S1-2S2 · L3: Fail",
    "voltageTransformer =H04 · 1a-1n · L3: Fail",
    "metering =H01 · P1 · 100 %: Fail",
    "protection =H08 · F1 51 · 5 × pick-up: Fail",
    "cable =H02 · W1 · L1: Inconclusive",
    "function =H02 · Trip circuit supervision shows a broken circuit, open and closed: Fail",
  ]);
});

test("what is not placed is said, and what would overwrite is held back", () => {
  const { placements } = taken();
  const [insulation, contact, after] = placements.map(({ placement }) =>
    placement.unplaced.map(({ source, reason }) => `${source.line}: ${reason(english)}`),
  );
  expect(insulation).toEqual([
    expect.stringMatching(/^30: line 31 gives other values for =H02 .* and is later/),
    expect.stringMatching(/^39: lines 39 and 40 give different values for =H03/),
    expect.stringMatching(/^40: lines 39 and 40 give different values for =H03/),
    '63: has no reading: blank under "R 1 min (GΩ)".',
    expect.stringMatching(/^73: panel or section "=H13" has no row\. Insulation has Bus A/),
  ]);
  expect(contact).toEqual([expect.stringMatching(/^24: "OL" is over range but does not say/)]);
  expect(after).toEqual([expect.stringMatching(/^69: "OL" is over range but does not say/)]);
  expect(
    placements.flatMap(({ placement }) =>
      placement.conflicts
        .filter(({ column }) => column === "reading")
        .map(({ source, old, value }) => [source.line, old, value]),
    ),
  ).toEqual([[34, 132000, 61000]]);
});

test("over-range readings stay bounds", () => {
  const insulation = taken().tables.find(({ kind }) => kind.id === "insulation");
  const bounds = (insulation?.rows ?? []).flatMap(({ reading }) =>
    typeof reading === "string" ? reading : [],
  );
  expect(bounds.length).toBeGreaterThan(10);
  expect(new Set(bounds)).toEqual(new Set(["> 10 TΩ", "> 2 GΩ"]));
});
