import { gradeNamed } from "../engineering/bolts";
import type { Told } from "../messages/told";
import { answer, type Result, refuse } from "../quantities/result";
import type { Criterion } from "./criterion";
import { jointTorques, type TorqueRow } from "./neta-ats.2025";

const MATERIALS: readonly (readonly [RegExp, string])[] = [
  [/silicon bronze.*lubric/i, "silicon bronze, lubricated"],
  [/bronze/i, "silicon bronze"],
  [/alumin/i, "aluminum"],
  [/stainless/i, "stainless"],
];

/**
 * Torque of a bolted electrical joint where its maker gives none, lbf·ft: ANSI/NETA table 100.12 by material
 * and grade (memory).
 *
 * @param bolt size, inches: 1/4 to 1
 * @param grade SAE 1, 2, 5, 7 or 8, silicon bronze, aluminum or stainless
 * @returns `none` for metric bolts and what the tables have no row for
 * @example jointTorque("1/2", "SAE 5") // 48
 */
export const jointTorque = (bolt: string, grade: string): Result<Criterion, Told> => {
  const name = MATERIALS.find(([words]) => words.test(grade))?.[1] ?? gradeNamed(grade);
  const row = Object.hasOwn(jointTorques.rows, name) ? jointTorques.rows[name] : undefined;
  const value = row?.[bolt as Exclude<keyof TorqueRow, "place">];
  return row && value !== undefined
    ? answer({ value, source: { ...jointTorques.source, place: row.place } })
    : refuse("none", ({ records }: Told) => records.noTorque(bolt, grade));
};
