import { type Result, refuse } from "../quantities/result";
import { type BoltGrade, type BoltSize, bolts, proofStress } from "./bolts";
import { computed } from "./computed";
import { outside } from "./outside";

/**
 * Tightening torque of a bolt, T = K · F · d, with a preload F of a share of the proof load A_s · S_p.
 *
 * A fallback only: the manufacturer's torque always comes first. A_s and S_p: ISO 898-1 and SAE J429 (`bolts.ts`); K
 * about 0.2 dry, 0.15 lubricated (practice). The share of 0.56 keeps dry 8.8 bolts from M8 to M16
 * inside gear makers' published ranges for busbar joints (17 to 21, 35 to 42, 50 to 70, 135 to
 * 170 N·m, read).
 *
 * @param size M6 to M30, or 1/4 to 1 in UNC
 * @param grade property class 4.6 to 12.9, or SAE 1 to SAE 8
 * @param friction nut factor K, 0.05 to 0.5
 * @param utilization share of the proof load, 0.1 to 0.9
 * @returns N·m; `wrong` for an unknown size or grade, `range` outside
 * @example boltTorque("M12", "8.8") // 65.7
 */
export const boltTorque = (
  size: BoltSize,
  grade: BoltGrade,
  friction = 0.2,
  utilization = 0.56,
): Result<number> => {
  if (!Object.hasOwn(bolts, size))
    return refuse("wrong", (text) =>
      text.engineering.oneOf(text.name("Bolt size"), Object.keys(bolts)),
    );
  if (!Object.hasOwn(proofStress, grade))
    return refuse("wrong", (text) =>
      text.engineering.oneOf(text.name("Bolt grade"), Object.keys(proofStress)),
    );
  const { diameter, area } = bolts[size];
  const { upTo, small, large } = proofStress[grade];
  const proofLoad = area * (diameter > upTo ? large : small);
  return (
    outside("Nut factor", friction, 0.05, 0.5, "") ??
    outside("Share of the proof load", utilization, 0.1, 0.9, "") ??
    computed((friction * utilization * proofLoad * diameter) / 1000)
  );
};
