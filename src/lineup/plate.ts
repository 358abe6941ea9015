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

/** What a plate gives beside the breaker's rating: its name on the sheet of criteria, and its path in the breaker. */
export const PLATE: readonly (readonly [quantity: string, path: string])[] = [
  ["contact resistance µΩ", "contactLimit"],
  ["closing time, least ms", "closingMs.least"],
  ["closing time, most ms", "closingMs.most"],
  ["opening time, least ms", "openingMs.least"],
  ["opening time, most ms", "openingMs.most"],
  ["pole spread ms", "poleSpreadMs"],
  ["closing coil, least V", "closingV.least"],
  ["closing coil, most V", "closingV.most"],
  ["opening release, least V", "openingV.least"],
  ["opening release, most V", "openingV.most"],
  ["spring charging s", "chargingS"],
  ["SF6 filling at 20 °C MPa", "gas.fillingMPa"],
  ["SF6 alarm at 20 °C MPa", "gas.alarmMPa"],
  ["SF6 lockout at 20 °C MPa", "gas.lockoutMPa"],
  ["SF6 pressures are", "gas.pressure"],
];

/** What the plate says under a path such as `closingMs.least`. */
export const plateValue = (breaker: Breaker, path: string): number | string | undefined => {
  let at: unknown = breaker;
  for (const key of path.split("."))
    at = typeof at === "object" && at !== null ? (at as Record<string, unknown>)[key] : undefined;
  return typeof at === "number" || typeof at === "string" ? at : undefined;
};
