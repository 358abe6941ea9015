import type { Source } from "./criterion";

/**
 * Rated short-duration power-frequency withstand voltage, kV rms: to earth and between phases, and
 * across the isolating distance. IEC 62271-1, common values (memory, save 50 kV at 24 kV, read).
 * National levels differ; some are higher.
 */
export const iecWithstand = [
  { ratedkV: 3.6, main: 10, isolating: 12 },
  { ratedkV: 7.2, main: 20, isolating: 23 },
  { ratedkV: 12, main: 28, isolating: 32 },
  { ratedkV: 17.5, main: 38, isolating: 45 },
  { ratedkV: 24, main: 50, isolating: 60 },
  { ratedkV: 36, main: 70, isolating: 80 },
  { ratedkV: 52, main: 95, isolating: 110 },
  { ratedkV: 72.5, main: 140, isolating: 160 },
] as const;

export const iecSource: Source = {
  document: "IEC 62271-1",
  edition: "2017",
  place: "rated insulation levels, common values",
  certainty: "memory",
};

/**
 * Metal-clad switchgear, factory, kV, 1 min: IEEE C37.20.2 (AC and DC at 8.25 kV and 15 kV read in a
 * handbook, 27 kV supported by a second source; DC at 4.76 kV memory).
 */
export const metalCladFactory: readonly NetaRow[] = [
  { ratedkV: 4.76, AC: 19, DC: 27, certaintyDC: "memory" },
  { ratedkV: 8.25, AC: 36, DC: 50 },
  { ratedkV: 15, AC: 36, DC: 50 },
  { ratedkV: 27, AC: 60 },
  { ratedkV: 38, AC: 80 },
];

/**
 * Metal-clad switchgear in the field, kV: ANSI/NETA MTS-2019, table 100.2 (read; MTS-2015 prints 37
 * for 37.5). The first two rows are the table's low-voltage ranges, up to 0.635 kV and 1.058 kV.
 */
export const metalCladSite: readonly NetaRow[] = [
  { ratedkV: 0.635, AC: 1.6, DC: 2.3 },
  { ratedkV: 1.058, AC: 2.2, DC: 3.1 },
  { ratedkV: 4.76, AC: 14, DC: 20 },
  { ratedkV: 8.25, AC: 27, DC: 37.5 },
  { ratedkV: 15, AC: 27, DC: 37.5 },
  { ratedkV: 27, AC: 45 },
  { ratedkV: 38, AC: 60 },
];

export interface NetaRow {
  readonly ratedkV: number;
  readonly AC: number;
  readonly DC?: number;
  readonly certaintyDC?: Source["certainty"];
}

export const netaSources: Readonly<Record<"factory" | "site", Source>> = {
  factory: {
    document: "IEEE C37.20.2",
    edition: "2015",
    place: "metal-clad, rated withstand voltages",
    certainty: "read",
    note: "in a handbook, edition from memory",
  },
  site: {
    document: "ANSI/NETA MTS",
    edition: "2019",
    place: "table 100.2, metal-clad",
    certainty: "read",
  },
};
