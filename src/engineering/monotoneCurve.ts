import type { Points } from "./interpolate";

/**
 * A smooth curve through every point that rises wherever the points rise: cubic pieces whose slope at
 * a point is the weighted harmonic mean of the slopes beside it (Fritsch and Butland, 1984).
 *
 * @param points three or more, their first coordinates rising
 * @returns the curve, straight on beyond its ends
 * @example monotoneCurve([[0, 0], [1, 1], [2, 2]])(0.5) // 0.5
 */
export const monotoneCurve = (points: Points): ((x: number) => number) => {
  const pieces = points.slice(1).map(([x1, y1], i) => {
    const [x0, y0] = points[i] ?? [0, 0];
    return { x0, y0, width: x1 - x0, slope: (y1 - y0) / (x1 - x0) };
  });
  const slopes = points.map((_, i) => {
    const [before, after] = [pieces[i - 1], pieces[i]];
    return before && after ? between(before, after) : (before ?? after)?.slope;
  });
  return (x) => {
    const at = Math.max(
      0,
      pieces.findLastIndex(({ x0 }) => x0 <= x),
    );
    const { x0, y0, width, slope } = pieces[at] ?? { x0: 0, y0: 0, width: 1, slope: 0 };
    const [first = slope, last = slope] = [slopes[at], slopes[at + 1]];
    const u = (x - x0) / width;
    if (u < 0) return y0 + first * (x - x0);
    if (u > 1) return y0 + slope * width + last * (x - x0 - width);
    const bend = first + last - 2 * slope;
    return y0 + width * u * (first + u * (3 * slope - 2 * first - last + u * bend));
  };
};

interface Piece {
  readonly width: number;
  readonly slope: number;
}

const between = (before: Piece, after: Piece): number => {
  if (before.slope * after.slope <= 0) return 0;
  const share = (before.width + 2 * after.width) / (3 * (before.width + after.width));
  return (before.slope * after.slope) / (share * after.slope + (1 - share) * before.slope);
};
