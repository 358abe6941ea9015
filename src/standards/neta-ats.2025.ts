import type { Criterion, Source } from "./criterion";
import * as mts2019 from "./neta-mts.2019";
import type { NamedTable } from "./table";

/** Figures that were read in the maintenance standard; the acceptance standard has the same tables. */
const of2025 = (source: Source): Source => ({
  ...source,
  document: "ANSI/NETA ATS",
  edition: "2025",
  certainty: "quoted",
  by: `ANSI/NETA MTS-2019, which has the same table (${source.certainty}${source.by ? `: ${source.by}` : ""})`,
});

/** Table 100.1 itself was read in a copy of this edition. */
export const insulation: typeof mts2019.insulation = {
  ...mts2019.insulation,
  source: {
    ...mts2019.insulation.source,
    document: "ANSI/NETA ATS",
    edition: "2025",
    by: "a published copy",
  },
};

export const site: typeof mts2019.site = {
  ...mts2019.site,
  source: of2025(mts2019.site.source),
};

export const secondaryMinimum = {
  ...mts2019.secondaryMinimum,
  source: of2025(mts2019.secondaryMinimum.source),
};
export const secondaryTestVoltage = {
  ...mts2019.secondaryTestVoltage,
  source: of2025(mts2019.secondaryTestVoltage.source),
};
export const controlMinimum = {
  ...mts2019.controlMinimum,
  source: of2025(mts2019.controlMinimum.source),
};
export const controlTestVoltage: typeof mts2019.controlTestVoltage = {
  ...mts2019.controlTestVoltage,
  source: of2025(mts2019.controlTestVoltage.source),
};

/** Point-to-point resistance of grounding above which NETA asks for an investigation, mΩ; no test current is prescribed. */
export const groundContinuity: Criterion = {
  value: 500,
  source: {
    document: "ANSI/NETA ATS",
    edition: "2025",
    place: "grounding systems, point-to-point resistance 0.5 Ω",
    certainty: "quoted",
    by: "an engineers' forum, which calls it the widely accepted NETA value",
  },
};

/** Sizes of inch bolts that the torque tables have. */
const SIZES = ["1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "3/4", "7/8", "1"] as const;

/** Torque by size, lbf·ft, and the table that it stands in. */
export type TorqueRow = Readonly<Partial<Record<(typeof SIZES)[number], number>>> & {
  readonly place: string;
};

const bySize = (...values: readonly number[]) =>
  Object.fromEntries(values.map((value, at) => [SIZES[at] ?? "", value]));

const STEEL_1_2 = bySize(4, 7, 12, 19, 30, 42, 59, 96, 150, 225);

/** Torque of bolted electrical joints by material and grade, lbf·ft, where the maker gives none. */
export const jointTorques: NamedTable<TorqueRow> = {
  title: "Torque of bolted joints, lbf·ft",
  source: {
    document: "ANSI/NETA ATS",
    edition: "2025",
    place: "tables 100.12.1 to 100.12.4",
    certainty: "signed",
    note: "where the maker gives none; the layout of the table was read, its values were not",
  },
  of: "bolt",
  columns: { place: "table", ...Object.fromEntries(SIZES.map((size) => [size, size])) },
  rows: {
    "SAE 1": { place: "table 100.12.1", ...STEEL_1_2 },
    "SAE 2": { place: "table 100.12.1", ...STEEL_1_2 },
    "SAE 5": {
      place: "table 100.12.1",
      ...bySize(6, 11, 20, 32, 48, 70, 96, 160, 240, 370),
    },
    "SAE 7": {
      place: "table 100.12.1",
      ...bySize(8, 15, 27, 44, 68, 96, 135, 225, 350, 530),
    },
    "SAE 8": {
      place: "table 100.12.1",
      ...bySize(8, 18, 30, 48, 74, 105, 145, 235, 380, 570),
    },
    "silicon bronze": {
      place: "table 100.12.2, dry",
      "5/16": 15,
      "3/8": 20,
      "1/2": 40,
      "5/8": 55,
      "3/4": 70,
    },
    "silicon bronze, lubricated": {
      place: "table 100.12.2, lubricated",
      "5/16": 10,
      "3/8": 15,
      "1/2": 25,
      "5/8": 40,
      "3/4": 60,
    },
    aluminum: {
      place: "table 100.12.3, lubricated",
      "5/16": 10,
      "3/8": 14,
      "1/2": 25,
      "5/8": 40,
      "3/4": 60,
    },
    stainless: {
      place: "table 100.12.4, uncoated",
      "5/16": 15,
      "3/8": 20,
      "1/2": 40,
      "5/8": 55,
      "3/4": 70,
    },
  },
};
