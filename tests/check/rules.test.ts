import { expect, test } from "vitest";
import { check } from "../../src/check/check";
import type { Finding } from "../../src/check/finding";
import { planFor } from "../../src/sheets/plan";
import { reconcile } from "../../src/sheets/reconcile";
import { recordTables } from "../../src/sheets/recordTable";
import { filledPlan, SOUND } from "../support/fill";
import { equipped, longLineup } from "../support/lineups";
import { type MemoryBook, memoryBook } from "../support/memoryBook";

const TODAY = 46_350;

/** A sound workbook: every row passes and nothing is to be said. */
const sound = (gapM?: number): MemoryBook => {
  const lineup = longLineup(3, {
    criteria: [
      { from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" },
    ],
    withstand: { wave: "AC", seconds: 60, ...(gapM ? { gapM } : {}) },
  });
  return memoryBook(
    filledPlan(lineup, 11, {
      ...SOUND,
      GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 27 }),
    }),
  );
};

const findingsOf = (book: MemoryBook, today = TODAY): readonly Finding[] => {
  const checked = check(book.snapshot, today);
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report.findings;
};

test("a sound workbook has no findings and every row passes", () => {
  const checked = check(sound().snapshot, TODAY);
  if (!checked.ok) throw new Error(checked.reason);
  expect(checked.report.findings).toEqual([]);
  const { pass, ...others } = checked.report.counts;
  expect(pass).toBeGreaterThan(50);
  expect(Object.values(others)).toEqual([0, 0, 0, 0]);
});

const I = "GearInsulation";
const W = "GearWithstand";
const C = "GearContact";
/** A row of each table: Bus section insulation "before" L1-E, its last "after", a breaker pole. */
const RESULT = "Result";

/** One fault in a sound workbook: what was done, which rule must find it, at which cell. */
const FAULTS: readonly [
  name: string,
  spoil: (book: MemoryBook) => void,
  rule: string,
  table: string,
  row: number,
  header: string,
  weight: Finding["weight"],
][] = [
  [
    "a reading deleted",
    (book) => book.set(I, 2, "R 1 min MΩ", null),
    "missing-reading",
    I,
    2,
    "R 1 min MΩ",
    "stop",
  ],
  [
    "a reading out of limits",
    (book) => book.set(I, 2, "R 1 min MΩ", 900),
    "out-of-limits",
    I,
    2,
    "R corrected MΩ",
    "stop",
  ],
  [
    "a contact resistance above the maker's",
    (book) => book.set(C, 1, "R µΩ", 80),
    "out-of-limits",
    C,
    1,
    "R at 20 °C µΩ",
    "stop",
  ],
  [
    "a disruptive discharge",
    (book) => book.set(W, 0, "Discharge", "Yes"),
    "out-of-limits",
    W,
    0,
    "Discharge",
    "stop",
  ],
  [
    "an over-range reading that does not reach the limit",
    (book) => book.set(I, 2, "R 1 min MΩ", "> 2 GΩ"),
    "inconclusive",
    I,
    2,
    "R corrected MΩ",
    "query",
  ],
  [
    "a test below the least voltage",
    (book) => book.set(I, 2, "Test V DC", 1000),
    "inconclusive",
    I,
    2,
    "R corrected MΩ",
    "query",
  ],
  [
    "a withstand test held too short",
    (book) => book.set(W, 1, "Duration s", 45),
    "inconclusive",
    W,
    1,
    "Duration s",
    "query",
  ],
  [
    "a withstand test below the required voltage",
    (book) => book.set(W, 1, "Applied kV", 26),
    "inconclusive",
    W,
    1,
    "Applied kV",
    "query",
  ],
  [
    "a withstand test above the required voltage",
    (book) => book.set(W, 1, "Applied kV", 28),
    "over-voltage",
    W,
    1,
    "Applied kV",
    "query",
  ],
  [
    "a temperature not recorded",
    (book) => book.set(I, 2, "Temperature °C", null),
    "missing-condition",
    I,
    2,
    "Temperature °C",
    "query",
  ],
  [
    "a name not recorded",
    (book) => book.set(C, 2, "Tested by", null),
    "missing-trail",
    C,
    2,
    "Tested by",
    "query",
  ],
  [
    "a reading that cannot be read",
    (book) => book.set(I, 2, "R 1 min MΩ", "see note"),
    "unreadable",
    I,
    2,
    "R 1 min MΩ",
    "query",
  ],
  [
    "a result typed over with another",
    (book) => book.set(C, 0, RESULT, "Fail"),
    "result-disagrees",
    C,
    0,
    RESULT,
    "stop",
  ],
  [
    "an intermediate value typed over",
    (book) => book.set(I, 2, "R corrected MΩ", 1),
    "result-disagrees",
    I,
    2,
    "R corrected MΩ",
    "stop",
  ],
  [
    "a result typed over with the same",
    (book) => book.set(C, 0, RESULT, "Pass"),
    "typed-over",
    C,
    0,
    RESULT,
    "query",
  ],
  [
    "a limit edited",
    (book) => book.set(I, 2, "Minimum MΩ", 500),
    "limit-differs",
    I,
    2,
    "Minimum MΩ",
    "stop",
  ],
  [
    "a maker's limit edited",
    (book) => book.set(C, 1, "Maximum µΩ", 90),
    "limit-differs",
    C,
    1,
    "Maximum µΩ",
    "stop",
  ],
  [
    "an instrument that nobody listed",
    (book) => book.set(C, 1, "Instrument", "X-9"),
    "instrument-unknown",
    C,
    1,
    "Instrument",
    "query",
  ],
  [
    "an instrument used after its calibration ran out",
    (book) => book.set(I, 2, "Date", 46_300 + 500),
    "instrument-lapsed",
    I,
    2,
    "Instrument",
    "stop",
  ],
  [
    "a date yet to come",
    (book) => book.set(C, 1, "Date", TODAY + 3),
    "future-date",
    C,
    1,
    "Date",
    "query",
  ],
  [
    "insulation after that is dated before the withstand test",
    (book) => book.set(I, 24, "Date", 46_341),
    "after-before-withstand",
    I,
    24,
    "Date",
    "query",
  ],
  [
    "a surface below the dew point",
    (book) => book.set(W, 2, "Surface °C", 2),
    "dew-point",
    W,
    2,
    "Surface °C",
    "stop",
  ],
  [
    "a pole that stands out from its neighbours",
    (book) => book.set(C, 1, "R µΩ", 48.5),
    "stands-out",
    C,
    1,
    "Above lowest",
    "query",
  ],
  [
    "a rated voltage of a row changed",
    (book) => book.set(W, 0, "Rated kV", 7.2),
    "given-differs",
    W,
    0,
    "Rated kV",
    "stop",
  ],
  [
    "a source rewritten",
    (book) => book.set(I, 2, "Sources of limits", "the maker says so"),
    "given-differs",
    I,
    2,
    "Sources of limits",
    "stop",
  ],
  [
    "a date typed as text",
    (book) => book.set(C, 1, "Date", "05/11/2026"),
    "unreadable",
    C,
    1,
    "Date",
    "query",
  ],
  [
    "a date as ISO text, after the calibration ran out",
    (book) => book.set(C, 1, "Date", "2027-05-01"),
    "instrument-lapsed",
    C,
    1,
    "Instrument",
    "stop",
  ],
  [
    "a humidity that cannot be",
    (book) => book.set(I, 2, "Humidity %", 150),
    "implausible",
    I,
    2,
    "Humidity %",
    "query",
  ],
  [
    "a test voltage with three noughts too many",
    (book) => book.set(I, 2, "Test V DC", 5_000_000),
    "implausible",
    I,
    2,
    "Test V DC",
    "query",
  ],
  [
    "a discharge written in small letters",
    (book) => book.set(W, 0, "Discharge", "yes"),
    "out-of-limits",
    W,
    0,
    "Discharge",
    "stop",
  ],
  [
    "a joint tightened too little",
    (book) => book.set("GearTorque", 0, "Applied N·m", 40),
    "out-of-limits",
    "GearTorque",
    0,
    "Deviation %",
    "stop",
  ],
  [
    "a joint that was not marked",
    (book) => book.set("GearTorque", 1, "Marked", "No"),
    "out-of-limits",
    "GearTorque",
    1,
    "Marked",
    "stop",
  ],
  [
    "an earthing drop above 3 V at 30 A",
    (book) => book.set("GearEarthing", 1, "Drop V", 3.5),
    "out-of-limits",
    "GearEarthing",
    1,
    "R mΩ",
    "stop",
  ],
  [
    "a breakdown of control wiring",
    (book) => book.set("GearControl", 2, "Discharge", "Yes"),
    "out-of-limits",
    "GearControl",
    2,
    "Discharge",
    "stop",
  ],
  [
    "control wiring without its withstand test",
    (book) => book.set("GearControl", 2, "Applied kV", null),
    "missing-reading",
    "GearControl",
    2,
    "Applied kV",
    "stop",
  ],
  [
    "times measured away from the rated control voltage",
    (book) => book.set("GearTiming", 0, "Control V", 90),
    "inconclusive",
    "GearTiming",
    0,
    "Slowest ms",
    "query",
  ],
  [
    "a window of the maker's edited",
    (book) => book.set("GearTiming", 0, "Most ms", 90),
    "limit-differs",
    "GearTiming",
    0,
    "Most ms",
    "stop",
  ],
  [
    "a counter not written down",
    (book) => book.set("GearMechanism", 1, "Counter after", null),
    "missing-trail",
    "GearMechanism",
    1,
    "Counter after",
    "query",
  ],
  [
    "gas below its filling pressure",
    (book) => book.set("GearGas", 1, "Pressure MPa", 0.52),
    "out-of-limits",
    "GearGas",
    1,
    "At 20 °C MPa",
    "stop",
  ],
  [
    "a gauge read without the barometer",
    (book) => book.set("GearGas", 1, "Barometer kPa", null),
    "missing-condition",
    "GearGas",
    1,
    "Barometer kPa",
    "query",
  ],
  ["a row copied", (book) => book.copyRow(C, 4), "duplicated-row", C, 33, "Panel", "query"],
];

test.each(FAULTS)("%s", (_name, spoil, rule, table, row, header, weight) => {
  const book = sound();
  const rows = book.snapshot.sheets
    .flatMap(({ tables }) => tables)
    .find(({ name }) => name === table);
  const at = row === 33 ? (rows?.rowCount ?? 0) : row;
  spoil(book);
  const found = findingsOf(book).filter((finding) => finding.rule === rule);
  expect(found.map(({ address, weight }) => [address, weight])).toEqual([
    [book.at(table, at, header), weight],
  ]);
  expect(found[0]?.message.length).toBeGreaterThan(20);
});

test("insulation after the withstand test at less than half of that before", () => {
  const book = sound();
  const table = book.snapshot.sheets.flatMap(({ tables }) => tables).find(({ name }) => name === I);
  const half = (table?.rowCount ?? 0) / 2;
  book.set(I, 2, "R 1 min MΩ", 300_000);
  book.set(I, half + 2, "R 1 min MΩ", 40_000);
  const found = findingsOf(book).filter(({ rule }) => rule === "fallen-after");
  expect(found.map(({ address }) => address)).toEqual([book.at(I, half + 2, "R corrected MΩ")]);
});

test("a header renamed is named, and the table's rows still count", () => {
  const book = sound();
  const rows = (of: MemoryBook) => {
    const checked = check(of.snapshot, TODAY);
    return checked.ok
      ? Object.values(checked.report.counts).reduce((sum, count) => sum + count, 0)
      : 0;
  };
  const before = rows(book);
  book.rename(W, "Applied kV", "Test kV");
  expect(rows(book)).toBe(before);
  const found = findingsOf(book).filter(({ rule }) => rule === "missing-column");
  expect(found.map(({ sheet, expected }) => [sheet, expected])).toEqual([
    ["Withstand", "Applied kV"],
  ]);
});

test("formulas without stored values are said once for a table, not at every cell", () => {
  const book = sound();
  book.forget();
  const tables = recordTables(book.snapshot);
  expect(findingsOf(book).map(({ rule }) => rule)).toEqual(tables.map(() => "not-calculated"));
});

test("a withstand test on a circuit whose insulation has not passed is found on each of its phases", () => {
  const book = sound();
  book.set(I, 0, "R 1 min MΩ", null);
  const found = findingsOf(book).filter(({ rule }) => rule === "withstand-before-insulation");
  expect(found.map(({ address }) => address)).toEqual(
    [0, 1, 2].map((row) => book.at(W, row, "Applied kV")),
  );
  expect(found[0]?.message).toContain("L1-E: Missing");
});

test("a row or table that the lineup needs and the workbook lacks", () => {
  const book = sound();
  book.removeRow(C, 3);
  expect(
    findingsOf(book)
      .filter(({ rule }) => rule === "missing-row")
      .map(({ message }) => message),
  ).toEqual([expect.stringContaining("=K0002 · Breaker Q0 · L1")]);
  book.removeTable(W);
  expect(
    findingsOf(book).some(({ rule, record }) => rule === "missing-row" && record === "withstand"),
  ).toBe(true);
});

test("a record kind that the lineup needs no row of has no sheet, and its lack is no finding", () => {
  const lineup = longLineup(2);
  const bare = {
    ...lineup,
    panels: lineup.panels.map((panel) => ({
      ...panel,
      joints: [],
      breaker: panel.breaker && { ...panel.breaker, gas: undefined },
    })),
  };
  const book = memoryBook(filledPlan(bare, 3));
  const sheets = book.snapshot.sheets.map(({ name }) => name);
  expect(sheets).toContain("Timing");
  expect(sheets).not.toContain("Torque");
  expect(sheets).not.toContain("Gas");
  expect(findingsOf(book).filter(({ rule }) => rule === "missing-row")).toEqual([]);
  const grown = reconcile(planFor(lineup), book.snapshot);
  expect(grown.create.map(({ planned }) => planned.sheet).sort()).toEqual(["Gas", "Torque"]);
});

test("gas below lockout is said as that", () => {
  const book = sound();
  book.set("GearGas", 1, "Pressure MPa", 0.4);
  const [found] = findingsOf(book).filter(({ rule }) => rule === "out-of-limits");
  expect(found?.message).toMatch(/"At 20 °C MPa" is 0\.\d+ MPa; "Lockout MPa" is 0\.48 MPa/);
});

test("conditions that the correction to the air needs are asked for only where it is made", () => {
  const corrected = sound(0.12);
  corrected.set(W, 0, "Pressure kPa", null);
  expect(findingsOf(corrected).some(({ rule }) => rule === "missing-condition")).toBe(true);
  const plain = sound();
  plain.set(W, 0, "Pressure kPa", null);
  expect(findingsOf(plain)).toEqual([]);
});

test.each([
  ["Cover", (book: MemoryBook) => book.set("GearProject", 4, "Value", "IEC")],
  ["Criteria", (book: MemoryBook) => book.set("GearCriteria", 0, "Value", 999)],
  ["Equipment", (book: MemoryBook) => book.set("GearEquipment", 0, "Value", 999)],
  ["Settings", (book: MemoryBook) => book.set("GearSettings", 0, "Sort", "B")],
  ["Panels", (book: MemoryBook) => book.set("GearPanels", 0, "Rated current A", 2500)],
])(
  "a change on the sheet %s that the records are not judged by is asked about",
  (sheet, change) => {
    const book = sound();
    change(book);
    // A record sheet's own givens are held against the lineup besides.
    const found = findingsOf(book).filter(({ rule }) => rule !== "given-differs");
    expect(found.map(({ rule, sheet }) => [rule, sheet])).toEqual([["sheets-differ", sheet]]);
  },
);

const ofRule = (book: MemoryBook, wanted: string) =>
  findingsOf(book).filter(({ rule }) => rule === wanted);

test("what does not apply is not required, and its reason is asked for", () => {
  const book = sound();
  book.set("GearInstallation", 2, "State", "Not applicable");
  expect(ofRule(book, "exempt-unexplained")).toMatchObject([
    { weight: "query", sheet: "Installation", message: expect.stringContaining("say in the rem") },
  ]);
  book.set("GearInstallation", 2, "Remarks", "Panel without a circuit.");
  const checked = check(book.snapshot, TODAY);
  // The stored result is still the old one: nobody calculated.
  expect(checked.ok && checked.report.findings.map(({ rule }) => rule)).toEqual([
    "result-disagrees",
  ]);
  expect(checked.ok && checked.report.counts).toMatchObject({ notRequired: 1, missing: 0 });
});

/** The hold point that guards the withstand test is the third of the usual points. */
test.each([
  ["not released", (book: MemoryBook) => book.set("GearInspection", 2, "Released", null), "is not"],
  [
    "released after the test",
    (book: MemoryBook) => book.set("GearInspection", 2, "Held on", 46_345),
    "released on 2026-11-19, after this record of 2026-11-16",
  ],
])("a withstand test that went ahead of its hold point, %s", (_name, spoil, why) => {
  const book = sound();
  expect(ofRule(book, "hold-not-released")).toEqual([]);
  spoil(book);
  const found = ofRule(book, "hold-not-released");
  // One for the section and one for each of the three panels, not one for each phase.
  expect(found.map(({ panel }) => panel)).toEqual(["Section 1", "=K0001", "=K0002", "=K0003"]);
  expect(found[0]).toMatchObject({ weight: "stop", sheet: "Withstand" });
  expect(found[0]?.message).toContain(why);
});

test("a hold point of each panel guards its panel and, with its neighbours, their section", () => {
  const lineup = longLineup(2, {
    inspectionPoints: [{ activity: "Covers", type: "hold", guards: ["insulation"], each: "panel" }],
  });
  const book = memoryBook(filledPlan(lineup, 4));
  expect(ofRule(book, "hold-not-released")).toEqual([]);
  book.set("GearInspection", 1, "Released", "Not released");
  expect(ofRule(book, "hold-not-released").map(({ panel }) => panel)).toEqual([
    "Section 1",
    "=K0002",
  ]);
});

test("a kind that the project leaves out has no sheet, is not asked for, and stands on the cover", () => {
  const left = { kind: "torque" as const, reason: "Done at the works", document: "INV-7" };
  const lineup = longLineup(2, { leaveOut: [left] });
  const book = memoryBook(filledPlan(lineup, 4));
  expect(book.snapshot.sheets.map(({ name }) => name)).not.toContain("Torque");
  expect(ofRule(book, "missing-row")).toEqual([]);
  expect(planFor(lineup).sheets[0]?.rows.at(-1)).toEqual({
    item: "Left out: Torque of bolted joints",
    value: "Done at the works (INV-7)",
  });
});

test("a site above 1000 m is asked about once, with the factor of IEC 62271-1 (2000 m: 1.13, read)", () => {
  const at = (altitudeM: number) => {
    const lineup = longLineup(2);
    const high = { ...lineup, ratings: { ...lineup.ratings, altitudeM } };
    return findingsOf(memoryBook(filledPlan(high, 5))).filter(({ rule }) => rule === "altitude");
  };
  expect(at(1000)).toEqual([]);
  expect(at(2000)).toHaveLength(1);
  expect(at(2000)[0]?.message).toContain("1.130");
});

test("a workbook that cannot be checked says why and what would be right", () => {
  const none = check({ sheets: [] }, TODAY);
  expect(none.ok ? "" : none.reason).toMatch(/no record tables; build them from a lineup/);
  const { sheets } = sound().snapshot;
  const strange = check({ sheets: sheets.filter(({ name }) => name !== "Panels") }, TODAY);
  expect(strange.ok ? "" : strange.reason).toMatch(/does not tell its lineup/);
});

test("the check leaves the snapshot as it was", () => {
  const book = sound();
  const cells = () =>
    book.snapshot.sheets.flatMap(({ tables }) =>
      tables.flatMap((table) =>
        Array.from({ length: table.rowCount }, (_, row) =>
          table.headers.map((_, column) => table.cell(row, column)),
        ),
      ),
    );
  const before = structuredClone(cells());
  findingsOf(book);
  expect(cells()).toEqual(before);
});

/** A lineup with transformers, relays, meters and cables, soundly tested; 12 kV cables by the project's own values. */
const soundlyEquipped = () => {
  const lineup = equipped(longLineup(3, { basis: "IEC" }));
  return memoryBook(
    filledPlan(
      {
        ...lineup,
        criteria: [
          ...lineup.criteria,
          { from: "project", quantity: "insulation minimum MΩ", value: 2000, document: "invented" },
          { from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" },
        ],
      },
      11,
      {
        ...SOUND,
        GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 22.4 }),
      },
    ),
  );
};
const T = "GearCurrentTransformers";

test("sound records of every kind come to no finding, though some limits are n/a", () => {
  const book = soundlyEquipped();
  expect(findingsOf(book)).toEqual([]);
  const said = book.snapshot.sheets
    .filter(({ name }) => name === "Current transformers")
    .flatMap(({ tables }) =>
      tables.flatMap(({ headers, cell, rowCount }) =>
        Array.from({ length: rowCount }, (_, row) => cell(row, headers.indexOf("Allowed ± %"))),
      ),
    );
  expect(said).toContain("n/a");
  expect(said).toContain(0.5);
});

test.each([
  ["a limit written off by hand", "Plate Ω at 75 °C", 6, "n/a", "limit-differs"],
  ["a reversed polarity", "Polarity", 0, "Reversed", "out-of-limits"],
  ["a polarity that is not answered", "Polarity", 0, null, "missing-condition"],
  ["an injection that the class gives no limit for", "Injected A", 3, 60, "inconclusive"],
] as const)("current transformers: %s", (_name, header, row, value, rule) => {
  const book = soundlyEquipped();
  book.set(T, row, header, value);
  book.forget();
  const found = findingsOf(book).filter(
    ({ rule, record }) => record === "currentTransformer" && rule !== "not-calculated",
  );
  expect(found.map(({ rule }) => rule)).toContain(rule);
});
