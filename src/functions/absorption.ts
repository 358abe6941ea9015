import { absorptionRatio } from "../engineering/ratios";
import { quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Dielectric absorption ratio, R(60 s) / R(30 s). It informs; it does not accept switchgear.
 * @customfunction ABSORPTION
 * @param r30s Resistance after 30 s, MΩ or as written
 * @param r60s Resistance after 60 s, MΩ or as written
 * @returns Ratio, a pure number
 */
export function absorption(r30s: unknown[][], r60s: unknown[][]): unknown[][] {
  return spill(
    [quantity("Resistance after 30 s", r30s, "MΩ"), quantity("Resistance after 60 s", r60s, "MΩ")],
    absorptionRatio,
  );
}
