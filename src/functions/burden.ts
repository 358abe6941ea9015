import { burdenOhms } from "../engineering/burdenOhms";
import { pure, quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Burden in Ω from its apparent power at rated secondary current.
 * @customfunction BURDEN
 * @param voltamps Burden, VA
 * @param amps Rated secondary current, A
 * @returns Ω
 * @example =GEAR.BURDEN(15, 5) // 0.6
 * @refuses =GEAR.BURDEN(15, 0)
 */
export function burden(voltamps: unknown[][], amps: unknown[][]): unknown[][] {
  return spill(
    [pure("Burden", voltamps), quantity("Rated secondary current", amps, "A")],
    burdenOhms,
  );
}
