import { type BoltGrade, type BoltSize, bolts, proofStress } from "../engineering/bolts";
import { boltTorque } from "../engineering/boltTorque";
import { optional, pure, word } from "./inputs";
import { spill } from "./spill";

/** @customenum {string} */
export enum BolttorqueSize {
  /** Metric, coarse thread, 8 mm */
  m8 = "M8",
  /** Metric, coarse thread, 10 mm */
  m10 = "M10",
  /** Metric, coarse thread, 12 mm */
  m12 = "M12",
  /** Metric, coarse thread, 14 mm */
  m14 = "M14",
  /** Metric, coarse thread, 16 mm */
  m16 = "M16",
  /** Metric, coarse thread, 20 mm */
  m20 = "M20",
  /** Metric, coarse thread, 24 mm */
  m24 = "M24",
}

/** @customenum {string} */
export enum BolttorqueGrade {
  /** Property class 8.8 */
  grade88 = "8.8",
  /** Property class 10.9 */
  grade109 = "10.9",
  /** Property class 12.9 */
  grade129 = "12.9",
}

const SIZES = Object.keys(bolts) as BoltSize[];
const GRADES = Object.keys(proofStress) as BoltGrade[];

/**
 * Tightening torque of a bolt, N·m. A fallback: the manufacturer's torque comes first.
 * @customfunction BOLTTORQUE
 * @param size Bolt, M8 to M24
 * @param grade Property class: 8.8, 10.9 or 12.9
 * @param [friction] Nut factor K; 0.2 (dry) if left out, about 0.15 lubricated
 * @param [utilization] Share of the proof load; 0.56 if left out
 * @returns N·m
 * @example =GEAR.BOLTTORQUE("M12", "8.8") // 65.7
 * @refuses =GEAR.BOLTTORQUE("M13", "8.8")
 * @refuses =GEAR.BOLTTORQUE("M12", "8.8", 0.2, 1.2)
 */
export function bolttorque(
  size: BolttorqueSize,
  grade: BolttorqueGrade,
  friction?: unknown[][],
  utilization?: unknown[][],
): unknown[][] {
  return spill(
    [
      word("Bolt size", size, SIZES),
      word("Bolt grade", grade, GRADES),
      optional(pure("Nut factor", friction), 0.2),
      optional(pure("Share of the proof load", utilization), 0.56),
    ],
    boltTorque,
  );
}
