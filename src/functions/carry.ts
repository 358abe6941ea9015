import { bounded } from "../quantities/reading/bounded";
import type { Bound } from "../quantities/reading/reading";
import { answer, type Result } from "../quantities/result";

/** What was computed from a bound is a bound of the same side, shown as text. */
export const carry = (found: Result<number>, bound: Bound): Result<number | string> =>
  found.ok ? answer(bounded({ value: found.value, bound })) : found;
