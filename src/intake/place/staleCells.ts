import { type Column, isBlank } from "../../records/kind";
import type { RecordRows } from "../rows/recordRows";
import { isShared } from "./sharedCells";

/** What a record holds of the test whose reading is replaced, and the new reading does not bring. */
export interface StaleCells {
  /** Of another test: to be taken off the record. */
  readonly gone: readonly Column[];
  /** Left where they are, and why. */
  readonly left: readonly { readonly column: Column; readonly why: "same day" | "other rows" }[];
}

/**
 * The conditions and the trail of a record whose reading is replaced. A reading is corrected by its own
 * temperature and vouched for by its own day and instrument: those of the test before would judge the new
 * one by what did not hold. They stay where the new reading is of the same day, and where their cell is
 * of other records too.
 *
 * @param given ids of the columns that the new line fills
 * @param day serial day of the new reading, with or without its time; undefined where it tells none
 * @example staleCells(insulation, 0, new Set(["reading"]), undefined).gone // temperature, date, instrument …
 */
export const staleCells = (
  table: RecordRows,
  row: number,
  given: ReadonlySet<string>,
  day: number | undefined,
): StaleCells => {
  const stored = table.rows[row] ?? {};
  const standing = table.kind.columns.filter(
    ({ id, role, need }) =>
      role === "entry" &&
      need !== "reading" &&
      !given.has(id) &&
      !isBlank(stored[id]) &&
      (!table.at || table.at.has(id)),
  );
  const same =
    day !== undefined &&
    typeof stored.date === "number" &&
    Math.floor(day) === Math.floor(stored.date);
  const why = (column: Column) =>
    same ? "same day" : isShared({ table, row, column: column.id }) ? "other rows" : undefined;
  return {
    gone: standing.filter((column) => why(column) === undefined),
    left: standing.flatMap((column) => {
      const reason = why(column);
      return reason ? [{ column, why: reason }] : [];
    }),
  };
};
