import type { Sense } from "../words/languages/language";

/** What titles of a record column speak of: any of these together. */
export interface ColumnSense {
  readonly any: readonly (readonly Sense[])[];
  /** The time in seconds at which it is read, where a title may say that. */
  readonly seconds?: number;
  /** The multiple of the rated voltage to earth at which it is read, which a title must say. */
  readonly ofU0?: number;
  /** Between what its values usually lie, in its own unit (practice). */
  readonly usual?: readonly [least: number, most: number];
  /** Where its values are those of something else unless the title speaks of this, in its own unit (practice). */
  readonly unlessSaid?: {
    readonly sense: Sense;
    readonly between: readonly [least: number, most: number];
  };
}

/** By record kind and id of column. */
export type ColumnSenses = Readonly<Record<string, Readonly<Record<string, ColumnSense>>>>;

/** Ways in which a title may speak of something: the senses of each, parted by spaces. */
export const s = (...any: readonly string[]): readonly (readonly Sense[])[] =>
  any.map((words) => words.split(" ").filter((word) => word !== "") as Sense[]);
