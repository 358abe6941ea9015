import type { Told } from "../../messages/told";
import type { Result } from "../../quantities/result";
import type { CellValue, Column } from "../../records/kind";

/** No number with its comment is longer. */
const LONGEST = 300;
const TRAILING = /[;*]\s*[^\d\s]/;

/**
 * A number with a comment beside it, such as `5200 (after cleaning)` or `31,5 * cleaned`.
 *
 * @returns undefined where there is no comment
 * @example besideNumber("5200 (after cleaning)") // { number: "5200", comment: "after cleaning" }
 */
export const besideNumber = (text: string): Beside | undefined => {
  const written = text.length > LONGEST ? "" : text.trim();
  const first = written.search(/\d/);
  if (first < 0) return undefined;
  const open = written.endsWith(")") ? written.lastIndexOf("(") : -1;
  const mark = open > first ? open : first + written.slice(first).search(TRAILING);
  if (mark <= first) return undefined;
  const comment = written.slice(mark + 1, open > first ? -1 : undefined).trim();
  return open > first && !/\p{L}/u.test(comment)
    ? undefined
    : { number: written.slice(0, mark).trim(), comment };
};

/** A number's text, and what stands beside it. */
export interface Beside {
  readonly number: string;
  readonly comment: string;
}

/**
 * A cell read for a column, and the comment that stands beside its number where it can be read without
 * that alone.
 *
 * @param read reads a text for the column
 */
export const withoutComment = (
  text: string,
  { unit }: Column,
  read: (text: string) => Result<CellValue, Told>,
): { readonly value: Result<CellValue, Told>; readonly comment?: string } => {
  const value = read(text);
  const beside = value.ok || unit === undefined ? undefined : besideNumber(text);
  const number = beside && read(beside.number);
  return number?.ok ? { value: number, comment: beside?.comment } : { value };
};
