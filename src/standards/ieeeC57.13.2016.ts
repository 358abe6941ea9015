import type { NamedTable } from "./table";
import { at, type CtClass, type VtClass } from "./transformerClass";

/** The class at rated current, twice it at a tenth. */
const metering = (limit: number) => ({
  ratio: at([10, 100], [2 * limit, limit]),
  steps: true as const,
});

export const ctMetering = {
  title: "Current transformers: limits of error, metering",
  source: {
    document: "IEEE C57.13",
    edition: "2016",
    place: "metering classes: the class at 100 % of rated current, twice it at 10 %",
    certainty: "read",
    note: "quoted by an instrument transformer maker; edition from memory",
  },
  of: "class",
  columns: { ratio: "ratio ±%" },
  rows: { "0.3": metering(0.3), "0.6": metering(0.6), "1.2": metering(1.2) },
} as const satisfies NamedTable<CtClass>;

const relaying = { ratio: at([100], [3]), composite: 10 } as const;

export const ctRelaying = {
  title: "Current transformers: limits of error, relaying",
  source: {
    document: "IEEE C57.13",
    edition: "2016",
    place: "relaying classes: 3 % at rated current, 10 % at 20 times",
    certainty: "signed",
    note: "10 % at 20 times quoted by a relay maker; 3 % at rated current from memory",
  },
  of: "class",
  columns: { ratio: "ratio ±%", composite: "composite %" },
  rows: { C: relaying, K: relaying, T: relaying },
} as const satisfies NamedTable<CtClass>;

const within = (ratio: number) => ({ from: 90, to: 110, ratio });

export const vtErrors = {
  title: "Voltage transformers: limits of error",
  source: {
    document: "IEEE C57.13",
    edition: "2016",
    place: "voltage transformers, from 90 % to 110 % of rated voltage",
    certainty: "read",
    note: "limits quoted by an instrument transformer maker; the range to 110 % from memory",
  },
  of: "class",
  columns: { from: "from % of rated voltage", to: "to %", ratio: "ratio ±%" },
  rows: {
    "0.15": within(0.15),
    "0.3": within(0.3),
    "0.6": within(0.6),
    "1.2": within(1.2),
  },
} as const satisfies NamedTable<VtClass>;

/** Standard burdens of voltage transformers, VA, by letter (W to Z quoted by makers). */
export const vtBurdens: NamedTable<{ readonly va: number }> = {
  title: "Voltage transformers: standard burdens",
  source: {
    document: "IEEE C57.13",
    edition: "2016",
    place: "standard burdens of voltage transformers",
    certainty: "quoted",
    by: "instrument transformer makers",
  },
  of: "letter",
  columns: { va: "VA" },
  rows: {
    W: { va: 12.5 },
    X: { va: 25 },
    M: { va: 35, certainty: "memory" },
    Y: { va: 75 },
    Z: { va: 200 },
    ZZ: { va: 400, certainty: "memory" },
  },
};
