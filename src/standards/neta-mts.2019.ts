import type { Criterion, Source } from "./criterion";
import { CLASS_NAMES, type MetalCladLevel } from "./ieeeC37.20.2.2015";
import type { Rated, RatedTable } from "./table";

/** DC test voltage, V, and least insulation resistance at 20 °C, MΩ. */
export interface InsulationRow extends Rated {
  readonly testV: number;
  readonly megohm: number;
}

const source = (place: string, more: Omit<Source, "document" | "edition" | "place">): Source => ({
  document: "ANSI/NETA MTS",
  edition: "2019",
  place,
  ...more,
});

/**
 * Rated maximum voltages of gear, kV, and the nominal voltage whose row of table 100.1 they belong to
 * (IEEE C37.20.2 names them side by side).
 */
const MAXIMUM_VOLTAGES: ReadonlyMap<number, number> = new Map([
  [4.76, 5],
  [8.25, 8],
  [15.5, 15],
  [25.8, 25],
  [27, 25],
  [38, 34.5],
]);

/** Recommended minimum insulation resistance. One copy prints 34000 V for 34500 V; the last row is printed as "46000 and above". */
export const insulation: RatedTable<InsulationRow, "least"> = {
  title: "Insulation resistance: test voltage and recommended minimum",
  acts: "least",
  source: source("table 100.1", { certainty: "read", by: "two published copies" }),
  columns: { testV: "test V DC", megohm: "least MΩ at 20 °C" },
  names: MAXIMUM_VOLTAGES,
  rows: [
    { ratedkV: 0.25, testV: 500, megohm: 25 },
    { ratedkV: 0.6, testV: 1000, megohm: 100 },
    { ratedkV: 1, testV: 1000, megohm: 100 },
    { ratedkV: 2.5, testV: 1000, megohm: 500 },
    { ratedkV: 5, testV: 2500, megohm: 1500 },
    { ratedkV: 8, testV: 2500, megohm: 2500 },
    { ratedkV: 15, testV: 2500, megohm: 5000 },
    { ratedkV: 25, testV: 5000, megohm: 10000 },
    { ratedkV: 34.5, testV: 5000, megohm: 100000 },
    { ratedkV: Number.POSITIVE_INFINITY, testV: 5000, megohm: 100000 },
  ],
};

/** Note 6 of table 100.1: for medium-voltage cables its values are typical only; length, temperature and the maker's data decide. */
export const cableNote = "note 6: typical only for cables, the maker's data decide";

/** Metal-clad switchgear in the field, kV. The low-voltage rows are printed as ranges, 0.254 to 0.635 kV and 0.730 to 1.058 kV. */
export const site: RatedTable<MetalCladLevel, "stress"> = {
  title: "Metal-clad switchgear in the field, kV",
  acts: "stress",
  source: source("table 100.2, metal-clad", { certainty: "read", by: "two published copies" }),
  columns: { AC: "AC kV", DC: "DC kV" },
  names: CLASS_NAMES,
  rows: [
    { ratedkV: 0.254, AC: 1.6, DC: 2.3 },
    { ratedkV: 0.508, AC: 1.6, DC: 2.3 },
    { ratedkV: 0.635, AC: 1.6, DC: 2.3 },
    { ratedkV: 0.73, AC: 2.2, DC: 3.1 },
    { ratedkV: 1.058, AC: 2.2, DC: 3.1 },
    { ratedkV: 4.76, AC: 14, DC: 20 },
    { ratedkV: 8.25, AC: 27, DC: 37.5 },
    { ratedkV: 15, AC: 27, DC: 37.5 },
    { ratedkV: 27, AC: 45 },
    { ratedkV: 38, AC: 60 },
  ],
};

/** Secondary windings of instrument transformers, 600 V class: least insulation resistance, MΩ. */
export const secondaryMinimum: Criterion = {
  value: 500,
  source: source("table 100.5, windings of 600 V", {
    certainty: "quoted",
    by: "a test firm's page and a second quotation",
  }),
};

/** Secondary windings of instrument transformers, 600 V class: test voltage, V DC. */
export const secondaryTestVoltage: Criterion = {
  value: 1000,
  source: secondaryMinimum.source,
};

/** Control wiring: least insulation resistance, MΩ. */
export const controlMinimum: Criterion = {
  value: 2,
  source: source("switchgear assemblies, control wiring", {
    certainty: "quoted",
    by: "a guide specification for low-voltage wiring (1000 V DC, 1 min, 2 MΩ) and a breaker maker's manual (2 MΩ)",
  }),
};

/** Control wiring: test voltage by the wire's rating, V DC. */
export const controlTestVoltage: RatedTable<Rated & { readonly testV: number }, "least"> = {
  title: "Control wiring: test voltage by the rating of the wire",
  acts: "least",
  source: source("switchgear assemblies, control wiring", {
    certainty: "quoted",
    by: "a published extract",
  }),
  columns: { testV: "test V DC" },
  rows: [
    { ratedkV: 0.3, testV: 500 },
    { ratedkV: 0.6, testV: 1000 },
  ],
};
