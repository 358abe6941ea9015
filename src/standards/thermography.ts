import type { Criterion } from "./criterion";
import { riseOfBolted, riseOfSilvered } from "./iec60694.1996";
import { riseOverAir, riseOverSimilar, wrongOverAir, wrongOverSimilar } from "./neta-ats.2003";

/** A temperature rise up to which nothing is asked, and the one above which it is wrong, K. */
interface Rise {
  readonly study: Criterion;
  readonly wrong: Criterion;
}

/**
 * Temperature rises of a connection under load, over a similar one and over the air. Where a similar one is as warm,
 * the air's limit is what the standard of the gear allows a bolted connection, by its plating.
 */
export const rises = {
  similar: { study: riseOverSimilar, wrong: wrongOverSimilar },
  air: { study: riseOverAir, wrong: wrongOverAir },
  airBesideSimilar: { study: riseOfBolted, wrong: riseOfSilvered },
} as const satisfies Record<string, Rise>;
