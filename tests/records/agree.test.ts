import { describe, expect, it } from "vitest";
import type { Lineup } from "../../src/lineup/lineup";
import { writeRanges } from "../../src/quantities/measuringRange";
import { memoizeFor } from "../../src/quantities/memoizeFor";
import { evaluate } from "../../src/records/evaluate";
import type { CellValue, RecordKind, Row } from "../../src/records/kind";
import { kindFor } from "../../src/records/kindFor";
import { KINDS } from "../../src/records/kinds";
import { formulaIn, tableReference } from "../../src/sheets/cells/formula";
import type { Plan } from "../../src/sheets/plan/plan";
import { curveThrough, type Filler, filledPlan, STRAYING, straying } from "../support/fill";
import { computeFormula, isError, type Value } from "../support/formula";
import { equippedInFull, longLineup } from "../support/lineups";
import { between, pick, random, shown, spread } from "../support/random";

/**
 * A record's computed column is declared twice, as the formula that a workbook stores and as the value
 * that the program computes. Here the stored formula itself is computed, with our worksheet functions
 * behind it, over entries as people type them: text with units, bounds, what cannot be read, blanks,
 * and numbers out of range.
 */
const BLANKS = [null, "", "  "];
const UNREADABLE = ["OL", "n/a", "not done", "5 kV 3", true, "1,250", "1.125 "];

const resistance =
  (unit: string, small: string, least: number, most: number) => (next: () => number) => {
    const number = shown(spread(next, least, most), 3);
    return pick<CellValue>(next, [
      number,
      number,
      number,
      String(shown(number, 1)),
      `${shown(number, 2)} ${unit}`,
      `${shown(number, 2)} ${small}`,
      `> ${shown(number, 2)} ${unit}`,
      `< ${shown(number, 2)} ${unit}`,
      "> 2 TΩ",
      "< 5 MΩ",
      0,
      -number,
      ...BLANKS,
      ...UNREADABLE,
    ]);
  };

const condition = (unit: string, least: number, most: number) => (next: () => number) => {
  const number = shown(between(next, least, most), 1);
  const outside = most + 3 * (most - least);
  return pick<CellValue>(next, [
    ...Array<number>(12).fill(number),
    `${number} ${unit}`,
    String(number),
    `> ${number} ${unit}`,
    outside,
    -outside,
    0,
    ...BLANKS,
    ...UNREADABLE,
  ]);
};

const megohms = resistance("MΩ", "GΩ", 10, 2e5);
const microhms = resistance("µΩ", "mΩ", 15, 120);

const AS_TYPED: Readonly<Record<string, Filler>> = {
  GearDocuments: ({ part }, next) => ({
    approved: part === "INV-1" ? "A" : pick<CellValue>(next, ["A", "A", "A", 3, ...BLANKS]),
    found: pick<CellValue>(next, ["A", "A", "a", " A", "Rev. A", "rev B", "B", 3, "3", ...BLANKS]),
  }),
  GearPermits: (_row, next) => ({
    number: pick<CellValue>(next, ["P-1", "P-1", 17, ...BLANKS]),
    from: pick<CellValue>(next, [46340, 46340, 46341, "2026-11-14", ...BLANKS]),
    to: pick<CellValue>(next, [46340, 46342, 46342, "2026-11-16", ...BLANKS]),
    date: pick<CellValue>(next, [46340, 46340.9, 46341, 46342.5, 46343, "today", ...BLANKS]),
  }),
  GearHandling: (_row, next) => ({
    mass: pick<CellValue>(next, [800, 800, 800, 800, 800, 1200, "800", "800 kg", ...BLANKS]),
    capacity: pick<CellValue>(next, [
      600,
      800,
      ...Array<number>(9).fill(3000),
      "3000",
      "3 t",
      ...BLANKS,
    ]),
    gearDue: pick<CellValue>(next, [...Array<number>(9).fill(46340), 46339, "soon", ...BLANKS]),
    date: pick<CellValue>(next, [
      ...Array<number>(9).fill(46340),
      46340.5,
      46341,
      "today",
      ...BLANKS,
    ]),
    condition: pick<CellValue>(next, [
      ...Array<string>(9).fill("Sound"),
      "sound",
      "Damaged",
      "wet",
      ...BLANKS,
    ]),
    indicator: pick<CellValue>(next, [
      ...Array<string>(9).fill("Not tripped"),
      "none fitted",
      "None fitted",
      "Tripped",
      "?",
      ...BLANKS,
    ]),
  }),
  GearInspection: (_row, next) => ({
    released: pick<CellValue>(next, [
      "Released",
      "released",
      "Waived in writing",
      "Not released",
      "soon",
      ...BLANKS,
    ]),
    by: pick<CellValue>(next, [...many(() => "B. Client"), ...BLANKS]),
    date: pick<CellValue>(next, [...many(() => 46340), ...BLANKS]),
  }),
  GearInstallation: (_row, next) => ({ state: state(next) }),
  GearDimensions: (_row, next) => ({
    reading: pick<CellValue>(next, [2065, 1800, 5, "2065", "2 m", "> 2000", 0, ...BLANKS, "?"]),
    least: pick<CellValue>(next, [1800, 1800, "1800", "drawing", ...BLANKS]),
    most: pick<CellValue>(next, [2500, 2000, "2500", ...BLANKS, null, null]),
  }),
  GearFunction: (_row, next) => ({ state: state(next) }),
  GearInsulation: (_row, next) => ({
    testVoltage: pick<CellValue>(next, [5000, 5000, 5000, 1000, "5000", "5 kV", 0, ...BLANKS]),
    r30s: megohms(next),
    reading: megohms(next),
    r10min: megohms(next),
    temperature: condition("°C", -10, 60)(next),
  }),
  GearWithstand: (_row, next) => ({
    temperature: condition("°C", 0, 40)(next),
    pressure: condition("kPa", 85, 104)(next),
    humidity: condition("%", 20, 80)(next),
    surface: condition("°C", 5, 40)(next),
    applied: mostly(next, pick(next, [22.4, 27, 28, 37.5, 50]), [15, "27 kV", "> 20 kV", 80]),
    duration: pick<CellValue>(next, [59, 60, 60, 61, "60", "1 min", ...BLANKS]),
    discharge: pick<CellValue>(next, ["No", "No", "No", "no", "Yes", "yes", "none", ...BLANKS]),
  }),
  GearContact: (_row, next) => ({
    testCurrent: pick<CellValue>(next, [100, 100, 200, 40, "100", "100 A", ...BLANKS]),
    reading: microhms(next),
    temperature: condition("°C", -20, 60)(next),
    maximum: pick<CellValue>(next, [50, 50, "50", "50 µΩ", "see plate", ...BLANKS]),
  }),
  GearTorque: (_row, next) => ({
    applied: pick<CellValue>(next, [
      ...many(() => shown(between(next, 30, 75), 1)),
      60,
      40,
      "60",
      "60 N·m",
      0,
      ...BLANKS,
      ...UNREADABLE,
    ]),
    marked: word(next),
    rechecked: word(next),
  }),
  GearControl: (_row, next) => ({
    continuity: mostly(next, "OK", ["ok", "Not OK", "done"]),
    ferrules: mostly(next, "OK", ["ok", "Not OK"]),
    testVoltage: pick<CellValue>(next, [250, 500, 500, 500, 1000, "500", "500 V", ...BLANKS]),
    reading: resistance("MΩ", "kΩ", 0.2, 2000)(next),
    applied: pick<CellValue>(next, [0.9, 1, 1.2, 1.2, 1.2, "1.2", "1.2 kV", ...BLANKS]),
    duration: pick<CellValue>(next, [0.5, 1, 60, 60, 60, "60", "1 min", ...BLANKS]),
    discharge: pick<CellValue>(next, ["No", "No", "No", "no", "Yes", "yes", "none", ...BLANKS]),
  }),
  GearMechanism: (_row, next) => ({
    closingLow: mostly(next, 85, [95, "85", "85 V", "> 80"]),
    closingHigh: mostly(next, 126, [110, "126"]),
    openingLow: mostly(next, 65, [80, "65", 0]),
    openingHigh: mostly(next, 126, [100, "126 V"]),
    pickup: mostly(next, 80, [120, "80 V"]),
    dropout: mostly(next, 50, [10, 100, "50 V"]),
    charged: mostly(next, 12, [15, 16, "12", "12 s"]),
    counterBefore: mostly(next, 20, ["20", "n/a"]),
    counterAfter: mostly(next, 32, [31, "32"]),
    made: mostly(next, 12, [11, 13, "12", "a dozen"]),
  }),
  GearTiming: (row, next) => {
    const time = () =>
      mostly(
        next,
        shown(row.operation === "closing" ? between(next, 47, 49) : between(next, 26, 28), 1),
        [shown(between(next, 10, 80), 1), "45", "45 ms", 0, -3, "OL"],
      );
    return {
      controlV: pick<CellValue>(next, [110, 110, 110, 110, 104.5, 90, "110", "110 V", ...BLANKS]),
      l1: time(),
      l2: time(),
      l3: time(),
    };
  },
  GearGas: (_row, next) => ({
    reading: pick<CellValue>(next, [
      ...many(() => shown(between(next, 0.42, 0.65), 3)),
      ...many(() => shown(between(next, 0.545, 0.57), 3)),
      ...many(() => shown(between(next, 0.545, 0.57), 3)),
      "5.6 bar",
      "0.56",
      "> 0.5 MPa",
      0,
      ...BLANKS,
      ...UNREADABLE,
    ]),
    temperature: condition("°C", -10, 40)(next),
    pressure: condition("kPa", 90, 104)(next),
    alarmAt: mostly(next, 0.505, [0.48, "0.5", "5 bar"]),
    lockoutAt: mostly(next, 0.475, [0.5, "0.48"]),
    tight: mostly(next, "No leak found", ["no leak found", "Leak found", "?"]),
    leak: pick<CellValue>(next, [0.2, 0.6, "0.2", "0.2 %", ...many(() => null), ...BLANKS]),
  }),
  GearEarthing: (_row, next) => ({
    testCurrent: pick<CellValue>(next, [30, 30, 30, 100, 10, "30", "30 A", 0, -30, ...BLANKS]),
    reading: pick<CellValue>(next, [
      ...many(() => shown(spread(next, 0.005, 8), 3)),
      "150 mV",
      "0.15",
      "< 1 mV",
      0,
      -0.2,
      ...BLANKS,
      ...UNREADABLE,
    ]),
  }),
  GearCurrentTransformers: (row, next) => {
    const share = pick(next, [0.02, 0.3, 1, 1, 1, 1, 1.08, 1.2, 1.4]);
    return {
      primary: pick<CellValue>(next, [...many(() => 600 * share), "600", "600 A", 0, ...BLANKS]),
      secondary: pick<CellValue>(next, [
        ...many(() => shown(Number(row.ratedSecondary) * share * between(next, 0.995, 1.005), 4)),
        "0.998",
        "998 mA",
        ...BLANKS,
      ]),
      method: pick<CellValue>(next, [...many(() => null), "Current", "Voltage", "voltage"]),
      polarity: pick<CellValue>(next, [...many(() => "As marked"), "as marked", "Reversed", "?"]),
      winding: pick<CellValue>(next, [...many(() => shown(between(next, 2.6, 3.4), 3)), "3 Ω", 0]),
      temperature: condition("°C", 10, 30)(next),
      testVoltage: pick<CellValue>(next, [250, 500, 500, 500, "500", ...BLANKS]),
      insulationRead: resistance("MΩ", "GΩ", 20, 5000)(next),
      burden: pick<CellValue>(next, [...many(() => shown(between(next, 2, 11), 1)), "5 VA", null]),
    };
  },
  GearExcitation: (_row, next) => ({
    ...curveThrough(between(next, 80, 160), pick(next, [1.35, 1.35, 1.35, 0.6])),
    ...pick<Record<string, CellValue>>(next, [
      ...many(() => ({})),
      { v10: null, a10: null },
      { v10: null },
      { v1: null, a1: null },
      { v4: "60 V" },
      { a4: "2 mA" },
      { v5: "OL" },
      { a7: "> 3 A" },
      { v3: 0 },
      { a2: 5 },
    ]),
  }),
  GearIndexCurve: (_row, next) => ({
    testVoltage: pick<CellValue>(next, [...many(() => 5000), 1000, "5 kV", ...BLANKS]),
    s30: megohms(next),
    min1: pick<CellValue>(next, [...many(() => shown(spread(next, 500, 8000), 1)), megohms(next)]),
    min10: megohms(next),
    temperature: condition("°C", 10, 30)(next),
  }),
  GearVoltageTransformers: (row, next) => {
    const share = pick(next, [0.02, 0.5, 0.8, 1, 1, 1, 1.2, 1.3]);
    return {
      primary: pick<CellValue>(next, [...many(() => shown(6351 * share, 0)), "6 kV", 0, ...BLANKS]),
      secondary: pick<CellValue>(next, [
        ...many(() => shown(Number(row.ratedSecondary) * share * between(next, 0.995, 1.005), 3)),
        "63.5",
        "63.5 V",
        ...BLANKS,
      ]),
      polarity: pick<CellValue>(next, [...many(() => "As marked"), "as marked", "Reversed", "?"]),
      testVoltage: pick<CellValue>(next, [250, 500, 500, 500, 500, "500"]),
      insulationRead: resistance("MΩ", "GΩ", 20, 5000)(next),
      fuses: pick<CellValue>(next, [...many(() => "To drawing"), "to drawing", "Not to drawing"]),
      earth: pick<CellValue>(next, [...many(() => "One point"), "None", "several", null]),
      burden: pick<CellValue>(next, [...many(() => shown(between(next, 2, 32), 1)), "5 VA", null]),
    };
  },
  GearMetering: (row, next) => {
    const reference = shown((Number(row.pointPercent) + between(next, -6, 6)) * 6, 1);
    return {
      reference: pick<CellValue>(next, [...many(() => reference), String(reference), ...BLANKS]),
      shown: pick<CellValue>(next, [
        ...many(() => shown(reference + between(next, -12, 12), 1)),
        "300 A",
        ...BLANKS,
      ]),
    };
  },
  GearProtection: (row, next) => {
    const about = typeof row.multiple === "number" ? between(next, 0.05, 3) : row.pickup;
    return {
      reading: pick<CellValue>(next, [
        ...many(() => shown(Number(about) * between(next, 0.93, 1.07), 3)),
        row.curve === "definite" && typeof row.multiple === "number" ? 0.12 : 1.2,
        "0.4 s",
        "0.4",
        0,
        ...BLANKS,
      ]),
      trips: word(next),
      restraint: pick<CellValue>(next, [null, 1, 2, 5, "2 A"]),
      direction: pick<CellValue>(next, [...many(() => "As set"), "as set", "Not as set", null]),
      asLeftPickup: pick<CellValue>(next, [...many(() => null), row.pickup ?? null, 3]),
      asLeftSetting: pick<CellValue>(next, [...many(() => null), row.setting ?? null, 0.3]),
      asLeftOrder: pick<CellValue>(next, [...many(() => null), "SO-7 rev 2", "so-7 rev 1", " "]),
    };
  },
  GearCable: (row, next) => ({
    testVoltage: pick<CellValue>(next, [500, ...many(() => 5000), "1 kV", null]),
    insulationRead: resistance("MΩ", "GΩ", 1, 60_000)(next),
    sheathRead: resistance("MΩ", "GΩ", 0.5, 400)(next),
    applied: mostly(next, pick(next, [6, 10, 24, 21]), [shown(between(next, 4, 30), 1), "24 kV"]),
    minutes: pick<CellValue>(next, [
      ...many(() => (row.wave === "AC" ? 1440 : 30)),
      10,
      "30 min",
      null,
    ]),
    discharge: pick<CellValue>(next, [...many(() => "No"), "no", "Yes", "none", null]),
  }),
};

const BESIDE: Readonly<Record<string, Filler>> = Object.fromEntries(
  STRAYING.map((table) => [table, straying(table, [...BLANKS, ...UNREADABLE])]),
);

/** Nearly always what is right, so that whole rows of many cells come out right. */
const mostly = (next: () => number, right: CellValue, others: readonly CellValue[]) =>
  next() < 0.85 ? right : pick<CellValue>(next, [...others, ...BLANKS]);

const state = (next: () => number) =>
  pick<CellValue>(next, ["OK", "OK", "ok", "Not OK", "Not applicable", "n/a", ...BLANKS]);

const word = (next: () => number) =>
  pick<CellValue>(next, [
    ...Array<string>(12).fill("Yes"),
    "yes",
    "No",
    "no",
    "perhaps",
    ...BLANKS,
  ]);

const many = <T>(make: () => T): T[] => Array.from({ length: 8 }, make);

const LINEUPS = {
  "NETA, solid, AC": equippedInFull(
    longLineup(24, { insulation: { correction: "solid", baseC: 20 } }),
  ),
  "NETA, oil to 40 °C, DC in air": equippedInFull(
    longLineup(24, {
      insulation: { correction: "oil", baseC: 40 },
      withstand: { wave: "DC", seconds: 60, gapM: 0.16 },
    }),
  ),
  "IEC, none, AC in air, own criteria": equippedInFull(
    longLineup(24, {
      basis: "IEC",
      insulation: { correction: "none", baseC: 20 },
      withstand: { wave: "AC", seconds: 120, gapM: 0.12 },
      criteria: [
        { from: "project", quantity: "insulation minimum MΩ", value: 2000, document: "invented" },
        { from: "project", quantity: "joint resistance µΩ", value: 40, document: "invented" },
      ],
    }),
  ),
  "IEC, halving, no minimum": equippedInFull(
    longLineup(24, {
      basis: "IEC",
      insulation: { correction: "halving", baseC: 20 },
    }),
  ),
  "IEC, ranges of instruments": equippedInFull(
    longLineup(24, {
      basis: "IEC",
      instruments: [
        {
          id: "X-1",
          kind: "Invented",
          ranges: [
            { most: 200, unit: "GΩ" },
            { least: 250, most: 5000, unit: "V" },
            { least: 10, most: 30, unit: "°C" },
          ],
        },
        { id: "X ?2", kind: "Invented", ranges: [{ least: 100, most: 900, unit: "TΩ" }] },
        {
          id: "X-3",
          kind: "Invented",
          ranges: [
            { most: 150, unit: "µΩ" },
            { most: 60, unit: "s" },
          ],
        },
      ],
    }),
  ),
};

/** The same columns as `evaluate` gives, from the formulas that a workbook would store. */
function computedByFormula(
  kind: RecordKind,
  rows: readonly Row[],
  lineup: Parameters<typeof evaluate>[2],
): Record<string, Value>[] {
  const ref = tableReference(kind.table, kind.columns);
  const byHeader = new Map(kind.columns.map(({ header, id }) => [header, id]));
  const idOf = (header: string) => byHeader.get(header) ?? `no column ${header}`;
  const written = evaluate(kind, rows, lineup);
  const listed: Readonly<Record<string, readonly Value[]>> = {
    Id: lineup.instruments.map(({ id }) => id),
    Ranges: lineup.instruments.map(({ ranges = [] }) => writeRanges(ranges)),
  };
  const cells: Record<string, Value>[] = rows.map((row) => ({ ...row }));
  for (const column of kind.columns) {
    const found = rows.map((row, at) => {
      const own = column.own?.(row, lineup);
      if (own) return own.value;
      const formula = formulaIn(column, ref, lineup)(row);
      // What has no formula stands as the value that the builder writes.
      if (formula === undefined) return written[at]?.[column.id] ?? null;
      return computeFormula(formula, {
        cell: (header) => cells[at]?.[idOf(header)] ?? null,
        column: (header) => listed[header] ?? cells.map((row) => row[idOf(header)] ?? null),
        span: (from, to) => {
          const ids = kind.columns.map(({ id }) => id);
          return ids
            .slice(ids.indexOf(idOf(from)), ids.indexOf(idOf(to)) + 1)
            .map((id) => cells[at]?.[id] ?? null);
        },
      });
    });
    for (const [at, value] of found.entries())
      (cells[at] as Record<string, Value>)[column.id] = value;
  }
  return cells;
}

/** The rows of a kind as typed; those of a kind that has only a few stand again and again. */
function typedRows(kind: RecordKind, lineup: Lineup, start: number): Row[] {
  const next = random(start);
  const planned = kind.rows(lineup);
  return Array.from({ length: Math.max(planned.length, 40) }, (_, at) => {
    const row = planned[at % planned.length] as Row;
    const typed = { ...row, ...(AS_TYPED[kind.table] ?? BESIDE[kind.table])?.(row, next) };
    const { instruments } = lineup;
    return instruments.some(({ ranges }) => ranges)
      ? { ...typed, instrument: pick(next, INSTRUMENTS) }
      : typed;
  });
}

/** The plan of a lineup, blank and filled in: made once for all its record kinds. */
const plansOf = memoizeFor((lineup: Lineup) => ({
  blank: filledPlan(lineup, 1, {}),
  full: filledPlan(lineup, 2),
}));

const INSTRUMENTS = ["X-1", "x-1 ; X ?2", "X-3,X-1", "X-3", "X-9", "X ?2", " X-1", null];

const CASES = KINDS.flatMap((kind) =>
  Object.entries(LINEUPS).map(([name, lineup], start) => ({
    kind: kindFor(kind, lineup),
    name,
    lineup,
    start,
  })),
);

describe("a stored formula gives what the program computes", () => {
  it.each(CASES)("$kind.id: $name", ({ kind, lineup, start }) => {
    const rows = typedRows(kind, lineup, start + 1);
    const ours = evaluate(kind, rows, lineup);
    const stored = computedByFormula(kind, rows, lineup);
    expect(rows.length).toBeGreaterThan(20);
    const differences = kind.columns
      .filter(({ formula }) => formula)
      .flatMap(({ id }) =>
        rows.flatMap((row, at) => {
          const [mine, theirs] = [ours[at]?.[id] ?? "", stored[at]?.[id] ?? ""];
          return Object.is(mine, theirs)
            ? []
            : [`${id}: ${show(mine)} against ${show(theirs)} in ${JSON.stringify(row)}`];
        }),
      );
    expect(differences).toEqual([]);
  });

  it.each(CASES)(
    "$kind.id: $name: what is given stays as it is when readings come in",
    ({ kind, lineup }) => {
      const given = kind.columns.filter(({ role, value }) => role === "given" && value);
      const rowsOf = (plan: Plan) =>
        evaluate(kind, plan.sheets.find(({ table }) => table === kind.table)?.rows ?? [], lineup);
      const { blank, full } = plansOf(lineup);
      const ofGiven = (rows: readonly Row[]) => rows.map((row) => given.map(({ id }) => row[id]));
      expect(ofGiven(rowsOf(full))).toEqual(ofGiven(rowsOf(blank)));
    },
  );

  it("over rows that reach every verdict and every sort of cell", () => {
    const seen = new Set<string>();
    for (const { kind, lineup, start } of CASES) {
      const rows = typedRows(kind, lineup, start + 1);
      for (const row of evaluate(kind, rows, lineup)) {
        seen.add(`${kind.id} ${row.result}`);
        for (const id of ["corrected", "polarization", "absorption"])
          if (typeof row[id] === "string") seen.add(String(row[id]).slice(0, 20));
      }
    }
    for (const { id } of KINDS)
      for (const verdict of ["Pass", "Fail", "Missing", "Inconclusive"])
        expect(seen).toContain(`${id} ${verdict}`);
    for (const start of ["not corrected", "The index is not mea", "The ratio is not mea", "n/a"])
      expect(seen).toContain(start);
    for (const start of ["> ", "< "])
      expect([...seen].some((text) => text.startsWith(start))).toBe(true);
  });
});

const show = (value: Value) => (isError(value) ? value.code : JSON.stringify(value));
