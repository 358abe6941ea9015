/** Points of a table, their first coordinates rising. */
export type Points = readonly (readonly [x: number, y: number])[];

/**
 * Straight line between the two tabulated points around x; a tabulated point gives its own value.
 *
 * @returns undefined outside the table: nothing here extrapolates
 * @example interpolate([[5, 1.5], [20, 0.75]], 10) // 1.25
 */
export const interpolate = (points: Points, x: number): number | undefined => {
  const above = points.findIndex(([at]) => at >= x);
  const [high, low] = [points[above], points[above - 1]];
  if (high === undefined || high[0] === x) return high?.[1];
  return low && low[1] + ((high[1] - low[1]) * (x - low[0])) / (high[0] - low[0]);
};
