import type { Lineup } from "./lineup";

/**
 * Whether two lineups are of different switchgear, not one as it was before and after a change: they share
 * no panel, or both name and number of their projects differ.
 *
 * @example isOtherLineup(lineup, { ...lineup, ratedkV: 24 }) // false: the same panels
 */
export const isOtherLineup = (one: Lineup, other: Lineup): boolean => {
  const names = ({ panels }: Lineup) =>
    panels.flatMap(({ designation, knownAs = designation }) => [designation, knownAs]);
  const panels = new Set(names(one));
  if (!names(other).some((name) => panels.has(name))) return true;
  const [a, b] = [one.project, other.project];
  return (
    a.number !== undefined && b.number !== undefined && a.number !== b.number && a.name !== b.name
  );
};
