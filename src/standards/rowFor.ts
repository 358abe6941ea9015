/**
 * The row of a table that a rated voltage belongs to: the one with the least rated voltage that is
 * not below it. Nothing is interpolated; beyond the last row there is none.
 *
 * @param rows by rising rated voltage, kV
 * @example rowFor([{ ratedkV: 5 }, { ratedkV: 8 }], 7.2) // { ratedkV: 8 }
 */
export const rowFor = <T extends { readonly ratedkV: number }>(
  rows: readonly T[],
  ratedkV: number,
): T | undefined => rows.find((row) => row.ratedkV >= ratedkV);
