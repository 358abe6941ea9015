import type { Source } from "../criteria/criterion";
import { type Lineup, type OwnCriterion, type OwnQuantity, sameName } from "./lineup";

/**
 * The maker's criterion for this quantity and panel or section, else the project's, else none, in
 * which case the standard's applies. One made for the panel comes before one made for all.
 *
 * @param targets names that the criterion may apply to: the panel, its section
 */
export function ownCriterion(
  lineup: Lineup,
  quantity: OwnQuantity,
  targets: readonly string[],
): OwnCriterion | undefined {
  const fitting = lineup.criteria.filter(
    (criterion) =>
      criterion.quantity === quantity &&
      (!criterion.applies ||
        criterion.applies.some((one) => targets.some((other) => sameName(one, other)))),
  );
  const rank = (criterion: OwnCriterion) =>
    (criterion.from === "maker" ? 0 : 2) + (criterion.applies ? 0 : 1);
  return fitting.reduce<OwnCriterion | undefined>(
    (best, next) => (best && rank(best) <= rank(next) ? best : next),
    undefined,
  );
}

/** The source that an own criterion names. */
export const ownSource = ({ document, from }: OwnCriterion): Source => ({
  document,
  edition: "",
  certainty: from,
});
