import type { Points } from "../engineering/interpolate";
import type { Source } from "./criterion";

/** Limits of one accuracy class at percents of its rated current. */
export interface CtClass {
  /** Ratio error, ±%. */
  readonly ratio: Points;
  /** Phase displacement, ±min; none where the class gives none. */
  readonly phase?: Points;
  /** Composite error at the accuracy limit current, %; protective classes alone. */
  readonly composite?: number;
}

const at = (percents: readonly number[], limits: readonly number[]): Points =>
  percents.map((percent, i) => [percent, limits[i] ?? Number.NaN] as const);

const METERING = [5, 20, 100, 120];
const SPECIAL = [1, 5, 20, 100, 120];

/**
 * Error limits of current transformers by class, IEC 61869-2:2012 (read in a published handbook that
 * cites IEC 60044-1, and in an article on IEC 61869-2). Burden 25 % to 100 % of rated; classes 3 and
 * 5: 50 % to 100 %.
 */
export const ctClasses = {
  "0.1": { ratio: at(METERING, [0.4, 0.2, 0.1, 0.1]), phase: at(METERING, [15, 8, 5, 5]) },
  "0.2": { ratio: at(METERING, [0.75, 0.35, 0.2, 0.2]), phase: at(METERING, [30, 15, 10, 10]) },
  "0.5": { ratio: at(METERING, [1.5, 0.75, 0.5, 0.5]), phase: at(METERING, [90, 45, 30, 30]) },
  "1": { ratio: at(METERING, [3, 1.5, 1, 1]), phase: at(METERING, [180, 90, 60, 60]) },
  "0.2S": {
    ratio: at(SPECIAL, [0.75, 0.35, 0.2, 0.2, 0.2]),
    phase: at(SPECIAL, [30, 15, 10, 10, 10]),
  },
  "0.5S": {
    ratio: at(SPECIAL, [1.5, 0.75, 0.5, 0.5, 0.5]),
    phase: at(SPECIAL, [90, 45, 30, 30, 30]),
  },
  "3": { ratio: at([50, 120], [3, 3]) },
  "5": { ratio: at([50, 120], [5, 5]) },
  "5P": { ratio: at([100], [1]), phase: at([100], [60]), composite: 5 },
  "10P": { ratio: at([100], [3]), composite: 10 },
} as const satisfies Record<string, CtClass>;

export type CtClassName = keyof typeof ctClasses;

const byNumber = <T extends string>(names: readonly T[]): T[] =>
  names.toSorted((a, b) => Number.parseFloat(a) - Number.parseFloat(b));

/** The names, finest class first. */
export const CT_CLASSES = byNumber(Object.keys(ctClasses) as CtClassName[]);

export const ctSource: Source = {
  document: "IEC 61869-2",
  edition: "2012",
  place: "limits of error by class",
  certainty: "read",
  note: "in a published handbook and an article, edition from memory; straight lines between the tabulated currents are practice",
};

/** Limits of one class of voltage transformer over a range of its rated voltage. */
export interface VtClass {
  /** Range of voltage that the limits hold for, percent of rated. */
  readonly from: number;
  readonly to: number;
  /** Ratio error, ±%. */
  readonly ratio: number;
  /** Phase displacement, ±min. */
  readonly phase: number;
  readonly certainty: Source["certainty"];
}

/**
 * Error limits of inductive voltage transformers, IEC 61869-3:2011: measuring classes memory, 3P and
 * 6P read in a handbook that cites IEC 60044-2. The protective range ends at the voltage factor,
 * which the plate gives; 1.9 is the greatest.
 */
export const vtClasses = {
  "0.2": { from: 80, to: 120, ratio: 0.2, phase: 10, certainty: "memory" },
  "0.5": { from: 80, to: 120, ratio: 0.5, phase: 20, certainty: "memory" },
  "1": { from: 80, to: 120, ratio: 1, phase: 40, certainty: "memory" },
  "3P": { from: 5, to: 190, ratio: 3, phase: 120, certainty: "read" },
  "6P": { from: 5, to: 190, ratio: 6, phase: 240, certainty: "read" },
} as const satisfies Record<string, VtClass>;

export type VtClassName = keyof typeof vtClasses;

/** The names, finest class first. */
export const VT_CLASSES = byNumber(Object.keys(vtClasses) as VtClassName[]);

export const vtSource: Omit<Source, "certainty"> = {
  document: "IEC 61869-3",
  edition: "2011",
  place: "limits of error by class",
  note: "edition from memory; 3P and 6P up to the plate's voltage factor",
};
