import { DRIEST_UNCORRECTED, PARALLEL } from "../engineering/airFactor";
import type { CoilRange, UndervoltageRange } from "./coil";
import type { Criterion, Source } from "./criterion";
import type { NamedTable, Rated, RatedTable } from "./table";

/** Rated short-duration power-frequency withstand voltage, kV rms: common value, and across the isolating distance. */
export interface InsulationLevel extends Rated {
  readonly main: number;
  readonly isolating?: number;
}

const IEC_60071 =
  "a published calculation program that names IEC 60071-1:2006+A1:2010, table 2, from which these levels are taken";

const source = (place: string, more: Omit<Source, "document" | "edition" | "place">): Source => ({
  document: "IEC 62271-1",
  edition: "2017",
  place,
  ...more,
});

/**
 * Rated insulation levels of range I, series I: common values and across the isolating distance. National
 * levels differ, some are higher; the plate comes first. 24 kV: 50 kV was read as an example of
 * IEC 60071-1. The isolating distances are from memory, save 12 kV at 3.6 kV (a maker's guide).
 */
export const seriesI: RatedTable<InsulationLevel, "stress"> = {
  title: "Rated insulation levels, series I: one minute, kV rms",
  acts: "stress",
  source: source("rated insulation levels, series I", { certainty: "quoted", by: IEC_60071 }),
  columns: { main: "common value kV", isolating: "across the isolating distance kV (memory)" },
  rows: [
    { ratedkV: 3.6, main: 10, isolating: 12 },
    { ratedkV: 7.2, main: 20, isolating: 23 },
    { ratedkV: 12, main: 28, isolating: 32 },
    { ratedkV: 17.5, main: 38, isolating: 45 },
    { ratedkV: 24, main: 50, isolating: 60 },
    { ratedkV: 36, main: 70, isolating: 80 },
    { ratedkV: 52, main: 95, isolating: 110 },
    { ratedkV: 72.5, main: 140, isolating: 160 },
  ],
};

/**
 * Series II, as used in North America. A handbook prints these levels from ANSI C37.20; at 8.25 kV older
 * editions are remembered with 27 kV, so that this row decides nothing until it is confirmed.
 */
export const seriesII: RatedTable<InsulationLevel, "stress"> = {
  title: "Rated insulation levels, series II: one minute, kV rms",
  acts: "stress",
  source: source("rated insulation levels, series II", {
    certainty: "quoted",
    by: "a handbook's tables of ANSI C37.20, which has the same levels",
  }),
  columns: { main: "common value kV" },
  rows: [
    { ratedkV: 4.76, main: 19 },
    { ratedkV: 8.25, main: 36, certainty: "memory" },
    { ratedkV: 15, main: 36 },
    { ratedkV: 15.5, main: 50 },
    { ratedkV: 25.8, main: 60 },
    { ratedkV: 27, main: 60 },
    { ratedkV: 38, main: 80 },
  ],
};

/** Auxiliary and control circuits: 2 kV for one minute in the type test, 1 kV for one second as routine test. */
export const auxiliary = {
  type: {
    value: 2,
    source: source("auxiliary and control circuits, type test", {
      certainty: "quoted",
      by: "a density monitor maker's data sheet (2 kV, 50 Hz)",
      note: "1 min from memory",
    }),
  },
  routine: {
    value: 1,
    source: source("auxiliary and control circuits, routine test", {
      certainty: "signed",
      note: "1 s",
    }),
  },
  routineSeconds: {
    value: 1,
    source: source("auxiliary and control circuits, routine test", { certainty: "signed" }),
  },
} as const satisfies Record<string, Criterion>;

/**
 * Atmospheric correction up to a rated voltage of 52 kV: m = 1 throughout; w = 0 above 11 g/m³ of water,
 * w = 1 below. With internal insulation in parallel the factor counts only from 0.95 to 1.05.
 */
export const airRule = {
  ratedMostkV: 52,
  humidity: DRIEST_UNCORRECTED,
  parallelLeast: PARALLEL.least,
  parallelMost: PARALLEL.most,
  source: source("atmospheric correction factor, rated voltages up to 52 kV", {
    certainty: "signed",
    note: "m = 1 and w = 0 above 11 g/m³, m = w = 1 below; with internal insulation in parallel only from 0.95 to 1.05",
  }),
} as const;

/** Operating range of closing coils and shunt releases, parts of the rated supply voltage. */
export const coils: NamedTable<CoilRange> = {
  title: "Coils: operating range, parts of the rated voltage",
  source: source("operating range of closing coils and shunt releases", { certainty: "signed" }),
  of: "coil, supply",
  columns: { least: "least", most: "most" },
  rows: {
    "closing AC": { least: 0.85, most: 1.1 },
    "closing DC": { least: 0.85, most: 1.1 },
    "opening AC": { least: 0.85, most: 1.1 },
    "opening DC": { least: 0.7, most: 1.1 },
  },
};

/** Undervoltage release, parts of the rated supply voltage. */
export const undervoltage: UndervoltageRange & { readonly source: Source } = {
  pickupMost: 0.85,
  dropoutLeast: 0.35,
  dropoutMost: 0.7,
  source: source("undervoltage release: drops out from 70 % to 35 %, picks up at 85 %", {
    certainty: "quoted",
    by: "two makers of low-voltage breakers, whose releases have the same figures (IEC 60947)",
  }),
};

/** Resistance of the main circuit, as a part of what the type test measured before its temperature-rise test. */
export const circuitResistance: Criterion = {
  value: 1.2,
  source: source(
    "resistance of the main circuit, part of the resistance before the temperature-rise test",
    { certainty: "memory" },
  ),
};

/** Greatest relative leakage of a closed pressure system for SF6, % a year; 1 % is remembered as well, for older gear. */
export const leakRate: Criterion = {
  value: 0.5,
  source: source("tightness, standardized leakage rates of closed pressure systems", {
    certainty: "memory",
  }),
};
