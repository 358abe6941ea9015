import type { Unit } from "../units";

/** Whether the true value is the one given, or only known to lie above or below it. */
export type Bound = "exact" | "above" | "below";

/** A reading as written on site, understood. `text` is what was written, unchanged. */
export interface Reading {
  readonly value: number;
  readonly unit: Unit;
  readonly bound: Bound;
  readonly text: string;
}
