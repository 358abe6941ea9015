import { readBounded } from "../quantities/reading/bounded";
import { readPlain } from "../quantities/reading/readPlain";
import type { Unit } from "../quantities/units";
import { judge, type Sense, type Verdict } from "../standards/judge";
import type { CellValue } from "./kind";
import { quantity } from "./quantity";

/**
 * The verdict on a cell against its limit's cell, as the worksheet function JUDGE gives it: with a unit, text
 * is read as written on site. What cannot be read is inconclusive.
 */
export function judged(
  value: CellValue | undefined,
  limit: CellValue | undefined,
  sense: Sense,
  tolerance?: number,
  unit?: Unit,
): Verdict {
  const plain = readBounded(value);
  const found = plain.ok ? plain.value : unit && quantity(value, unit);
  const bar = readPlain(limit);
  return found && bar.ok ? judge(found, bar.value, sense, tolerance) : "Inconclusive";
}
