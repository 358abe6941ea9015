import { expect, test } from "vitest";
import { guessMaps } from "../../src/intake/ownLayout/guessMaps";
import { mappedTables } from "../../src/intake/ownLayout/mappedTables";
import { placeReadings } from "../../src/intake/place/placeReadings";
import { readExport } from "../../src/intake/table/readExport";
import type { CellValue } from "../../src/records/kind";
import { protection } from "../../src/records/kinds/protection";
import { rowsOf } from "../../src/records/rowsOf";
import type { SheetCells, Snapshot } from "../../src/sheets/snapshot";
import { english, inWords } from "../support/inWords";
import { equipped, sampleLineup } from "../support/lineups";

const lineup = sampleLineup();

/** A workbook of one sheet in somebody's own layout; all of it invented. */
const book = (
  rows: readonly (readonly CellValue[])[],
  more: Pick<SheetCells, "merges" | "note"> & { formulas?: Readonly<Record<string, string>> } = {},
): Snapshot => ({
  lineup,
  sheets: [
    {
      name: "Own",
      tables: [],
      cells: {
        rowCount: rows.length,
        columnCount: Math.max(...rows.map(({ length }) => length)),
        cell: (row, column) => rows[row]?.[column] ?? null,
        formula: (row, column) => more.formulas?.[`${row},${column}`],
        merges: more.merges,
        note: more.note,
      },
    },
  ],
});

const read = (snapshot: Snapshot) => {
  const maps = guessMaps(snapshot, lineup).map(({ map }) => map);
  return { maps, ...mappedTables(snapshot, lineup, maps) };
};

const down = (left: number, top: number, bottom: number) => ({ top, bottom, left, right: left });

test("a panel, a part and a condition joined over several rows hold for each of them", () => {
  const { tables, problems } = read(
    book(
      [
        ["Panel", "Part", "Combination", "Stage", "R (GΩ)", "Temperature (°C)"],
        ["H01", "Circuit", "L1-E", "before", 52.5, 20],
        [null, null, "L2-E", "before", 61, null],
        [null, null, "L3-E", "before", 48, null],
        ["H02", "Circuit", "L1-E", "before", 50, 21],
        [null, null, "L2-E", "before", null, null],
        ["Minimum", null, null, null, 48, null],
      ],
      { merges: [down(0, 1, 3), down(1, 1, 3), down(5, 1, 3), down(0, 4, 5), down(1, 4, 5)] },
    ),
  );
  expect(
    tables[0]?.rows.map(({ object, combination, reading, temperature }) => [
      object,
      combination,
      reading,
      temperature,
    ]),
  ).toEqual([
    ["=H01", "L1-E", 52_500, 20],
    ["=H01", "L2-E", 61_000, 20],
    ["=H01", "L3-E", 48_000, 20],
    ["=H02", "L1-E", 50_000, 21],
    ["=H02", "L2-E", undefined, undefined],
  ]);
  const temperature = tables[0]?.at.get("temperature") ?? -1;
  // What holds for three rows is written once, in the first cell of those joined.
  expect(tables[0]?.table.ownLayout?.place(2, temperature)).toEqual({ row: 1, column: 5 });
  expect(problems).toEqual([]);
});

test("titles joined over two lines are titles of one column", () => {
  const { maps, tables } = read(
    book(
      [
        ["Feld", "Teil", "Stufe", "Isolationswiderstand (GΩ)", null, null],
        [null, null, null, "L1-E", "L2-E", "L3-E"],
        ["H01", "Circuit", "vor", 52.5, 61, 48],
        [null, null, "nach", 51, 60, 47],
      ],
      {
        merges: [
          down(0, 0, 1),
          down(1, 0, 1),
          down(2, 0, 1),
          { top: 0, bottom: 0, left: 3, right: 5 },
          down(0, 2, 3),
          down(1, 2, 3),
        ],
      },
    ),
  );
  expect(Object.values(maps[0]?.columns ?? {})).toEqual([
    "object",
    "part",
    "stage",
    "resistance of L1-E",
    "resistance of L2-E",
    "resistance of L3-E",
  ]);
  expect(tables[0]?.rows.map(({ object, stage, reading }) => [object, stage, reading])).toEqual([
    ["=H01", "before", 52_500],
    ["=H01", "before", 61_000],
    ["=H01", "before", 48_000],
    ["=H01", "after", 51_000],
    ["=H01", "after", 60_000],
    ["=H01", "after", 47_000],
  ]);
});

test("a reading joined over several rows is that of the first, and the others are asked for", () => {
  const { tables, problems } = read(
    book(
      [
        ["Panel", "Part", "Pole", "R (µΩ)"],
        ["H01", "Q0", "L1", 31],
        ["H01", "Q0", "L2", null],
        ["H01", "Q0", "L3", 30],
      ],
      { merges: [down(3, 1, 2)] },
    ),
  );
  expect(tables[0]?.rows.map(({ reading }) => reading)).toEqual([31, undefined, 30]);
  expect(inWords(problems).map(({ row, column, message }) => [row, column, message])).toEqual([
    [1, 3, expect.stringMatching(/one cell over several rows.*row 2 alone; row 3 needs its own/)],
  ]);
});

test("readings by formula are taken as computed and told once for the block; notes on readings are told", () => {
  const { tables, problems } = read(
    book(
      [
        ["Panel", "Part", "Pole", "R (µΩ)"],
        ["H01", "Q0", "L1", 31],
        ["H01", "Q0", "L2", 32.5],
        ["H01", "Q0", "L3", 30],
      ],
      {
        formulas: { "2,3": "6.5*5", "3,3": "H4/200" },
        note: (row, column) =>
          row === 1 && column === 3 ? "after cleaning (invented)" : undefined,
      },
    ),
  );
  expect(tables[0]?.rows.map(({ reading }) => reading)).toEqual([31, 32.5, 30]);
  expect(inWords(problems).map(({ row, column, message }) => [row, column, message])).toEqual([
    [1, 3, 'The reading has a note on its cell: "after cleaning (invented)".'],
    [
      2,
      3,
      "2 readings of this block are formulas (D3, D4); what each was last computed to is taken for the reading.",
    ],
  ]);
});

test("blocks beside and below each other, with sums and notes between, are tables of their own", () => {
  const { maps, tables, problems } = read(
    book([
      ["Contacts (invented)", null, null, null, null, "Insulation (invented)"],
      ["Panel", "Part", "Pole", "R (µΩ)", null, "Panel", "Part", "Combination", "Stage", "R (GΩ)"],
      ["H01", "Q0", "L1", 31, null, "H01", "Circuit", "L1-E", "before", 52],
      ["H01", "Q0", "L2", 32, null, "H01", "Circuit", "L2-E", "before", 53],
      ["Mean", null, null, 31.5, null, "Note: dried overnight"],
      ["H01", "Q0", "L3", 30, null, "H01", "Circuit", "L3-E", "before", 54],
      [],
      ["Contacts again, other panel"],
      ["Panel", "Part", "Pole", "R (µΩ)"],
      ["H02", "Q0", "L1", 28],
    ]),
  );
  expect(maps.map(({ kind, titles, left }) => [kind, titles, left])).toEqual([
    ["contact", 2, 1],
    ["insulation", 2, 6],
  ]);
  expect(tables.map(({ rows }) => rows.map(({ object, reading }) => [object, reading]))).toEqual([
    [
      ["=H01", 31],
      ["=H01", 32],
      ["=H01", 30],
      ["=H02", 28],
    ],
    [
      ["=H01", 52_000],
      ["=H01", 53_000],
      ["=H01", 54_000],
    ],
  ]);
  expect(problems).toEqual([]);
});

test("titles that group by before and after the withstand test, and the map that says so, read the same", () => {
  const { maps, tables, problems } = read(
    book([
      [
        "Panel",
        "Part",
        "Test V",
        "Before HV test",
        null,
        null,
        "After HV test",
        null,
        null,
        "Temp",
      ],
      [
        null,
        null,
        "kV",
        "L1-E\nGΩ",
        "L2-E\nGΩ",
        "L3-E\nGΩ",
        "L1-E\nGΩ",
        "L2-E\nGΩ",
        "L3-E\nGΩ",
        "°C",
      ],
      ["H01", "Circuit", 5, 52.5, 61, 48, 51, 60, 47, 20],
    ]),
  );
  expect(Object.values(maps[0]?.columns ?? {})).toContain("reading of L2-E After");
  expect(problems).toEqual([]);
  expect(
    tables[0]?.rows.map(({ combination, stage, reading, testVoltage }) => [
      combination,
      stage,
      reading,
      testVoltage,
    ]),
  ).toEqual([
    ["L1-E", "before", 52_500, 5000],
    ["L2-E", "before", 61_000, 5000],
    ["L3-E", "before", 48_000, 5000],
    ["L1-E", "after", 51_000, 5000],
    ["L2-E", "after", 60_000, 5000],
    ["L3-E", "after", 47_000, 5000],
  ]);
});

test("a heading over lines says their stage; sums of something are no records", () => {
  const { tables, problems } = read(
    book([
      ["Panel", "Part", "L1-E (GΩ)", "L2-E (GΩ)", "Temperature (°C)"],
      ["Before HV test"],
      ["H01", "cable side", 52, 61, 20],
      ["After HV test"],
      ["H01", "cable side", 51, 60, 20],
      ["Average of panels", null, 51, 60, null],
    ]),
  );
  expect(problems).toEqual([]);
  expect(tables.flatMap(({ rows }) => rows.map(({ stage, reading }) => [stage, reading]))).toEqual([
    ["before", 52_000],
    ["before", 61_000],
    ["after", 51_000],
    ["after", 60_000],
  ]);
});

test("lines under several headings of one table are counted together", () => {
  const [guessed] = guessMaps(
    book([
      ["Panel", "Part", "L1-E (GΩ)", "L2-E (GΩ)", "Temperature (°C)"],
      ["Before HV test"],
      ["H01", "cable side", 52, 61, 20],
      ["X77", "cable side", 52, 61, 20],
      ["After HV test"],
      ["H01", "cable side", 51, 60, 20],
    ]),
    lineup,
  );
  expect(inWords(guessed)).toMatchObject({
    confidence: "open",
    evidence: '2 of 3 lines find their row of insulation; row 4: panel or section "X77" has no row',
  });
});

test("a breaker's operation may stand in a column of its own, and its control voltage names the wave", () => {
  const { tables, problems } = read(
    book([
      [
        "Panel",
        "Breaker",
        "Operation",
        "Control voltage",
        "Operating time",
        null,
        null,
        "Pole spread",
      ],
      [null, null, null, "V DC", "L1 ms", "L2 ms", "L3 ms", "ms"],
      ["H01", "Q0", "Close", 110, 52, 52.5, 53, 1],
      ["H01", "Q0", "Open", 110, 31, 31.5, 32, 1],
    ]),
  );
  expect(problems).toEqual([]);
  expect(tables[0]?.rows.map(({ part, controlV, l1, l3 }) => [part, controlV, l1, l3])).toEqual([
    ["Breaker Q0 closing", 110, 52, 53],
    ["Breaker Q0 opening", 110, 31, 32],
  ]);
});

test.each([
  ["R L1 (µΩ)", "R L2 (µΩ)", "R L3 (µΩ)"],
  ["Résistance R (µΩ)", "Résistance S (µΩ)", "Résistance T (µΩ)"],
])("the phase of a title %s stands after its quantity", (...titles) => {
  const { tables } = read(
    book([
      ["Panel", "Breaker", ...titles, "Valeur max (µΩ)", "I test (A)"],
      ["H01", "Q0", 31, 32, 33, 40, "200 A DC"],
    ]),
  );
  expect(
    tables[0]?.rows.map(({ pole, reading, testCurrent }) => [pole, reading, testCurrent]),
  ).toEqual([
    ["L1", 31, 200],
    ["L2", 32, 200],
    ["L3", 33, 200],
  ]);
});

test("facts stand side by side above a table; an earthing resistance worked out beside its drop is no reading", () => {
  const { maps, tables, problems } = read(
    book([
      ["Test current", "50 A DC", "Date", "03.11.2026"],
      [],
      ["Celda", "Parte puesta a tierra", "Caída de tensión (V)", "Resistencia (mΩ)", "Resultado"],
      ["H01", "Puerta", 0.1, 2, "OK"],
      ["H02", "Puerta", 0.12, 2.4, "OK"],
    ]),
  );
  expect(problems).toEqual([]);
  expect(maps[0]?.kind).toBe("earthing");
  expect(
    tables[0]?.rows.map(({ part, reading, testCurrent, date }) => [
      part,
      reading,
      testCurrent,
      date,
    ]),
  ).toEqual([
    ["Door", 0.1, 50, 46_329],
    ["Door", 0.12, 50, 46_329],
  ]);
});

test("of two columns that read alike the first is taken, the other left out and said", () => {
  const [guessed] = guessMaps(
    book([
      ["Panel", "Breaker", "Pole", "R (µΩ)", "Tester", "By"],
      ["H01", "Q0", "L1", 31, "Crew 2 (invented)", "Crew 1 (invented)"],
    ]),
    lineup,
  );
  expect(guessed?.map.columns).toMatchObject({ Tester: "by", By: "left out" });
  expect(inWords(guessed?.block.columns.at(-1)?.field.evidence)).toMatch(
    /reads as the same as "Tester"/,
  );
});

test("a column of nothing but the lineup's instruments is the instrument, whatever its title; one of people is not", () => {
  const lines = (testers: readonly string[]): CellValue[][] => [
    ["Panel", "Breaker", "Pole", "R (µΩ)", "Tester", "By"],
    ...testers.map((tester, at): CellValue[] => [
      "H01",
      "Q0",
      `L${at + 1}`,
      31,
      tester,
      "Crew 1 (invented)",
    ]),
  ];
  const [meter, other] = lineup.instruments;
  const snapshot = book(lines([meter?.id ?? "", other?.serial ?? ""]));
  const [guessed] = guessMaps(snapshot, lineup);
  expect(guessed?.map.columns).toMatchObject({ Tester: "instrument", By: "by" });
  expect(inWords(guessed?.block.columns[4]?.field.evidence)).toMatch(
    /every cell is an Id or serial number/,
  );
  const { tables } = mappedTables(snapshot, lineup, guessed ? [guessed.map] : []);
  expect(tables[0]?.rows.map(({ instrument, by }) => [instrument, by])).toEqual([
    [meter?.id, "Crew 1 (invented)"],
    [other?.id, "Crew 1 (invented)"],
  ]);
  const people = guessMaps(book(lines([meter?.id ?? "", "Crew 2 (invented)"])), lineup);
  expect(people[0]?.map.columns).toMatchObject({ Tester: "by", By: "left out" });
});

test("a block none of whose lines finds a row is told, with its first line and why", () => {
  const told: unknown[] = [];
  const guessed = guessMaps(
    book([
      ["Panel", "Breaker", "Pole", "R (µΩ)"],
      ["X77", "Q0", "L1", 31],
    ]),
    lineup,
    (...said) => told.push(said),
  );
  expect(guessed).toEqual([]);
  expect(inWords(told)).toEqual([
    ["Own", 2, expect.stringMatching(/^panel or section "X77" has no row/)],
  ]);
});

test("a numbered heading above the next block belongs to no record", () => {
  const { tables, problems } = read(
    book([
      ["Panel", "Part", "Combination", "Stage", "R (GΩ)"],
      ["H01", "Circuit", "L1-E", "before", 52],
      [],
      ["2. Contact resistance, 200 A DC"],
      ["Panel", "Breaker", "Pole", "R (µΩ)"],
      ["H01", "Q0", "L1", 31],
    ]),
  );
  expect(problems).toEqual([]);
  expect(tables.map(({ kind }) => kind.id)).toEqual(["insulation", "contact"]);
});

test("a part, a stage and a combination in German find their row", () => {
  const { tables, problems } = read(
    book([
      ["Feld", "Teil", "Leiter", "Prüfung", "Isolationswiderstand [GΩ]", "Ergebnis"],
      ["H01", "Abgang", "L1-PE", "vor Spannungsprüfung", 52, "i.O."],
      ["H01", "Leistungsschalter Q0", "L1 offen", "nach Spannungsprüfung", 51, "i.O."],
    ]),
  );
  expect(problems).toEqual([]);
  expect(
    tables[0]?.rows.map(({ part, combination, stage, reading }) => [
      part,
      combination,
      stage,
      reading,
    ]),
  ).toEqual([
    ["Circuit", "L1-E", "before", 52_000],
    ["Breaker Q0", "L1 open", "after", 51_000],
  ]);
});

test("values that a layout has no cell for are not placed, and their columns and the sheet are named", () => {
  const { tables } = read(
    book([
      ["Panel", "Part", "Pole", "R (µΩ)"],
      ["H01", "Q0", "L1", null],
      ["H01", "Q0", "L2", null],
      ["H01", "Q0", "L3", 30],
    ]),
  );
  const exported = readExport(
    "Panel,Part,Pole,R (µΩ),Test current (A),Date\nH01,Q0,L1,31,100,2026-11-03\nH01,Q0,L2,32,,\n",
    { name: "invented.csv" },
  );
  if (!exported.ok) throw new Error(exported.say(english));
  const { placed, unplaced } = placeReadings(exported.value, tables, { replace: false });
  expect(placed.map(({ row, column, value }) => [row, column, value])).toEqual([
    [0, "reading", 31],
    [1, "reading", 32],
  ]);
  expect(inWords(unplaced)).toEqual([
    {
      source: { file: "invented.csv", line: 2 },
      reason:
        'the sheet "Own" has no cell for "Test A DC" (100), "Date" (2026-11-03) of =H01 · Breaker Q0 · L1, and the rest of the line stands; add a column for them there.',
    },
  ]);
});

test("where the reading itself has no cell, nothing of its line is placed", () => {
  const snapshot = book([
    ["Panel", "Part", "Stage", "R L1-E (GΩ)", "R L2-E (GΩ)", "Temperature (°C)"],
    ["H01", "Circuit", "before", 52, null, null],
    ["H02", "Circuit", "before", 51, null, null],
  ]);
  const { maps } = read(snapshot);
  const narrow = maps.map((map) => ({ ...map, right: 4 }));
  const { tables } = mappedTables(snapshot, lineup, narrow);
  const bare = tables.map((table) => ({
    ...table,
    rows: [...table.rows, { ...table.rows[0], combination: "L2-E", reading: null }],
  }));
  const exported = readExport(
    "Panel,Part,Combination,Stage,R (MΩ),Temperature (°C)\nH01,Circuit,L2-E,before,61000,20\n",
    { name: "invented.csv" },
  );
  if (!exported.ok) throw new Error(exported.say(english));
  const { placed, unplaced } = placeReadings(exported.value, bare, { replace: false });
  expect(placed).toEqual([]);
  expect(inWords(unplaced).map(({ reason }) => reason)).toEqual([
    'the sheet "Own" has no cell for "R 1 min MΩ" (61000), "Temperature °C" (20) of =H01 · Circuit · L2-E · before, and nothing of the line is placed; add a column for them there.',
  ]);
});

test.each([
  ["Unit", "R"],
  ["Einheit", "Widerstand"],
  ["Unité", "Résistance"],
  ["Unidad", "Resistencia"],
])("a column %s beside %s gives each reading its unit", (unit, resistance) => {
  const { tables, problems } = read(
    book([
      ["Panel", "Part", "Combination", "Stage", resistance, unit, "Temperature (°C)"],
      ["H01", "Circuit", "L1-E", "before", 52.5, "GΩ", 20],
      ["H01", "Circuit", "L2-E", "before", 48_000, "MΩ", 20],
      ["H01", "Circuit", "L3-E", "before", "> 2", "TΩ", 20],
      ["H02", "Circuit", "L1-E", "before", null, "GΩ", 20],
    ]),
  );
  expect(problems).toEqual([]);
  expect(tables[0]?.rows.map(({ reading, temperature }) => [reading, temperature])).toEqual([
    [52_500, 20],
    [48_000, 20],
    ["> 2 TΩ", 20],
    [undefined, 20],
  ]);
  // What is placed there goes into the row's unit.
  const at = tables[0]?.at.get("reading") ?? -1;
  expect(tables[0]?.table.ownLayout?.written(3, at, 61_000)).toBe(61);
});

test("a column of units after three phases is for each of them, and not for what has another quantity", () => {
  const { tables, problems } = read(
    book([
      ["Panel", "Breaker", "L1", "L2", "L3", "Unit", "Temperature", "Unit"],
      ["H01", "Q0", 31, 32.5, 30, "µΩ", 20, "°C"],
      ["H02", "Q0", 0.031, 0.0325, 0.03, "mΩ", 21, "°C"],
    ]),
  );
  expect(problems).toEqual([]);
  expect(
    tables[0]?.rows.map(({ pole, reading, temperature }) => [pole, reading, temperature]),
  ).toEqual([
    ["L1", 31, 20],
    ["L2", 32.5, 20],
    ["L3", 30, 20],
    ["L1", 31, 21],
    ["L2", 32.5, 21],
    ["L3", 30, 21],
  ]);
});

test("a unit that is none known is said at its cell, and its reading is no number", () => {
  const { tables, problems } = read(
    book([
      ["Panel", "Part", "Pole", "R", "Unit"],
      ["H01", "Q0", "L1", 31, "µΩ"],
      ["H01", "Q0", "L2", 32, "uOhmz"],
    ]),
  );
  expect(tables[0]?.rows.map(({ reading }) => reading)).toEqual([31, "32 uOhmz"]);
  expect(inWords(problems).map(({ row, column, message }) => [row, column, message])).toEqual([
    [2, 4, '"uOhmz" is not a unit known here; µΩ belongs here.'],
  ]);
});

test("a relay's reading goes by the unit that its record names", () => {
  const relays = { ...lineup, panels: equipped(lineup).panels };
  const snapshot = book([
    ["Panel", "Part", "Point", "Measured", "Unit"],
    ...rowsOf(protection, relays)
      .slice(0, 2)
      .map(({ object, part, point, inUnit }): CellValue[] => [
        String(object),
        String(part),
        String(point),
        inUnit === "s" ? 1000 : 1200,
        inUnit === "s" ? "ms" : "mA",
      ]),
  ]);
  const maps = guessMaps(snapshot, relays).map(({ map }) => map);
  const { tables, problems } = mappedTables(snapshot, relays, maps);
  expect(problems).toEqual([]);
  expect(tables[0]?.rows.map(({ reading }) => reading)).toEqual([1.2, 1]);
});

test("names written once hold for the blank cells below them, which the map and its evidence say", () => {
  const snapshot = book([
    ["Panel", "Part", "Combination", "Stage", "R (GΩ)"],
    ["H01", "Circuit", "L1-E", "before", 52],
    [null, null, "L2-E", null, 53],
    [null, null, "L1-E", "after", 51],
    [null, null, "L2-E", null, 50],
    ["H02", "Circuit", "L1-E", "before", 48],
    [null, null, "L2-E", null, 49],
  ]);
  const { maps, tables, problems } = read(snapshot);
  expect(problems).toEqual([]);
  expect(maps[0]?.down).toEqual(["Panel", "Part", "Stage"]);
  expect(inWords(guessMaps(snapshot, lineup)[0]?.block.columns[0]?.field)).toMatchObject({
    value: "object",
    confidence: "likely",
    evidence: expect.stringMatching(/written once, it holds for the blank cells below it$/),
  });
  expect(
    tables[0]?.rows.map(({ object, part, combination, stage, reading }) =>
      [object, part, combination, stage, reading].join(" "),
    ),
  ).toEqual([
    "=H01 Circuit L1-E before 52000",
    "=H01 Circuit L2-E before 53000",
    "=H01 Circuit L1-E after 51000",
    "=H01 Circuit L2-E after 50000",
    "=H02 Circuit L1-E before 48000",
    "=H02 Circuit L2-E before 49000",
  ]);
  // Taken out of the map, each line is asked for its own.
  const { down: _down, ...each } = maps[0] ?? { sheet: "", kind: "", titles: 1 };
  expect(mappedTables(snapshot, lineup, [each]).tables[0]?.rows).toHaveLength(2);
});

const POLES = ["Panel", "Part", "Pole", "R (µΩ)", "Temperature (°C)"];
const Q0 = (name: string | null, pole: string, reading: number): CellValue[] => [
  name,
  name && "Q0",
  pole,
  reading,
  20,
];

test("a sum or a blank line ends what a name holds for", () => {
  const [first, second] = [
    ["Mean", null, null, 30],
    [null, null, null, null],
  ].map((between) => {
    const snapshot = book([
      POLES,
      Q0("H01", "L1", 31),
      Q0(null, "L2", 32),
      between,
      Q0("H02", "L1", 28),
      Q0(null, "L2", 29),
    ]);
    const { maps, tables } = read(snapshot);
    expect(maps[0]?.down).toEqual(["Panel", "Part"]);
    expect(tables[0]?.rows.map(({ object, pole }) => [object, pole])).toEqual([
      ["=H01", "L1"],
      ["=H01", "L2"],
      ["=H02", "L1"],
      ["=H02", "L2"],
    ]);
    // The same map over a sheet whose second name went: nothing of it comes to stand under the first.
    const without = book([
      POLES,
      Q0("H01", "L1", 31),
      Q0(null, "L2", 32),
      between,
      Q0(null, "L3", 28),
    ]);
    return mappedTables(without, lineup, maps);
  });
  for (const one of [first, second]) {
    expect(one?.tables[0]?.rows.map(({ pole }) => pole)).toEqual(["L1", "L2"]);
    expect(one?.problems.map(({ row }) => row)).toEqual([4]);
  }
});

test.each([
  [
    "in the middle of its lines",
    [
      Q0(null, "L1", 31),
      Q0("H01", "L2", 32),
      Q0(null, "L3", 30),
      Q0(null, "L1", 28),
      Q0("H02", "L2", 29),
      Q0(null, "L3", 27),
    ],
  ],
  [
    "on every line but one",
    [Q0("H01", "L1", 31), Q0("H01", "L2", 32), Q0("H01", "L3", 30), Q0(null, "L1", 28)],
  ],
  [
    "and one forgotten, so that a record would have two readings",
    [Q0("H01", "L1", 31), Q0(null, "L2", 32), Q0(null, "L1", 28), Q0(null, "L2", 27)],
  ],
  ["and no line below it with a reading", [Q0("H01", "L1", 31), [null, null, "L2", null, null]]],
])("a name that stands %s is not carried down", (_where, lines) => {
  const { maps, tables } = read(book([POLES, ...(lines as CellValue[][])]));
  expect(maps[0]?.down).toBeUndefined();
  expect(tables[0]?.rows).toHaveLength(lines.filter(([name]) => name !== null).length);
});

test("a map by which names would hold for two readings of one record holds none, and says so", () => {
  const whole = book([POLES, Q0("H01", "L1", 31), Q0(null, "L2", 32), Q0("H02", "L1", 28)]);
  const { maps } = read(whole);
  expect(maps[0]?.down).toEqual(["Panel", "Part"]);
  const { tables, problems } = mappedTables(
    book([POLES, Q0("H01", "L1", 31), Q0(null, "L2", 32), Q0(null, "L1", 28)]),
    lineup,
    maps,
  );
  expect(tables[0]?.rows.map(({ object, pole, reading }) => [object, pole, reading])).toEqual([
    ["=H01", "L1", 31],
  ]);
  expect(inWords(problems[0])).toMatchObject({
    row: 3,
    column: 3,
    message:
      'Were the names under "Panel", "Part" held for the blank cells below them, row 4 would be a second line of =H01 · Breaker Q0 · L1; so none is held. Write them on each line.',
  });
});

test("a panel or section and its part in one cell are parted by the lineup's names", () => {
  const insulated = read(
    book([
      ["Test object", "Phases", "Stage", "R (GΩ)", "Temperature (°C)"],
      ["=H01 CB open", "L1", "before", 52, 20],
      ["H01 cable side", "L2-E", "before", 53, 20],
      ["Bus A busbar", "L1-E", "before", 54, 20],
    ]),
  );
  expect(insulated.problems).toEqual([]);
  expect(
    insulated.tables[0]?.rows.map(({ object, part, combination }) => [object, part, combination]),
  ).toEqual([
    ["=H01", "Breaker Q0", "L1 open"],
    ["=H01", "Circuit", "L2-E"],
    ["Bus A", "Busbar", "L1-E"],
  ]);
  const contacts = read(
    book([
      ["Equipment", "R (µΩ)", "Test current (A)"],
      ["H03 Q0 L1", 31, 200],
      ["H03/Q0/L2", 32, 200],
      ["=H03-Q0 L3", 30, 200],
    ]),
  );
  expect(contacts.problems).toEqual([]);
  expect(contacts.tables[0]?.rows.map(({ object, part, pole }) => [object, part, pole])).toEqual([
    ["=H03", "Breaker Q0", "L1"],
    ["=H03", "Breaker Q0", "L2"],
    ["=H03", "Breaker Q0", "L3"],
  ]);
});

test.each(["H03 Q7 L1", "X03 Q0 L1", "H03 Q0", "H03 L1 Q0 spare"])(
  "%s in one cell names no panel, part and pole of the lineup, and is asked for",
  (written) => {
    const { tables, problems } = read(
      book([
        ["Panel", "R (µΩ)", "Test current (A)"],
        ["H03 Q0 L2", 32, 200],
        [written, 31, 200],
      ]),
    );
    expect(tables[0]?.rows.map(({ pole }) => pole)).toEqual(["L2"]);
    expect(inWords(problems).map(({ row, message }) => [row, message])).toEqual([
      [2, expect.stringContaining("is taken for no record")],
    ]);
  },
);

test("a bound placed into a cell that formulas of its row take is told with the formulas' cells", () => {
  const titles = ["Panel", "Part", "Combination", "Stage", "R (GΩ)", "R at 20 °C (GΩ)", "Result"];
  const { tables } = read(
    book(
      [
        titles,
        ["H01", "Circuit", "L1-E", "before", null, null, null],
        ["H01", "Circuit", "L2-E", "before", null, null, null],
        ["H01", "Circuit", "L3-E", "before", 48, 60, "pass"],
      ],
      {
        formulas: {
          "1,5": "E2*1.25",
          "1,6": 'IF(E2>=5,"pass","FAIL")',
          "2,5": "E3*1.25",
          "3,5": "E4*1.25",
        },
      },
    ),
  );
  const exported = readExport(
    "Panel,Part,Combination,Stage,R\nH01,Circuit,L1-E,before,> 200 GΩ\nH01,Circuit,L2-E,before,61 GΩ\n",
    { name: "invented.csv" },
  );
  if (!exported.ok) throw new Error(exported.say(english));
  const { placed, unplaced } = placeReadings(exported.value, tables, { replace: false });
  expect(placed.map(({ row, value }) => [row, value])).toEqual([
    [0, "> 200 GΩ"],
    [1, 61_000],
  ]);
  expect(inWords(unplaced).map(({ source, reason }) => [source.line, reason])).toEqual([
    [
      2,
      expect.stringMatching(
        /^"> 200 GΩ" goes into E2 of the sheet "Own" as text, and the formula at F2 \(=E2\*1\.25\), as those at G2, takes that cell: with text, arithmetic gives #VALUE!, a comparison takes it for more/,
      ),
    ],
  ]);
});

test("lines that wait for their readings are no titles, whatever words stand in them", () => {
  const { tables, problems } = read(
    book([
      ["Panel", "Part", "Combination", "Stage", "R (GΩ)"],
      ["H01", "Circuit", "L1-E", "before", 52],
      ["H01", "Circuit", "L2-E", "before", null],
      ["H01", "Circuit", "L3-E", "before", null],
      ["H02", "Circuit", "L1-E", "before", 48],
    ]),
  );
  expect(problems).toEqual([]);
  expect(tables.map(({ rows }) => rows.map(({ reading }) => reading))).toEqual([
    [52_000, undefined, undefined, 48_000],
  ]);
});

test.each([
  ["Panel", "panel or section, by the title", "object"],
  ["R (µΩ)", "resistance, by the title", "resistance"],
  ["Limit (µΩ)", "limit of the layout, by the title; compared, never taken over", "limit"],
  ["Spread %", "spread of the layout, by the title; compared, never taken over", "spread"],
  ["Result", "left out, as you set it", "left out"],
  ["Colour", "not recognised, and left out", undefined],
])("what is told of the column %s is what the map has for it", (title, told, mapped) => {
  const [guessed] = guessMaps(
    book([
      ["Panel", "Breaker", "Pole", "R (µΩ)", "Limit (µΩ)", "Spread %", "Result", "Colour"],
      ["H01", "Q0", "L1", 31, 40, 2, "Pass", "red"],
    ]),
    lineup,
    undefined,
    { columns: { Result: "left out" } },
  );
  const column = guessed?.block.columns.find((one) => one.title === title);
  expect(inWords(column?.field.evidence)).toBe(told);
  expect(guessed?.map.columns?.[title]).toBe(mapped);
});

test("a block of which few lines find a row says why the first does not", () => {
  const [guessed] = guessMaps(
    book([
      ["Panel", "Part", "Pole", "R (µΩ)"],
      ["H01", "Q0", "L1", 31],
      ["X77", "Q0", "L2", 31],
    ]),
    lineup,
  );
  expect(guessed?.confidence).toBe("open");
  expect(inWords(guessed?.evidence)).toMatch(
    /^1 of 2 lines .*; row 3: panel or section "X77" has no row/,
  );
});

test.each([
  ["1. Insulation resistance (MΩ), 5 kV DC", "MΩ", 520],
  ["Insulation resistance [GΩ]", "GΩ", 520_000],
  ["Insulation resistance (kV)", undefined, undefined],
  ["Insulation resistance (MΩ or GΩ)", undefined, undefined],
  ["Insulation resistance (MΩ), short tests (GΩ)", undefined, undefined],
])(
  "a heading %s over titles without a unit gives it, also where the map is read again",
  (heading, unit, reading) => {
    const { maps, tables } = read(
      book([
        ["Panel", "H01"],
        [],
        [heading],
        ["Test", "L1-E", "L2-E", "L3-E", "Limit"],
        ["Before HV", 520, 610, 480, 100],
        ["After HV", 510, 600, 470, 100],
        [],
        ["2. Contact resistance (µΩ), 100 A"],
        ["Part", "L1", "L2", "L3"],
        ["Q0", 31, 32, 33],
      ]),
    );
    const of = (id: string) => tables.find(({ kind }) => kind.id === id)?.rows ?? [];
    expect(maps.find(({ kind }) => kind === "insulation")?.unit).toBe(unit);
    expect(of("insulation")[0]?.reading).toBe(reading);
    const limit = tables.find(({ kind }) => kind.id === "insulation")?.table.ownLayout?.stated?.(0);
    expect(limit?.get("minimum")?.value).toBe(reading && (reading * 100) / 520);
    expect(of("contact").map((row) => row.reading)).toEqual([31, 32, 33]);
  },
);

test.each([
  ["a title with a unit", ["R (GΩ)"], 52, 52_000],
  ["a column of units", ["R", "Unit"], 52, 52_000],
  ["a cell with a unit", ["R"], "52 GΩ", 52_000],
])("%s counts before the heading's unit", (_which, titles, value, reading) => {
  const { tables } = read(
    book([
      ["Insulation resistance (MΩ)"],
      ["Panel", "Part", "Combination", "Stage", ...titles],
      ["H01", "Circuit", "L1-E", "before", value, ...(titles.length > 1 ? ["GΩ"] : [])],
    ]),
  );
  expect(tables[0]?.rows[0]?.reading).toBe(reading);
});

test("a block none of whose lines finds a row is told also where another block of its sheet is read", () => {
  const told: unknown[] = [];
  const guessed = guessMaps(
    book([
      ["Panel", "Part", "Combination", "Stage", "R (GΩ)"],
      ["H01", "Circuit", "L1-E", "before", 52],
      [],
      ["Panel", "Breaker", "Pole", "R (µΩ)"],
      ["X77", "Q0", "L1", 31],
      ["X78", "Q0", "L1", 31],
    ]),
    lineup,
    (...said) => told.push(said),
  );
  expect(guessed.map(({ map }) => map.kind)).toEqual(["insulation"]);
  expect(inWords(told)).toEqual([
    ["Own", 5, expect.stringMatching(/^panel or section "X77" has no row/)],
  ]);
});

test.each([
  ["Q0", "part", 3],
  ["Breaker Q0", "part", 3],
  ["L1", "position", 0],
])("under Pole beside L1, L2, L3 stands %s, which is the %s", (text, field, count) => {
  const snapshot = book([
    ["Panel", "Pole", "L1 (µΩ)", "L2 (µΩ)", "L3 (µΩ)"],
    ["H01", text, 31, 32, 33],
  ]);
  const { maps, tables } = read(snapshot);
  expect(
    inWords(guessMaps(snapshot, lineup).map(({ block }) => block.columns[1]?.field.evidence)),
  ).toEqual(count === 0 ? [] : ["part: its cells name no phase, and the titles beside it do"]);
  expect(maps.map(({ columns }) => columns?.Pole)).toEqual(count === 0 ? [] : [field]);
  expect(tables.flatMap(({ rows }) => rows)).toHaveLength(count);
});
