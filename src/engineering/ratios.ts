import type { Reasons } from "../messages/reasons";
import type { Bounded } from "../quantities/reading/bounded";
import { answer, type Result, refuse } from "../quantities/result";
import { computed } from "./computed";
import { notPositive } from "./notPositive";

/** Above this resistance at one minute, MΩ, the index says nothing (IEEE 43-2013, read in quotation). */
const MEANINGFUL = 5000;

/**
 * Dielectric absorption ratio, R(60 s) / R(30 s), of two insulation resistances of one test.
 *
 * Comes from winding insulation (IEEE 43-2013, read in quotation); on switchgear it informs, it does
 * not accept.
 *
 * @param r30s resistance after 30 s, MΩ, above 0
 * @param r60s resistance after 60 s, MΩ, above 0
 * @returns a pure number; `range` for a resistance not above 0
 * @example absorptionRatio(1000, 1400) // 1.4
 */
export const absorptionRatio = (r30s: number, r60s: number): Result<number> =>
  notPositive("Resistance after 30 s", r30s, "MΩ") ??
  notPositive("Resistance after 60 s", r60s, "MΩ") ??
  computed(r60s / r30s);

/**
 * Polarization index, R(10 min) / R(1 min).
 *
 * IEEE 43-2013 (read in quotation): not meaningful where R(1 min) exceeds 5000 MΩ, as the current is
 * then too small to be told from its errors; a least index of 1.5 (class A) or 2.0 (B, F, H) is for
 * windings. On switchgear it informs, it does not accept.
 *
 * @param r1min resistance after 1 min, MΩ, above 0
 * @param r10min resistance after 10 min, MΩ, above 0
 * @returns a pure number; `none` where the index is not meaningful, `range` for a resistance not above 0
 * @example polarizationIndex(1000, 2400) // 2.4
 */
export const polarizationIndex = (r1min: number, r10min: number): Result<number> =>
  notPositive("Resistance after 1 min", r1min, "MΩ") ??
  notPositive("Resistance after 10 min", r10min, "MΩ") ??
  (r1min > MEANINGFUL
    ? refuse("none", (text) => text.engineering.noIndex(r1min, MEANINGFUL))
    : computed(r10min / r1min));

/**
 * A ratio of two resistances as read, or the sentence that says why there is none that means anything:
 * where the ratio itself is not meaningful, and where a resistance is only known to lie beyond a bound.
 *
 * @param ratio `absorptionRatio` or `polarizationIndex`
 * @param words what the sentence is written in, as it stands in a cell
 * @returns a pure number or text; `range` for a resistance not above 0
 * @example ratioOrReason(polarizationIndex, {})({ value: 1000, bound: "exact" }, { value: 2400, bound: "exact" }) // 2.4
 */
export const ratioOrReason =
  (ratio: (first: number, last: number) => Result<number>, words: Reasons) =>
  (first: Bounded, last: Bounded): Result<number | string> => {
    const found = ratio(first.value, last.value);
    if (!found.ok) return found.kind === "none" ? answer(found.say(words)) : found;
    return first.bound === "exact" && last.bound === "exact"
      ? found
      : answer(words.engineering.noRatio);
  };
