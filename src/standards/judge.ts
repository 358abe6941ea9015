import type { Bounded } from "../quantities/reading/bounded";
import type { Bound } from "../quantities/reading/reading";

/** The result of a row. `Inconclusive` is for what cannot be judged; it is never a pass. */
export const VERDICTS = ["Pass", "Fail", "Missing", "Inconclusive", "Not required"] as const;
export type Verdict = (typeof VERDICTS)[number];

/** Which side of the limit is right: at least, at most, a magnitude within it, or the limit itself. */
export const SENSES = ["least", "most", "within", "equal"] as const;
export type Sense = (typeof SENSES)[number];

/** Equality with a limit holds to twelve digits, as far as a computed value can be trusted. */
const DUST = 1e-12;

/**
 * Judges a value against its limit.
 *
 * A bound judges only when it decides: "> 3000" passes a least limit of 3000 and says nothing about
 * 4000; "< 3000" fails one of 4000.
 *
 * @param value in the limit's unit; missing gives `Missing`
 * @param limit missing gives `Inconclusive`
 * @param tolerance fraction of the limit granted in the reading's favour, 0 or more
 * @returns `Inconclusive` as well for any number that is not finite
 * @example judge(5200, 5000) // "Pass"
 * @example judge({ value: 2000, bound: "above" }, 5000) // "Inconclusive"
 */
export const judge = (
  value: Bounded | number | undefined,
  limit: number | undefined,
  sense: Sense = "least",
  tolerance = 0,
): Verdict => {
  if (value === undefined) return "Missing";
  const { value: at, bound } = typeof value === "number" ? { value, bound: EXACT } : value;
  if (limit === undefined || ![at, limit, tolerance].every(Number.isFinite) || tolerance < 0)
    return "Inconclusive";
  const grace = Math.abs(limit) * (tolerance + DUST);
  if (sense === "least") return sided(at, limit - grace, bound);
  if (sense === "most") return sided(-at, -limit - grace, OPPOSITE[bound]);
  if (sense === "equal") return equal(at - limit, grace, bound);
  return within(at, limit + grace, bound);
};

const equal = (off: number, grace: number, bound: Bound): Verdict => {
  if (bound === "exact") return Math.abs(off) <= grace ? "Pass" : "Fail";
  return (bound === "above" ? off : -off) > grace ? "Fail" : "Inconclusive";
};

const EXACT: Bound = "exact";
const OPPOSITE: Readonly<Record<Bound, Bound>> = { exact: "exact", above: "below", below: "above" };

const sided = (at: number, least: number, bound: Bound): Verdict => {
  if (bound === "exact") return at >= least ? "Pass" : "Fail";
  if (bound === "above") return at >= least ? "Pass" : "Inconclusive";
  return at < least ? "Fail" : "Inconclusive";
};

const within = (at: number, most: number, bound: Bound): Verdict => {
  if (bound === "exact") return Math.abs(at) <= most ? "Pass" : "Fail";
  return (bound === "above" ? at : -at) > most ? "Fail" : "Inconclusive";
};
