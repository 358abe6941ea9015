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
  /** True where the limit is one of the turns ratio, and the exciting current may lower the secondary current further. */
  readonly turns?: true;
  /** True where nothing lies between two tabulated currents: the finer limit passes and the wider one fails. */
  readonly steps?: true;
  /** Source, where it is not IEC 61869-2. */
  readonly source?: Source;
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
const METERING_IEEE: Source = {
  document: "IEEE C57.13",
  edition: "2016",
  place: "metering classes: the class at 100 % of rated current, twice it at 10 %",
  certainty: "read",
  note: "quoted by an instrument transformer maker; edition from memory",
};

const HIGH_ACCURACY: Source = {
  document: "IEEE C57.13.6",
  edition: "2005",
  place: "0.15 and 0.15S: at 5 % and 100 % of rated current",
  certainty: "read",
  note: "quoted by an instrument transformer maker",
};

const RELAYING: Source = {
  document: "IEEE C57.13",
  edition: "2016",
  place: "relaying classes: 3 % at rated current, 10 % at 20 times",
  certainty: "memory",
  note: "10 % at 20 times quoted by a relay maker; 3 % at rated current from memory",
};

const PROTECTIVE: Source = {
  document: "IEC 61869-2",
  edition: "2012",
  place: "classes PX, PXR, TPX, TPY, TPZ",
  certainty: "memory",
  note: "0.25 % of PX quoted by two articles",
};

/** A metering class of IEEE C57.13: the class at rated current, twice it at a tenth. */
const metering = (limit: number) => ({
  ratio: at([10, 100], [2 * limit, limit]),
  steps: true as const,
  source: METERING_IEEE,
});

const relaying = { ratio: at([100], [3]), composite: 10, source: RELAYING } as const;

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
  "5PR": { ratio: at([100], [1]), phase: at([100], [60]), composite: 5 },
  "10PR": { ratio: at([100], [3]), composite: 10 },
  PX: { ratio: at([100], [0.25]), turns: true, source: PROTECTIVE },
  PXR: { ratio: at([100], [1]), turns: true, source: PROTECTIVE },
  TPS: { ratio: at([100], [0.25]), turns: true, source: PROTECTIVE },
  TPX: { ratio: at([100], [0.5]), phase: at([100], [30]), source: PROTECTIVE },
  TPY: { ratio: at([100], [1]), phase: at([100], [60]), source: PROTECTIVE },
  TPZ: { ratio: at([100], [1]), source: PROTECTIVE },
  "0.15": { ratio: at([5, 100], [0.3, 0.15]), steps: true, source: HIGH_ACCURACY },
  "0.15S": { ratio: at([5, 100], [0.15, 0.15]), steps: true, source: HIGH_ACCURACY },
  "0.3": metering(0.3),
  "0.6": metering(0.6),
  "1.2": metering(1.2),
  C: relaying,
  K: relaying,
  T: relaying,
} as const satisfies Record<string, CtClass>;

export type CtClassName = keyof typeof ctClasses;

/** By the number in the name; those without one last. */
const byNumber = <T extends string>(names: readonly T[]): T[] =>
  names.toSorted((a, b) => (Number.parseFloat(a) || 1000) - (Number.parseFloat(b) || 1000));

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
  /** Phase displacement, ±min; none where the class gives none. */
  readonly phase?: number;
  /** Down to this percent of rated voltage twice the limits hold. */
  readonly twiceFrom?: number;
  readonly source: Source;
}

const iecVt = (certainty: Source["certainty"], note: string): Source => ({
  document: "IEC 61869-3",
  edition: "2011",
  place: "limits of error by class",
  certainty,
  note,
});

export const vtSource = iecVt(
  "memory",
  "0.1 to 3 from 80 % to 120 %; the figures are quoted from tables for electronic transformers",
);

export const vtProtectiveSource = iecVt(
  "read",
  "3P and 6P in a handbook that cites IEC 60044-2, edition from memory; up to the plate's voltage factor, twice the limits at 2 %",
);

export const vtIeeeSource: Source = {
  document: "IEEE C57.13",
  edition: "2016",
  place: "voltage transformers, from 90 % to 110 % of rated voltage",
  certainty: "read",
  note: "limits quoted by an instrument transformer maker; the range to 110 % from memory",
};

const measuring = (ratio: number, phase?: number) => ({
  from: 80,
  to: 120,
  ratio,
  ...(phase === undefined ? {} : { phase }),
  source: vtSource,
});
const protective = (ratio: number, phase: number) => ({
  from: 5,
  to: 190,
  ratio,
  phase,
  twiceFrom: 2,
  source: vtProtectiveSource,
});
const ieee = (ratio: number) => ({ from: 90, to: 110, ratio, source: vtIeeeSource });

/**
 * Error limits of inductive voltage transformers: IEC 61869-3:2011 and IEEE C57.13. The protective range ends at
 * the voltage factor, which the plate gives; 1.9 is the greatest.
 */
export const vtClasses = {
  "0.1": measuring(0.1, 5),
  "0.15": ieee(0.15),
  "0.2": measuring(0.2, 10),
  "0.3": ieee(0.3),
  "0.5": measuring(0.5, 20),
  "0.6": ieee(0.6),
  "1": measuring(1, 40),
  "1.2": ieee(1.2),
  "3": measuring(3),
  "3P": protective(3, 120),
  "6P": protective(6, 240),
} as const satisfies Record<string, VtClass>;

export type VtClassName = keyof typeof vtClasses;

/** The names, finest class first. */
export const VT_CLASSES = byNumber(Object.keys(vtClasses) as VtClassName[]);

/** Standard burdens of IEEE C57.13, VA, by letter (W to Z quoted by makers; M and ZZ memory). */
export const vtBurdens: Readonly<Record<string, number>> = { W: 12.5, X: 25, M: 35, Y: 75, Z: 200 };
