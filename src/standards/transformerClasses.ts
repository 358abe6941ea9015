import type { Source } from "./criterion";
import { ctErrors, ctProtective } from "./iec61869-2.2012";
import { vtMeasuring, vtProtective } from "./iec61869-3.2011";
import { ctMetering as ctHighAccuracy } from "./ieeeC57.13.6.2005";
import { ctMetering, ctRelaying, vtErrors } from "./ieeeC57.13.2016";
import type { Rated } from "./table";
import type { CtClass, Sourced, VtClass } from "./transformerClass";

/** The classes of a table, each with the standard that it stands in, as sure as its own row is. */
const classesOf = <K extends string, T extends object>(table: {
  readonly source: Source;
  readonly rows: Readonly<Record<K, T>>;
}): Readonly<Record<K, Sourced<T>>> =>
  Object.fromEntries(
    Object.entries<T>(table.rows).map(([name, row]) => {
      const { certainty = table.source.certainty }: Pick<Rated, "certainty"> = row;
      return [name, { ...row, source: { ...table.source, certainty } }];
    }),
  ) as Record<K, Sourced<T>>;

/** Classes of current transformers that limits are known of. */
export const ctClasses = {
  ...classesOf(ctErrors),
  ...classesOf(ctProtective),
  ...classesOf(ctHighAccuracy),
  ...classesOf(ctMetering),
  ...classesOf(ctRelaying),
} satisfies Record<string, Sourced<CtClass>>;

export type CtClassName = keyof typeof ctClasses;

/** Classes of inductive voltage transformers that limits are known of. */
export const vtClasses = {
  ...classesOf(vtMeasuring),
  ...classesOf(vtErrors),
  ...classesOf(vtProtective),
} satisfies Record<string, Sourced<VtClass>>;

export type VtClassName = keyof typeof vtClasses;

/** By the number in the name; those without one last. */
const byNumber = <T extends string>(names: readonly T[]): T[] =>
  names.toSorted((a, b) => (Number.parseFloat(a) || 1000) - (Number.parseFloat(b) || 1000));

/** The names, finest class first. */
export const CT_CLASSES = byNumber(Object.keys(ctClasses) as CtClassName[]);
export const VT_CLASSES = byNumber(Object.keys(vtClasses) as VtClassName[]);
