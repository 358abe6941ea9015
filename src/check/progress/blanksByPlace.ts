import { type Column, verdictOf } from "../../records/kind";
import type { JudgedTable } from "../context";

/** Blank entries of a row. */
export interface BlanksByPlace {
  /** Those that a layout of somebody's own has no cell for in any row; at the first row with a reading alone. */
  readonly absent: readonly Column[];
  readonly lacking: readonly Column[];
}

/**
 * Parts the blank entries of rows into those that a person can fill in at the row, and those that its
 * layout has no place for, which are one thing to say for the whole block.
 *
 * @example blanksByPlace(table)(0, [temperature]) // { absent: [], lacking: [temperature] } in a table of ours
 */
export const blanksByPlace = (
  table: JudgedTable,
): ((row: number, blank: readonly Column[]) => BlanksByPlace) => {
  if (!table.table.ownLayout) return (_row, lacking) => ({ absent: [], lacking });
  const first = table.judged.findIndex(
    (row, at) => verdictOf(row) !== "Missing" && !table.aside.has(at),
  );
  return (row, blank) => ({
    absent: row === first ? blank.filter(({ id }) => !table.at.has(id)) : [],
    lacking: blank.filter(({ id }) => table.at.has(id)),
  });
};
