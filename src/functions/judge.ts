import { type Bounded, readBounded } from "../quantities/reading/bounded";
import { readUnit } from "../quantities/reading/readUnit";
import { answer, type Result, refuse } from "../quantities/result";
import type { Unit } from "../quantities/units";
import { judge as judgeValue, SENSES, type Sense } from "../standards/judge";
import type { Cell } from "./excel";
import { optional, pure, reading, word } from "./inputs";
import { limitAsWritten, type WrittenLimit } from "./limitAsWritten";
import { spill } from "./spill";

/** @customenum {string} */
export enum JudgeSense {
  /** The value is to be the limit or more */
  least = "least",
  /** The value is to be the limit or less */
  most = "most",
  /** The magnitude is to be the limit or less */
  within = "within",
  /** The value is to be the limit itself */
  equal = "equal",
  /** As least */
  min = "min",
  /** As most */
  max = "max",
  /** As least */
  atLeast = "at least",
  /** As most */
  atMost = "at most",
}

/**
 * Judges a value against its limit: Pass, Fail, Missing or Inconclusive. A bound such as "> 3160000" judges only where it decides.
 * @customfunction JUDGE
 * @param value Value in the limit's unit, or a bound as text, such as "> 3160000"
 * @param limit Limit; left blank, the result is Inconclusive. Where Sense is left out, also as written: "at least 5 GΩ", "max 50 µΩ", "> 2 TΩ"
 * @param [sense] least (min, at least), most (max, at most), within or equal; if left out as the limit says, else least
 * @param [tolerance] Fraction of the limit granted in the value's favour; 0 if left out
 * @param [unit] Unit of the limit; given, the value may be text as written on site, such as "48 lbf·ft"; a number or bound alone if left out
 * @returns Pass, Fail, Missing or Inconclusive
 * @example =GEAR.JUDGE(5200, 5000) // "Pass"
 * @example =GEAR.JUDGE("> 2000", 5000) // "Inconclusive"
 * @example =GEAR.JUDGE(52, 50, "most", 0.05) // "Pass"
 * @example =GEAR.JUDGE("5 kV", 5000, "least", 0, "V") // "Pass"
 * @example =GEAR.JUDGE(48, 50, "max") // "Pass"
 * @example =GEAR.JUDGE("> 2 TΩ", "at least 5 GΩ") // "Pass"
 * @example =GEAR.JUDGE("52 µΩ", "max 50 µΩ") // "Fail"
 * @refuses =GEAR.JUDGE("OL", 5000)
 */
export function judge(
  value: unknown[][],
  limit: unknown[][],
  sense?: JudgeSense,
  tolerance?: unknown[][],
  unit?: string,
): unknown[][] {
  return spill(
    [
      optional({ name: "Value", cells: value, read: answer }, undefined),
      optional({ name: "Limit", cells: limit, read: answer }, undefined),
      optional(word("Sense", sense, WORDS), undefined),
      optional(pure("Tolerance", tolerance), 0),
      optional({ name: "Unit", cells: unit, read: (cell) => readUnit(String(cell)) }, undefined),
    ],
    (cell, bar, way, grace, of) => {
      const against = limitIn(bar, way, of);
      if (!against.ok)
        return refuse(against.kind, (text) =>
          text.functions.of(text.name("Limit"), against.say(text)),
        );
      const found = valueIn(cell, against.value.unit);
      if (!found.ok) return found;
      const { limit, sense, strict } = against.value;
      const verdict = judgeValue(found.value, limit, sense, grace);
      const isOnIt = found.value?.bound === "exact" && found.value.value === limit;
      return answer(strict && isOnIt && verdict === "Pass" ? "Fail" : verdict);
    },
  );
}

const MEANT: Readonly<Partial<Record<string, Sense>>> = {
  min: "least",
  "at least": "least",
  max: "most",
  "at most": "most",
};
const WORDS: readonly string[] = [...SENSES, ...Object.keys(MEANT)];

/** The limit with the sense that is given; without one, as it is written. */
function limitIn(
  cell: unknown,
  way: string | undefined,
  unit: Unit | undefined,
): Result<Omit<WrittenLimit, "limit"> & { readonly limit: number | undefined }> {
  if (typeof cell === "string" && way === undefined) return limitAsWritten(cell, unit);
  const sense = way === undefined ? "least" : (MEANT[way] ?? (way as Sense));
  const given = { sense, strict: false, ...(unit === undefined ? {} : { unit }) };
  if (cell === undefined) return answer({ limit: undefined, ...given });
  const { read } = pure("Limit", cell);
  const found = read(cell as Cell);
  return found.ok ? answer({ limit: found.value, ...given }) : found;
}

/** A number or a bound as a computed cell shows it; with a unit, also text as written on site. */
const valueIn = (cell: unknown, unit: Unit | undefined): Result<Bounded | undefined> => {
  if (cell === undefined) return answer(undefined);
  const plain = readBounded(cell);
  const found =
    plain.ok || unit === undefined ? plain : reading("Value", cell, unit).read(cell as Cell);
  return found.ok
    ? found
    : refuse(found.kind, (text) => text.functions.of(text.name("Value"), found.say(text)));
};
