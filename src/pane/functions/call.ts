import { functions } from "../../functions/catalogue";
import type { FunctionGuide } from "../../functions/guide";
import { readPlain } from "../../quantities/reading/readPlain";
import type { Locale } from "../locale";

/** An argument as it is given: typed, or taken from cells. */
export type Given =
  | { readonly typed: string }
  | { readonly cells: string; readonly values: readonly (readonly unknown[])[] };

/** A call of a worksheet function, as far as it is given. */
export interface Call {
  /** As a cell holds it, with the decimal point that every formula has here. */
  readonly formula: string;
  /** What it comes to; undefined where something is still missing. */
  readonly result: readonly (readonly unknown[])[] | undefined;
  /** Labels of the parameters that have to be given and are not. */
  readonly missing: readonly string[];
}

/** Cells of a sheet as a formula names them. */
export const reference = (sheet: string, address: string): string =>
  `'${sheet.replaceAll("'", "''")}'!${address}`;

/** An argument typed: a number in the user's language, else text as written on site. */
const typedValue = (typed: string, { decimal }: Locale): string | number => {
  const read = readPlain(typed.trim().replace(decimal, "."));
  return read.ok ? read.value : typed.trim();
};

const isGiven = (one: Given | undefined): one is Given =>
  one !== undefined && ("cells" in one || one.typed.trim() !== "");

/**
 * The call that these arguments make, in the order of the function's parameters.
 *
 * @example callOf(withstand, [{ typed: "12" }], locale).formula // "=GEAR.WITHSTAND(12)"
 */
export function callOf(
  { name, parameters }: FunctionGuide,
  given: readonly (Given | undefined)[],
  locale: Locale,
): Call {
  const last = parameters.findLastIndex((_, at) => isGiven(given[at]));
  const some = parameters.slice(0, last + 1).map((_, at) => {
    const one = given[at];
    if (!isGiven(one)) return { written: "", values: undefined };
    if ("cells" in one) return { written: one.cells, values: one.values };
    const value = typedValue(one.typed, locale);
    const written = typeof value === "number" ? String(value) : `"${value.replaceAll('"', '""')}"`;
    return { written, values: [[value]] };
  });
  const missing = parameters
    .filter(({ optional }, at) => !optional && !isGiven(given[at]))
    .map(({ label }) => label);
  const formula = `=GEAR.${name}(${some.map(({ written }) => written).join(", ")})`;
  if (missing.length > 0) return { formula, result: undefined, missing };
  const outcome: unknown = functions[name]?.(...(some.map(({ values }) => values) as never[]));
  return { formula, result: Array.isArray(outcome) ? outcome : [[outcome]], missing };
}
