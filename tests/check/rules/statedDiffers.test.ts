import { expect, test } from "vitest";
import { guessMaps } from "../../../src/intake/ownLayout/guessMaps";
import type { CellValue } from "../../../src/records/kind";
import type { Snapshot } from "../../../src/sheets/snapshot";
import { sampleLineup } from "../../support/lineups";
import { ofRule } from "../support";

const lineup = sampleLineup();
const LIMIT = 5000;

/** Invented insulation sheet with its own factor, limit and result; 1.25 is the factor from 25 °C to 20 °C (ANSI/NETA table 100.14, read). */
const readings = [
  ["H01", "L1-E", 40_000],
  ["H01", "L2-E", 41_000],
  ["H01", "L3-E", 42_000],
  ["H02", "L1-E", 43_000],
  ["H02", "L2-E", 3000],
] as const;
const titles = [
  "Panel",
  "Part",
  "Connection",
  "Stage",
  "R (MΩ)",
  "Temp (°C)",
  "R at 20 °C (MΩ)",
  "Limit (MΩ)",
  "Result",
  "Test voltage (V)",
];

/** The sheet with some cells changed: a value, or a formula with the value that it comes to. */
const found = (changes: Readonly<Record<string, { value?: CellValue; formula?: string }>> = {}) => {
  const rows: CellValue[][] = [
    titles,
    ...readings.map(([panel, phase, r]) => [
      panel,
      "Circuit",
      phase,
      "before",
      r,
      25,
      r * 1.25,
      LIMIT,
      r * 1.25 < LIMIT ? "FAIL" : "pass",
      5000,
    ]),
  ];
  const name = (row: number, column: number) => `${String.fromCharCode(65 + column)}${row + 1}`;
  const snapshot: Snapshot = {
    lineup,
    sheets: [
      {
        name: "IR",
        tables: [],
        cells: {
          rowCount: rows.length,
          columnCount: titles.length,
          cell: (row, column) => changes[name(row, column)]?.value ?? rows[row]?.[column] ?? null,
          formula: (row, column) => {
            if (row === 0) return undefined;
            const change = changes[name(row, column)];
            if (change) return change.formula;
            return [`E${row + 1}*1.25`, "$B$20", `IF(G${row + 1}>=H${row + 1},"pass","FAIL")`][
              column - 6
            ];
          },
        },
      },
    ],
  };
  const maps = guessMaps(snapshot, lineup).map(({ map }) => map);
  return ofRule({ ...snapshot, maps }, "stated-differs").map(({ address, weight, message }) => [
    address,
    weight,
    message,
  ]);
};

test("a sheet whose own figures and words agree is left in peace", () => {
  expect(found()).toEqual([]);
});

test.each([
  [
    "a pass beside a failing reading",
    { I6: { value: "OK" } },
    "I6",
    "stop",
    /says that it passes; .* it is Fail/,
  ],
  [
    "a fail beside a passing one",
    { I2: { value: "n.i.O." } },
    "I2",
    "query",
    /says that it fails; .* it is Pass/,
  ],
  [
    "a softer limit",
    { H3: { value: 500 } },
    "H3",
    "stop",
    /is 500 on the sheet; its criterion gives 5000, which is stricter/,
  ],
  ["a stricter limit", { H3: { value: 9000 } }, "H3", "note", /that is what it is judged by/],
  [
    "another factor",
    { G4: { value: 42_000 * 1.58, formula: "E4*1.58" } },
    "G4",
    "query",
    /the sheet's value is 1\.26 times that/,
  ],
  [
    "a formula unlike its neighbours",
    { I3: { value: "pass", formula: 'IF(G3>=100,"pass","FAIL")' } },
    "I3",
    "query",
    /unlike the others in its column, by =IF\(G3>=100/,
  ],
  [
    "a result typed among formulas",
    { I3: { value: "pass" } },
    "I3",
    "query",
    /is typed, where others have a formula such as =IF\(G2>=H2/,
  ],
])("%s is found at its cell", (_name, changes, address, weight, says) => {
  expect(found(changes)).toEqual([[address, weight, expect.stringMatching(says)]]);
});

test("what departs alike is one finding", () => {
  const soft = Object.fromEntries(
    [2, 3, 4, 5, 6].map((row) => [`H${row}`, { value: 100, formula: "$B$20" }]),
  );
  expect(found(soft)).toEqual([
    ["H2", "stop", expect.stringMatching(/The same applies to H3, H4, H5, H6\./)],
  ]);
});

/** Invented sheets of poles, one line a breaker or one a pole, with a spread of their own. */
const poles = (rows: readonly (readonly CellValue[])[]) => {
  const snapshot: Snapshot = {
    lineup,
    sheets: [
      {
        name: "Poles",
        tables: [],
        cells: {
          rowCount: rows.length,
          columnCount: rows[0]?.length ?? 0,
          cell: (row, column) => rows[row]?.[column] ?? null,
          formula: () => undefined,
        },
      },
    ],
  };
  const maps = guessMaps(snapshot, lineup).map(({ map }) => map);
  return ofRule({ ...snapshot, maps }, "stated-differs").map(({ address, weight, expected }) => [
    address,
    weight,
    expected,
  ]);
};

// 30, 31.5 and 33 µΩ, by hand: greatest above lowest 10 %, range over mean 9.52 %, over greatest 9.09 %,
// greatest departure from the mean 4.76 %.
test.each([
  ["Spread %", 10, []],
  ["Spread (%)", 9.5, []],
  ["Max deviation (%)", 4.8, []],
  ["Abweichung %", 0.1, []],
  ["Spread %", 22, [["H2", "query", "10"]]],
  ["Deviation", 1.5, [["H2", "query", "10"]]],
])(
  "a column %s of %d for three poles in a line is held against their readings",
  (title, spread, wanted) => {
    expect(
      poles([
        [
          "Panel",
          "Breaker",
          "R L1 (µΩ)",
          "R L2 (µΩ)",
          "R L3 (µΩ)",
          "Temp (°C)",
          "I test (A)",
          title,
        ],
        ["H01", "Q0", 30, 31.5, 33, 20, 200, spread],
      ]),
    ).toEqual(wanted);
  },
);

test("a spread stated pole by pole, and one of operating times, are held against theirs", () => {
  const line = (pole: string, r: number, spread: CellValue) => ["H01", "Q0", pole, r, 20, spread];
  expect(
    poles([
      ["Panel", "Breaker", "Pole", "R (µΩ)", "Temp (°C)", "Deviation %"],
      line("L1", 30, 0),
      line("L2", 31.5, 5),
      line("L3", 33, 30),
    ]),
  ).toEqual([["F4", "query", "10"]]);
  const times = (spread: number) =>
    poles([
      ["Panel", "Breaker", "Operation", "L1 (ms)", "L2 (ms)", "L3 (ms)", "Pole spread (ms)"],
      ["H01", "Q0", "Close", 52, 52.5, 53.2, spread],
    ]);
  expect(times(1.2)).toEqual([]);
  expect(times(2)).toEqual([["G2", "query", "1.2"]]);
});
