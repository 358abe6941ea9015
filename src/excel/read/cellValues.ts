import type { CellValue } from "../../records/kind";

/** Text that stays text when it is typed: begins with a letter, or a comparison, and reads as no date. */
const PLAIN = /^[\p{L}<>≤≥•]/u;
const DATE_LIKE = /^\p{L}{3,}[\s./-]*\d/u;

/**
 * A value as it is given to Excel, which takes it as if it were typed. An apostrophe keeps text from
 * turning into a formula, a number or a date: designations such as `=K01` and `007` are text.
 * Null clears the cell.
 *
 * @example asInput("=K01") // "'=K01"
 * @example asInput("L1-E") // "L1-E"
 * @example asInput(null) // ""
 */
export const asInput = (value: CellValue): string | number | boolean =>
  value === null
    ? ""
    : typeof value !== "string" ||
        value === "" ||
        (PLAIN.test(value) && !DATE_LIKE.test(value) && !/^(true|false)$/i.test(value))
      ? value
      : `'${value}`;

/** A value as Excel gives it; blank text is a blank cell. */
export const asCell = (value: unknown): CellValue =>
  value === "" || value === undefined ? null : (value as CellValue);

/**
 * The formula of a cell with its equals sign, where it has one. Text that begins with an equals sign is
 * told from a formula by its value: it is the same.
 */
export const asFormula = (formula: unknown, value: unknown): string | undefined =>
  typeof formula === "string" && formula.startsWith("=") && formula !== value ? formula : undefined;

/** What to write to a cell so that it holds again what was read from it. */
export const asBefore = (formula: unknown, value: unknown): string | number | boolean =>
  asFormula(formula, value) ?? asInput(asCell(value));
