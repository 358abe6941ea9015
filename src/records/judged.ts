import { readBounded } from "../quantities/bounded";
import { readPlain } from "../quantities/readPlain";
import { judge, type Sense, type Verdict } from "../standards/judge";
import type { CellValue } from "./kind";

/** The verdict on a computed cell against its limit's cell, as the worksheet function JUDGE gives it; what neither can read is inconclusive. */
export function judged(
  value: CellValue | undefined,
  limit: CellValue | undefined,
  sense: Sense,
  tolerance?: number,
): Verdict {
  const [found, bar] = [readBounded(value), readPlain(limit)];
  return found.ok && bar.ok ? judge(found.value, bar.value, sense, tolerance) : "Inconclusive";
}
