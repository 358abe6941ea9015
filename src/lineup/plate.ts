import type { Lineup, Panel } from "./lineup";
import type { OwnLimit } from "./ownCriterion";
import { panelOf } from "./panelOf";

export type Breaker = NonNullable<Panel["breaker"]>;

/** The breaker of a panel. */
export const breakerOf = (lineup: Lineup, object: string): Breaker | undefined =>
  panelOf(lineup, object)?.breaker;

/** A limit that the plate or data sheet of a panel's breaker gives, with the document it stands in. */
export function plateLimit(
  lineup: Lineup,
  object: string,
  pick: (breaker: Breaker) => number | undefined,
): OwnLimit | undefined {
  const breaker = breakerOf(lineup, object);
  const value = breaker && pick(breaker);
  return value === undefined
    ? undefined
    : { from: "maker", value, document: breaker?.document ?? "breaker's data sheet" };
}
