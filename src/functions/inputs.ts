import type { InputName } from "../messages/inputName";
import type { Reasons } from "../messages/reasons";
import type { Bounded } from "../quantities/reading/bounded";
import { readPlain } from "../quantities/reading/readPlain";
import { readReading } from "../quantities/reading/readReading";
import { answer, type Result, refuse } from "../quantities/result";
import type { Unit } from "../quantities/units";
import { BASES, type Basis } from "../standards/criterion";
import type { Cell } from "./excel";

/** One argument of a worksheet function: its name, by which the messages know it, its cells, how one is read. */
export interface Input<T> {
  readonly name: InputName;
  readonly cells: unknown;
  readonly read: (cell: Cell) => Result<T>;
  /** What a blank cell stands for; without it a blank argument gives a blank. */
  readonly blank?: T;
}

/** The same argument, with a value for a blank. */
export const optional = <T, const B>({ name, cells, read }: Input<T>, blank: B): Input<T | B> => ({
  name,
  cells,
  read,
  blank,
});

/** A quantity, exact or a bound: a number is in `unit`, text is read as written on site. */
export const reading = (name: InputName, cells: unknown, unit: Unit): Input<Bounded> => ({
  name,
  cells,
  read: (cell) => {
    if (typeof cell === "number" && Number.isFinite(cell))
      return answer({ value: cell, bound: "exact" });
    return typeof cell === "string"
      ? readReading(cell, { unit })
      : refuse("wrong", (text) => text.functions.noQuantity(shown(cell, text), unit));
  },
});

/** A quantity that must be known exactly. */
export const quantity = (name: InputName, cells: unknown, unit: Unit): Input<number> => {
  const { read } = reading(name, cells, unit);
  return {
    name,
    cells,
    read: (cell) => {
      if (typeof cell === "number" && Number.isFinite(cell)) return answer(cell);
      const found = read(cell);
      if (!found.ok) return found;
      return found.value.bound === "exact"
        ? answer(found.value.value)
        : refuse("wrong", (text) => text.functions.onlyBound(shown(cell, text), unit));
    },
  };
};

/** A number without a unit, or text that is one with a decimal point. */
export const pure = (name: InputName, cells: unknown): Input<number> => ({
  name,
  cells,
  read: (cell) => {
    const found = readPlain(cell);
    return found.ok ? found : refuse("wrong", (text) => text.functions.noNumber(shown(cell, text)));
  },
});

/** A rated ratio: a number, or two of them as on a plate, `400/5` or `11000:110`. */
export const ratioOf = (name: InputName, cells: unknown): Input<number> => ({
  name,
  cells,
  read: (cell) => {
    const [, primary, secondary] =
      typeof cell === "string" ? (/^([^/:]+)[/:]([^/:]+)$/.exec(cell) ?? []) : [];
    if (primary === undefined || secondary === undefined) return pure(name, cells).read(cell);
    const value = Number(primary) / Number(secondary);
    return Number.isFinite(value)
      ? answer(value)
      : refuse("wrong", (text) => text.functions.noRatio(shown(cell, text)));
  },
});

/** A name as a plate or drawing writes it; what it names is looked up later. */
export const named = (name: InputName, cells: unknown): Input<string> => ({
  name,
  cells,
  read: (cell) =>
    typeof cell === "string" || typeof cell === "number"
      ? answer(String(cell))
      : refuse("wrong", (text) => text.functions.noName(shown(cell, text))),
});

/** One of a few words; case and a degree sign make no difference. */
export const word = <T extends string>(
  name: InputName,
  cells: unknown,
  words: readonly T[],
): Input<T> => ({
  name,
  cells,
  read: (cell) => {
    const found =
      words.find((one) => one === cell) ?? words.find((one) => fold(one) === fold(cell));
    return found === undefined
      ? refuse("wrong", (text) => text.functions.noWord(shown(cell, text), words))
      : answer(found);
  },
});

/**
 * The basis whose criteria apply. `PROJECT` is known and refused: a worksheet function sees nothing but
 * its arguments, and the project's own criteria stand on the workbook's sheet Criteria.
 */
export const basisOf = (cells: unknown): Input<Basis> => {
  const { name, read } = word("Basis", cells, BASES);
  return {
    name,
    cells,
    read: (cell) =>
      fold(cell) === "project" ? refuse("none", (text) => text.functions.ownCriteria) : read(cell),
  };
};

const fold = (cell: Cell): string => written(cell).trim().replace("°", "").toLowerCase();

const written = (cell: Cell): string =>
  typeof cell === "string" || typeof cell === "number" ? String(cell) : "";

const shown = (cell: Cell, { functions }: Reasons): string =>
  typeof cell === "string" || typeof cell === "number" || typeof cell === "boolean"
    ? `"${String(cell).slice(0, 40)}"`
    : functions.whatStands;
