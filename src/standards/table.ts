import type { Said } from "../messages/reasons";
import { answer, type Result, refuse } from "../quantities/result";
import { type Criterion, type Source, sourceName } from "./criterion";

/**
 * What a figure does. A `stress` is put on what is tested: it is exact, and never taken from another row,
 * since the next higher one could damage gear. A `least` value is what a reading must reach: the next
 * higher row is on the safe side.
 */
export type Acts = "stress" | "least";

/** One row of a table by rated voltage, kV, with the certainty of its own where that differs from its table's. */
export interface Rated {
  readonly ratedkV: number;
  readonly certainty?: Source["certainty"];
}

/** Figures of one standard by rated voltage, by rising rated voltage. */
export interface RatedTable<R extends Rated, A extends Acts> {
  readonly title: string;
  readonly acts: A;
  readonly source: Source;
  /** Headings of the columns. */
  readonly columns: Readonly<Partial<Record<keyof R & string, string>>>;
  readonly rows: readonly R[];
  /** Nominal class names of the trade, kV, and the rated voltage that each stands for. */
  readonly names?: ReadonlyMap<number, number>;
}

/** Figures of one standard by name: a class, a letter, a coil and its rated voltage. */
export interface NamedTable<R extends object> {
  readonly title: string;
  readonly source: Source;
  /** What the names are. */
  readonly of: string;
  /** Headings of the columns. */
  readonly columns: Readonly<Partial<Record<keyof R & string, string>>>;
  readonly rows: Readonly<Record<string, R & Pick<Rated, "certainty">>>;
}

/** A row of a table that was found, with its source. */
export interface Found<R> {
  readonly row: R;
  readonly source: Source;
}

/**
 * The row of a table that a rated voltage belongs to. Of a stress only the row of exactly this rated
 * voltage, or of the nominal class that has this name; of a least value else the next higher row.
 *
 * @returns `none` where there is no such row; of a stress the nearest rows are named
 */
export const rowOf = <R extends Rated, A extends Acts>(
  table: RatedTable<R, A>,
  ratedkV: number,
): Result<Found<R>> => {
  const meant = table.names?.get(ratedkV) ?? ratedkV;
  const row =
    table.rows.find((one) => one.ratedkV === meant) ??
    (table.acts === "least" ? table.rows.find((one) => one.ratedkV > ratedkV) : undefined);
  if (!row) return refuse("none", noRow(table, ratedkV));
  const source = row.certainty ? { ...table.source, certainty: row.certainty } : table.source;
  return answer({
    row,
    source: meant === ratedkV ? source : noted(source, `${ratedkV} kV class is rated ${meant} kV`),
  });
};

/** The figure that is picked from a row, or why there is none where a row may lack it. */
export const figureOf = <R extends Rated>(
  found: Result<Found<R>>,
  pick: (row: R) => number | undefined,
  none: Said = () => "",
): Result<Criterion> => {
  if (!found.ok) return found;
  const value = pick(found.value.row);
  return value === undefined ? refuse("none", none) : answer({ value, source: found.value.source });
};

/** A source with one more note. */
export const noted = (source: Source, note: string): Source => ({
  ...source,
  note: source.note ? `${source.note}; ${note}` : note,
});

const noRow = ({ acts, rows, source }: RatedTable<Rated, Acts>, ratedkV: number): Said => {
  const rated = rows.map((one) => one.ratedkV);
  const below = rated.findLast((one) => one < ratedkV);
  const above = rated.find((one) => one > ratedkV);
  const near = [below, above].filter((one) => one !== undefined).map((one) => `${one} kV`);
  return (text) => text.standards.noRow(sourceName(source), ratedkV, near, acts === "stress");
};
