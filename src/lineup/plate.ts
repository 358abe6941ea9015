import type { Lineup, Panel } from "./lineup";
import type { OwnLimit } from "./ownCriterion";
import { panelOf } from "./panelOf";

export type Breaker = NonNullable<Panel["breaker"]>;

/** The breaker of a panel. */
export const breakerOf = (lineup: Lineup, object: string): Breaker | undefined =>
  panelOf(lineup, object)?.breaker;

/** What a panel's breaker is called in records: `Breaker Q0`, or `Contactor Q0` where that stands in its place. */
export const deviceName = ({ designation, device }: Breaker): string =>
  `${device ? "Contactor" : "Breaker"} ${designation}`;

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

/** A limit that the document of some piece of equipment gives; none where it is silent. */
export const itemLimit = (
  item: { readonly document?: string | undefined } | undefined,
  value: number | undefined,
): OwnLimit | undefined =>
  value === undefined
    ? undefined
    : { from: "maker", value, document: item?.document ?? "data sheet" };
