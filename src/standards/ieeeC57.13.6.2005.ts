import type { NamedTable } from "./table";
import { at, type CtClass } from "./transformerClass";

export const ctMetering = {
  title: "Current transformers: limits of error, high-accuracy metering",
  source: {
    document: "IEEE C57.13.6",
    edition: "2005",
    place: "0.15 and 0.15S: at 5 % and 100 % of rated current",
    certainty: "read",
    note: "quoted by an instrument transformer maker",
  },
  of: "class",
  columns: { ratio: "ratio ±%" },
  rows: {
    "0.15": { ratio: at([5, 100], [0.3, 0.15]), steps: true },
    "0.15S": { ratio: at([5, 100], [0.15, 0.15]), steps: true },
  },
} as const satisfies NamedTable<CtClass>;
