import fc from "fast-check";
import { expect, test } from "vitest";
import { type Lineup, lineupSchema } from "../../../src/lineup/lineup";
import { lineupOfSheets } from "../../../src/sheets/ours/lineupOfSheets";
import { planFor } from "../../../src/sheets/plan/plan";
import { equipped, longLineup, sampleLineup } from "../../support/lineups";
import { memoryBook } from "../../support/memoryBook";

const own: Lineup["criteria"] = [
  { from: "project", quantity: "joint resistance µΩ", value: 12, document: "invented" },
  {
    from: "maker",
    quantity: "contact resistance µΩ",
    value: 44,
    document: "invented",
    applies: ["Section 1"],
  },
];

test.each([
  ["the sample", sampleLineup()],
  ["own criteria", longLineup(12, { criteria: own })],
  [
    "a correction to the air",
    longLineup(2, { withstand: { wave: "DC", seconds: 90, gapM: 0.14 } }),
  ],
  ["every sort of equipment", equipped(longLineup(4))],
  [
    "settings of the project",
    longLineup(3, {
      leaveOut: [
        { kind: "gas", reason: "Gas is seen to by its maker (invented)", document: "INV-1" },
        { kind: "handling", reason: "Stands already" },
      ],
      inspectionPoints: [
        { activity: "Joints", type: "hold", guards: ["insulation", "withstand"], each: "panel" },
        { activity: "Papers, all", type: "review", each: "lineup", document: "INV-2" },
      ],
      checkItems: [
        {
          kind: "installation",
          item: "Pit drained, and dry",
          types: ["feeder"],
          document: "INV-3",
        },
        { kind: "function", item: "Horn", applies: ["=K0001", "Section 1"], document: "INV-3" },
        { kind: "dimensions", item: "Plinth", least: 90, most: 110, document: "INV-3" },
      ],
    }),
  ],
  [
    "plate, editions, phases and what was confirmed",
    longLineup(2, {
      purpose: "maintenance",
      editions: { "ANSI/NETA": "MTS-2015", "IEC 62271-1": "2007" },
      phases: ["A", "B", "C"],
      confirmed: [
        { criterion: "IEC 62271-1:2017, tightness, standardized leakage rates", by: "A. Engineer" },
      ],
      ratings: {
        voltagekV: 15,
        frequencyHz: 60,
        busbarA: 2000,
        controlV: 125,
        controlKind: "DC",
        controlWireV: 600,
        powerFrequencykV: 36,
        impulsekV: 95,
        altitudeM: 0,
      },
      withstand: { wave: "AC", seconds: 60, gapM: 0.2, parallelInternal: false },
    }),
  ],
  [
    "cables and gas by their plates",
    {
      ...longLineup(1),
      panels: longLineup(1).panels.map((panel) => ({
        ...panel,
        type: "tie" as const,
        cables: [
          {
            designation: "W1",
            ratedkV: 12,
            u0kV: 6.35,
            purpose: "maintenance" as const,
            sheathMm: 2.5,
          },
        ],
        breaker: panel.breaker && {
          ...panel.breaker,
          gas: {
            fillingMPa: 0.05,
            maximumMPa: 0.06,
            tolerancekPa: 2,
            monitorClass: 1,
            monitorSpanMPa: 0.25,
            sealed: true,
            pressure: "gauge" as const,
          },
        },
      })),
    },
  ],
  ["no inspection points", longLineup(2, { inspectionPoints: [] })],
  ["no correction", longLineup(2, { insulation: { correction: "none", baseC: 20 } })],
])("the lineup is told by its sheets alone: %s", (_name, lineup) => {
  expect(lineupOfSheets({ sheets: memoryBook(planFor(lineup)).snapshot.sheets })).toEqual(lineup);
});

test("a workbook without panels tells no lineup", () => {
  const book = memoryBook(planFor(sampleLineup()));
  book.removeTable("GearPanels");
  expect(lineupOfSheets({ sheets: book.snapshot.sheets })).toBeUndefined();
});

const read = (lineup: Lineup) => {
  const { sheets } = memoryBook(planFor(lineup)).snapshot;
  return lineupOfSheets({ sheets });
};

const words = fc
  .string({ minLength: 1, maxLength: 12 })
  .map((text) => text.trim())
  .filter((text) => text !== "" && !/[\r\n\t]/.test(text));
const size = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
const some = <T>(item: fc.Arbitrary<T>, by: (item: T) => string) =>
  fc.uniqueArray(item, { maxLength: 3, selector: (one) => nameless(by(one)) });
/** Names that differ by case and punctuation alone are one name in a lineup. */
const nameless = (text: string) => text.toLowerCase().replace(/[^\p{L}\p{N}+]/gu, "");
const named = words.filter((text) => nameless(text.normalize("NFKC")) !== "");

const equipment = fc.record({
  breaker: fc.record(
    {
      medium: fc.constantFrom("vacuum", "SF6"),
      ratedA: size,
      designation: named,
      contactLimit: size,
      document: words,
      closingMs: fc.constant({ least: 40, most: 60 }),
      gas: fc.constant({ fillingMPa: 0.5, alarmMPa: 0.4, lockoutMPa: 0.3, pressure: "gauge" }),
    },
    { requiredKeys: ["medium", "ratedA"] },
  ),
  currentTransformers: some(
    fc.record(
      {
        name: named,
        primaryA: size,
        secondaryA: fc.constantFrom(1, 5),
        accuracy: fc.oneof(words, fc.constantFrom("0.5", "1", "5P20")),
        burdenVA: size,
        kneeV: size,
        windingOhm: size,
      },
      { requiredKeys: ["name", "primaryA", "secondaryA", "accuracy"] },
    ),
    ({ name }) => name,
  ),
  meters: some(
    fc.record({
      designation: named,
      quantity: words,
      fullScale: size,
      unit: words,
      accuracy: size,
      points: fc.array(fc.double({ min: 1, max: 120, noNaN: true }), {
        minLength: 1,
        maxLength: 3,
      }),
    }),
    ({ designation }) => designation,
  ),
  protection: some(
    fc.record({
      relay: named,
      element: words,
      pickup: size,
      unit: words,
      curve: fc.constantFrom("definite", "IEC very"),
      setting: size,
      multiples: fc.array(fc.double({ min: 1.1, max: 20, noNaN: true }), {
        minLength: 1,
        maxLength: 3,
      }),
    }),
    ({ relay, element }) => `${relay} ${element}`,
  ),
  cables: some(
    fc.record(
      { designation: named, ratedkV: size, wave: fc.constantFrom("AC", "DC", "VLF") },
      { requiredKeys: ["designation", "ratedkV"] },
    ),
    ({ designation }) => designation,
  ),
});

test("whatever stands in a panel is told by the sheets", () => {
  fc.assert(
    fc.property(equipment, (panel) => {
      const base = longLineup(1);
      const lineup = lineupSchema.parse({
        ...base,
        panels: base.panels.map((one) => ({ ...one, ...panel })),
      });
      expect(read(lineup)).toEqual(lineup);
    }),
    { numRuns: 100 },
  );
});

test("the order of the sheet's rows makes no difference, and a class that became a number is a class again", () => {
  const lineup = equipped(longLineup(2));
  const { sheets } = memoryBook(planFor(lineup)).snapshot;
  const turned = sheets.map((sheet) =>
    sheet.name === "Equipment"
      ? {
          ...sheet,
          tables: sheet.tables.map((table) => ({
            ...table,
            cell: (row: number, column: number) => {
              const cell = table.cell(table.rowCount - 1 - row, column);
              return cell === "0.5" ? 0.5 : cell;
            },
          })),
        }
      : sheet,
  );
  expect(lineupOfSheets({ sheets: turned })).toEqual(lineup);
});

test("equipment is told in words", () => {
  const { sheets } = planFor(equipped(longLineup(1)));
  const rows = sheets.find(({ sheet }) => sheet === "Equipment")?.rows ?? [];
  const items = rows.map(({ item, value }) => `${item}: ${value}`);
  for (const line of [
    "Closing time, minimum (ms): 40",
    "Current transformer core 2 · Class: 5P20",
    "Meter 1 · Points, % of full scale 2: 50",
    "Protection element 1 · Pick-up: 1.2",
    "Group of joints 1 · Manufacturer's torque (N·m): 60",
  ])
    expect(items).toContain(line);
  expect(new Set(items).size).toBe(items.length);
});
