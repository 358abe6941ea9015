import { type Lineup, type OwnCriterion, sameName } from "./lineup";
import { panelOf } from "./panelOf";
import { asQuantity } from "./quantityName";

/** A limit of the maker's or project's own, and the document it stands in. */
export type OwnLimit = Pick<OwnCriterion, "from" | "value" | "document">;

/**
 * The maker's criterion for this quantity and panel or section, else the project's, else none, in
 * which case the standard's applies. Of one giver, a criterion made for the panel comes before one
 * made for its section or for all.
 *
 * @param quantity its name with its unit; a criterion given in another unit is brought to it
 * @param object name of the panel or section
 * @param giver the only one whose criteria are asked for
 */
export function ownCriterion(
  lineup: Lineup,
  quantity: string,
  object: string,
  giver?: OwnCriterion["from"],
): OwnCriterion | undefined {
  const ranked = rankedFor(lineup, quantity);
  if (ranked.length === 0) return undefined;
  const panel = panelOf(lineup, object);
  const targets = panel ? [panel.designation, panel.section] : [object];
  return ranked.find(
    ({ from, applies }) =>
      (giver === undefined || from === giver) &&
      (!applies || applies.some((one) => targets.some((other) => sameName(one, other)))),
  );
}

/** Whether the lineup gives anything for this quantity. */
export const isGiven = (lineup: Lineup, quantity: string): boolean =>
  rankedFor(lineup, quantity).length > 0;

/** Whether what the lineup gives for this quantity, or that it gives nothing, holds for all panels alike. */
export const isForAll = (lineup: Lineup, quantity: string): boolean =>
  rankedFor(lineup, quantity).every(({ applies }) => !applies);

const known = new WeakMap<Lineup, Map<string, readonly OwnCriterion[]>>();

/** The criteria of a quantity, the one that comes first in front. */
function rankedFor(lineup: Lineup, quantity: string): readonly OwnCriterion[] {
  const ofLineup = known.get(lineup) ?? new Map<string, readonly OwnCriterion[]>();
  known.set(lineup, ofLineup);
  const ranked =
    ofLineup.get(quantity) ??
    lineup.criteria
      .flatMap((criterion) => {
        const value = asQuantity(criterion.value, criterion.quantity, quantity);
        return value === undefined ? [] : [{ ...criterion, quantity, value }];
      })
      .sort((one, other) => rank(one) - rank(other));
  ofLineup.set(quantity, ranked);
  return ranked;
}

const rank = ({ from, applies }: OwnCriterion) => (from === "maker" ? 0 : 2) + (applies ? 0 : 1);

/** The source of an own criterion in one line. */
export const ownSourceText = ({ document, from }: OwnLimit): string => `${document} (${from})`;
