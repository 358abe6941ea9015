import { expect, test } from "vitest";
import { readRanges, writeRanges } from "../../src/quantities/measuringRange";
import { namedInstruments } from "../../src/records/instruments";
import { KINDS } from "../../src/records/kinds";
import { insulation } from "../../src/records/kinds/insulation";
import { checkLineup } from "../../src/records/readLineup";
import { tableReference } from "../../src/sheets/cells/formula";
import { english } from "../support/inWords";
import { equipped, longLineup } from "../support/lineups";
import { rowOf } from "../support/rowOf";

const MEGGER = {
  id: "IR-1",
  kind: "Insulation tester (invented)",
  ranges: [
    { most: 200, unit: "GΩ" },
    { least: 250, most: 5000, unit: "V" },
  ],
};
const METER = {
  id: "TH-2",
  kind: "Thermometer (invented)",
  ranges: [{ least: -10, most: 50, unit: "°C" }],
};
const lineup = longLineup(1, { instruments: [MEGGER, METER] });
const SOUND = { testVoltage: 2500, reading: 90_000, temperature: 20, instrument: "IR-1; TH-2" };

// A reading outside its instrument's range proves nothing (ISO/IEC 17025: an instrument is fit for the values that it is
// calibrated for; common practice). 5000 MΩ: ANSI/NETA table 100.1 (read).
test.each([
  ["within every range", {}, "Pass"],
  ["at the end of a range", { reading: "200 GΩ" }, "Pass"],
  ["beyond it", { reading: "201 GΩ" }, "Inconclusive"],
  ["a bound, which the instrument shows beyond its range", { reading: "> 200 GΩ" }, "Pass"],
  ["more volts than it gives", { testVoltage: 10_000 }, "Inconclusive"],
  ["a temperature beyond the thermometer", { temperature: 55 }, "Inconclusive"],
  [
    "a temperature that no named instrument measures",
    { temperature: 55, instrument: "IR-1" },
    "Pass",
  ],
  [
    "an instrument that the lineup does not list",
    { reading: "201 GΩ", instrument: "IR-9" },
    "Pass",
  ],
  ["a fail within the range", { reading: 4000 }, "Fail"],
])("%s: %j is %s", (_what, entries, verdict) => {
  expect(rowOf(insulation, lineup, { ...SOUND, ...entries }).result).toBe(verdict);
});

test("a cell names one instrument, or several", () => {
  expect(namedInstruments("IR-1")).toEqual(["IR-1"]);
  expect(namedInstruments(" IR-1 ; TH 2, B-3;")).toEqual(["IR-1", "TH 2", "B-3"]);
  expect(namedInstruments(null)).toEqual([]);
});

test("ranges are written into one cell and read back", () => {
  const ranges = [...MEGGER.ranges, ...METER.ranges, { least: 0.001, most: 2e6, unit: "kV" }];
  expect(readRanges(writeRanges(ranges))).toEqual(ranges.map((one) => ({ least: 0, ...one })));
});

test.each([
  [{ most: 5, unit: "furlong" }, /ranges\[0\]\.unit: is not a known unit/],
  [{ least: 6, most: 5, unit: "V" }, /ranges\[0\]: least must be below most/],
])("a range such as %j is refused", (range, reason) => {
  const found = checkLineup({ ...lineup, instruments: [{ id: "A", kind: "B", ranges: [range] }] });
  expect(found.ok).toBe(false);
  if (!found.ok)
    expect(found.errors.map(({ path, message }) => `${path}: ${message(english)}`).join()).toMatch(
      reason,
    );
});

// Microsoft, "Excel specifications and limits": a formula holds at most 8,192 characters.
test("formulas stay within what a cell takes with twenty instruments of three ranges", () => {
  const instruments = Array.from({ length: 20 }, (_, at) => ({
    id: `INSTRUMENT-${at}`,
    kind: "Invented",
    ranges: [...MEGGER.ranges, { least: -10.5, most: 50.25, unit: "°C" }],
  }));
  const many = equipped(longLineup(1, { instruments, decisionRule: "guarded" }));
  for (const { columns, table, id } of KINDS)
    for (const { formula } of columns)
      expect(formula?.(tableReference(table, columns), many).length ?? 0, id).toBeLessThanOrEqual(
        8192,
      );
});
