import type { Result } from "../quantities/result";
import { answer } from "../quantities/result";
import type { Criterion } from "../standards/criterion";

/** The figure of a criterion alone. */
export const figure = <T>(found: Result<Criterion<T>>): Result<T> =>
  found.ok ? answer(found.value.value) : found;
