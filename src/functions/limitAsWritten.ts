import { readPlain } from "../quantities/reading/readPlain";
import { readReading } from "../quantities/reading/readReading";
import { readUnit } from "../quantities/reading/readUnit";
import { splitReading } from "../quantities/reading/splitReading";
import { answer, type Result, refuse } from "../quantities/result";
import type { Unit } from "../quantities/units";
import type { Sense } from "../standards/judge";

/** A limit with the side on which a value is right. */
export interface WrittenLimit {
  readonly limit: number;
  readonly sense: Sense;
  /** Whether the limit itself is not enough: "> 5" and "< 5". */
  readonly strict: boolean;
  readonly unit?: Unit;
}

const SIDES: readonly (readonly [begins: RegExp, sense: Sense, strict: boolean])[] = [
  [/^(>=|≥|at least|min(imum|\.)?(?![a-z])|least)\s*/i, "least", false],
  [/^(<=|≤|at most|max(imum|\.)?(?![a-z])|most)\s*/i, "most", false],
  [/^>\s*/, "least", true],
  [/^<\s*/, "most", true],
];

/**
 * A limit as a sheet or specification writes it: `at least 5 GΩ`, `max 50 µΩ`, `> 2 TΩ`, `≤ 50`. Without a
 * word or sign it is a least value.
 *
 * @param unit the unit that the limit is wanted in; its own where not given
 * @returns `wrong` where it cannot be read
 * @example limitAsWritten("max 50 µΩ", undefined) // { limit: 50, sense: "most", strict: false, unit: "µΩ" }
 */
export function limitAsWritten(text: string, unit: Unit | undefined): Result<WrittenLimit> {
  const said = text.trim();
  const side = SIDES.find(([begins]) => begins.test(said));
  const [begins, sense, strict] = side ?? [/^/, "least" as const, false];
  const figure = said.replace(begins, "");
  const parts = splitReading(figure);
  const own = parts?.unit ? readUnit(parts.unit) : undefined;
  if (own && !own.ok) return own;
  const into = unit ?? own?.value;
  if (into === undefined) {
    const plain = readPlain(figure);
    return plain.ok
      ? answer({ limit: plain.value, sense, strict })
      : refuse("wrong", (text) => text.functions.noLimit);
  }
  const read = readReading(figure, { unit: into });
  if (!read.ok) return read;
  return read.value.bound === "exact"
    ? answer({ limit: read.value.value, sense, strict, unit: into })
    : refuse("wrong", (text) => text.functions.noLimit);
}
