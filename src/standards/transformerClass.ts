import type { Points } from "../engineering/interpolate";
import type { Source } from "./criterion";

/** Limits of one accuracy class of current transformers at percents of its rated current. */
export interface CtClass {
  /** Ratio error, ±%. */
  readonly ratio: Points;
  /** Phase displacement, ±min; none where the class gives none. */
  readonly phase?: Points;
  /** Composite error at the accuracy limit current, %; protective classes alone. */
  readonly composite?: number;
  /** Part of its rated burden down to which the class holds; from no burden on where it says nothing. */
  readonly burdenPart?: number;
  /** True where the limit is one of the turns ratio, and the exciting current may lower the secondary current further. */
  readonly turns?: true;
  /** True where nothing lies between two tabulated currents: the finer limit passes and the wider one fails. */
  readonly steps?: true;
}

/** Limits of one class of voltage transformers over a range of its rated voltage. */
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
}

/** A class with the standard that it stands in. */
export type Sourced<T> = T & { readonly source: Source };

/** Limits at percents of the rated value. */
export const at = (percents: readonly number[], limits: readonly number[]): Points =>
  percents.map((percent, i) => [percent, limits[i] ?? Number.NaN] as const);
