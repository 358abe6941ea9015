import type { Criterion, Source } from "./criterion";
import type { NamedTable } from "./table";
import { at, type CtClass } from "./transformerClass";

const METERING = [5, 20, 100, 120];
const SPECIAL = [1, 5, 20, 100, 120];

/** Part of its rated burden down to which a class holds. */
const QUARTER = { burdenPart: 0.25 } as const;
const HALF = { burdenPart: 0.5 } as const;

/**
 * Limits of error by class (read in a published handbook that cites IEC 60044-1, and in an article on
 * IEC 61869-2). They hold from 25 % to 100 % of rated burden; classes 3 and 5 from 50 %.
 */
export const ctErrors = {
  title: "Current transformers: limits of error",
  source: {
    document: "IEC 61869-2",
    edition: "2012",
    place: "limits of error by class",
    certainty: "read",
    note: "in a published handbook and an article, edition from memory; straight lines between the tabulated currents are practice",
  },
  of: "class",
  columns: {
    ratio: "ratio ±%",
    phase: "phase ±min",
    composite: "composite %",
    burdenPart: "least part of rated burden",
  },
  rows: {
    "0.1": {
      ratio: at(METERING, [0.4, 0.2, 0.1, 0.1]),
      phase: at(METERING, [15, 8, 5, 5]),
      ...QUARTER,
    },
    "0.2": {
      ratio: at(METERING, [0.75, 0.35, 0.2, 0.2]),
      phase: at(METERING, [30, 15, 10, 10]),
      ...QUARTER,
    },
    "0.5": {
      ratio: at(METERING, [1.5, 0.75, 0.5, 0.5]),
      phase: at(METERING, [90, 45, 30, 30]),
      ...QUARTER,
    },
    "1": {
      ratio: at(METERING, [3, 1.5, 1, 1]),
      phase: at(METERING, [180, 90, 60, 60]),
      ...QUARTER,
    },
    "0.2S": {
      ratio: at(SPECIAL, [0.75, 0.35, 0.2, 0.2, 0.2]),
      phase: at(SPECIAL, [30, 15, 10, 10, 10]),
      ...QUARTER,
    },
    "0.5S": {
      ratio: at(SPECIAL, [1.5, 0.75, 0.5, 0.5, 0.5]),
      phase: at(SPECIAL, [90, 45, 30, 30, 30]),
      ...QUARTER,
    },
    "3": { ratio: at([50, 120], [3, 3]), ...HALF },
    "5": { ratio: at([50, 120], [5, 5]), ...HALF },
    "5P": { ratio: at([100], [1]), phase: at([100], [60]), composite: 5 },
    "10P": { ratio: at([100], [3]), composite: 10 },
    "5PR": { ratio: at([100], [1]), phase: at([100], [60]), composite: 5 },
    "10PR": { ratio: at([100], [3]), composite: 10 },
  },
} as const satisfies NamedTable<CtClass>;

/** Classes of low leakage reactance and for transient performance. */
export const ctProtective = {
  title: "Current transformers: limits of error of PX, PXR and TP",
  source: {
    document: "IEC 61869-2",
    edition: "2012",
    place: "classes PX, PXR, TPX, TPY, TPZ",
    certainty: "signed",
  },
  of: "class",
  columns: { ratio: "ratio ±%", phase: "phase ±min" },
  rows: {
    // Two articles that name IEC 61869-2.
    PX: { ratio: at([100], [0.25]), turns: true, certainty: "quoted" },
    PXR: { ratio: at([100], [1]), turns: true },
    TPS: { ratio: at([100], [0.25]), turns: true },
    TPX: { ratio: at([100], [0.5]), phase: at([100], [30]) },
    TPY: { ratio: at([100], [1]), phase: at([100], [60]) },
    TPZ: { ratio: at([100], [1]) },
  },
} as const satisfies NamedTable<CtClass>;

/** Temperature that a plate's winding resistance holds for, °C. */
export const windingBase = {
  value: 75,
  source: {
    document: "IEC 61869-2",
    edition: "2012",
    place: "secondary winding resistance",
    certainty: "memory",
  } as Source,
} satisfies Criterion;
