import {
  type BoltGrade,
  type BoltSize,
  boltNamed,
  bolts,
  gradeNamed,
  proofStress,
} from "../engineering/bolts";
import { boltTorque } from "../engineering/boltTorque";
import { optional, pure, word } from "./inputs";
import { spill } from "./spill";

const SIZES = Object.keys(bolts) as BoltSize[];
const GRADES = Object.keys(proofStress) as BoltGrade[];

/**
 * Tightening torque of a bolt, N·m. A fallback: the manufacturer's torque comes first.
 * @customfunction BOLTTORQUE
 * @param size Bolt with coarse thread: M6 to M30, or 1/4 to 1 in inches, as text
 * @param grade Property class 4.6 to 12.9, or SAE 1, SAE 2, SAE 5 or SAE 8
 * @param [friction] Nut factor K; 0.2 (dry) if left out, about 0.15 lubricated
 * @param [utilization] Share of the proof load; 0.56 if left out
 * @returns N·m
 * @example =GEAR.BOLTTORQUE("M12", "8.8") // 65.7
 * @example =GEAR.BOLTTORQUE("1/2", "SAE 5") // 76.3
 * @refuses =GEAR.BOLTTORQUE("M13", "8.8")
 * @refuses =GEAR.BOLTTORQUE("M16", "A2-70")
 * @refuses =GEAR.BOLTTORQUE("M12", "8.8", 0.2, 1.2)
 */
export function bolttorque(
  size: string,
  grade: string,
  friction?: unknown[][],
  utilization?: unknown[][],
): unknown[][] {
  return spill(
    [
      word("Bolt size", named(size, boltNamed), SIZES),
      word("Bolt grade", named(grade, gradeNamed), GRADES),
      optional(pure("Nut factor", friction), 0.2),
      optional(pure("Share of the proof load", utilization), 0.56),
    ],
    boltTorque,
  );
}

const named = (cell: unknown, name: (text: string) => string): unknown =>
  typeof cell === "string" ? name(cell) : cell;
