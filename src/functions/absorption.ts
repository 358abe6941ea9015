import { absorptionRatio, ratioOrReason } from "../engineering/ratios";
import { storedReasons } from "../messages/reasons";
import { reading } from "./inputs";
import { spill } from "./spill";

/**
 * Dielectric absorption ratio, R(60 s) / R(30 s), or text saying why it is not meaningful. It informs; it does not accept switchgear.
 * @customfunction ABSORPTION
 * @param r30s Resistance after 30 s, MΩ, or as written
 * @param r60s Resistance after 60 s, MΩ, or as written
 * @returns Ratio, a pure number, or text
 * @example =GEAR.ABSORPTION(1000, 1400) // 1.4
 * @example =GEAR.ABSORPTION("> 2 TΩ", "> 2 TΩ") // "The ratio is not meaningful: a resistance is only known to lie beyond a bound."
 * @refuses =GEAR.ABSORPTION(0, 1400)
 */
export function absorption(r30s: unknown[][], r60s: unknown[][]): unknown[][] {
  return spill(
    [reading("Resistance after 30 s", r30s, "MΩ"), reading("Resistance after 60 s", r60s, "MΩ")],
    ratioOrReason(absorptionRatio, storedReasons()),
  );
}
