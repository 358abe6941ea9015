import { polarizationIndex } from "../engineering/ratios";
import { answer } from "../quantities/result";
import { quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Polarization index, R(10 min) / R(1 min), or text saying why it is not meaningful. It informs; it does not accept switchgear.
 * @customfunction POLARIZATION
 * @param r1min Resistance after 1 min, MΩ or as written
 * @param r10min Resistance after 10 min, MΩ or as written
 * @returns Index, a pure number, or text
 */
export function polarization(r1min: unknown[][], r10min: unknown[][]): unknown[][] {
  return spill(
    [
      quantity("Resistance after 1 min", r1min, "MΩ"),
      quantity("Resistance after 10 min", r10min, "MΩ"),
    ],
    (first, last) => {
      const index = polarizationIndex(first, last);
      return !index.ok && index.kind === "none" ? answer(index.reason) : index;
    },
  );
}
