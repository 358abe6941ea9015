import type { Criterion, Source } from "./criterion";
import type { NamedTable } from "./table";
import type { VtClass } from "./transformerClass";

const source = (place: string, more: Omit<Source, "document" | "edition" | "place">): Source => ({
  document: "IEC 61869-3",
  edition: "2011",
  place,
  ...more,
});

const SUMMARY =
  "a one-page summary of instrument transformers that extracts BS EN 60044-2, the edition before this one";

const COLUMNS = {
  from: "from % of rated voltage",
  to: "to %",
  ratio: "ratio ±%",
  phase: "phase ±min",
  twiceFrom: "twice it down to %",
} as const;

const measuring = (ratio: number, phase?: number) => ({
  from: 80,
  to: 120,
  ratio,
  ...(phase === undefined ? {} : { phase }),
});

export const vtMeasuring = {
  title: "Voltage transformers: limits of error, measuring",
  source: source("limits of error by class", {
    certainty: "quoted",
    by: SUMMARY,
    note: "0.1 to 3 from 80 % to 120 % of rated voltage and from 25 % to 100 % of rated burden",
  }),
  of: "class",
  columns: COLUMNS,
  rows: {
    "0.1": measuring(0.1, 5),
    "0.2": measuring(0.2, 10),
    "0.5": measuring(0.5, 20),
    "1": measuring(1, 40),
    "3": measuring(3),
  },
} as const satisfies NamedTable<VtClass>;

/** The range ends at the voltage factor, which the plate gives; 1.9 is the greatest. */
const protective = (ratio: number, phase: number) => ({
  from: 5,
  to: 190,
  ratio,
  phase,
  twiceFrom: 2,
});

export const vtProtective = {
  title: "Voltage transformers: limits of error, protective",
  source: source("limits of error by class", {
    certainty: "read",
    note: "3P and 6P in a handbook that cites IEC 60044-2, edition from memory; up to the plate's voltage factor, twice the limits at 2 %",
  }),
  of: "class",
  columns: COLUMNS,
  rows: { "3P": protective(3, 120), "6P": protective(6, 240) },
} as const satisfies NamedTable<VtClass>;

/** Part of its rated burden down to which a class holds, for rated burdens from `fromVA` up. */
export const leastBurden = {
  value: 0.25,
  fromVA: 10,
  source: source("least burden, from 10 VA up", {
    certainty: "quoted",
    by: SUMMARY,
    note: "a quarter of rated; from 10 VA up from memory",
  }),
} satisfies Criterion & { readonly fromVA: number };
