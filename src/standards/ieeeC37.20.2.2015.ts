import type { Criterion, Source } from "./criterion";
import type { Rated, RatedTable } from "./table";

/** One-minute withstand voltages of metal-clad switchgear, kV: AC rms, and DC where one is given. */
export interface MetalCladLevel extends Rated {
  readonly AC: number;
  readonly DC?: number;
}

/** Nominal classes by their names in the trade, kV, and what they are rated. */
export const CLASS_NAMES: ReadonlyMap<number, number> = new Map([
  [5, 4.76],
  [25, 27],
  [35, 38],
]);

const source = (place: string, by: string): Source => ({
  document: "IEEE C37.20.2",
  edition: "2015",
  place,
  certainty: "quoted",
  by,
  note: "edition from memory",
});

/** Rated levels, factory. The direct voltage at 4.76 kV is printed as 27 kV in one of two tables and damaged in the other. */
export const factory: RatedTable<MetalCladLevel, "stress"> = {
  title: "Metal-clad switchgear, factory: one minute, kV",
  acts: "stress",
  source: source("metal-clad, rated withstand voltages", "a handbook's two tables of ANSI C37.20"),
  columns: { AC: "AC kV", DC: "DC kV" },
  names: CLASS_NAMES,
  rows: [
    { ratedkV: 4.76, AC: 19, DC: 27 },
    { ratedkV: 8.25, AC: 36, DC: 50 },
    { ratedkV: 15, AC: 36, DC: 50 },
    { ratedkV: 27, AC: 60 },
    { ratedkV: 38, AC: 80 },
  ],
};

/** Field tests: three quarters of the factory level. */
export const fieldShare: Criterion = {
  value: 0.75,
  source: source(
    "field dielectric tests, 75 % of the factory value",
    "two gear makers and a handbook",
  ),
};

/** Control wiring, kV, one minute: factory. */
export const controlFactory: Criterion = {
  value: 1.5,
  source: source("control wiring", "a gear maker's manual (1500 V)"),
};

/** Control wiring in the field, kV, one minute: three quarters of the factory value. */
export const controlSite: Criterion = {
  value: 1.125,
  source: source(
    "control wiring, three quarters of the factory value",
    "a gear maker's manual (1125 V AC)",
  ),
};

/** How long control wiring is tested, s. */
export const controlSeconds: Criterion = {
  value: 60,
  source: { ...source("control wiring", "a gear maker's manual"), note: "one minute" },
};
