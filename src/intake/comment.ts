import type { Result } from "../quantities/result";
import type { CellValue, Column } from "../records/kind";

const BESIDE = /^(.*\d.*?)\s*(?:\(([^()]*\p{L}[^()]*)\)|[;*]\s*(\D.*))$/u;

/**
 * A number with a comment beside it, such as `5200 (after cleaning)` or `31,5 * cleaned`.
 *
 * @returns undefined where there is no comment
 * @example besideNumber("5200 (after cleaning)") // { number: "5200", comment: "after cleaning" }
 */
export const besideNumber = (text: string): Beside | undefined => {
  const [, number, bracketed, trailing] = text.length > 300 ? [] : (BESIDE.exec(text.trim()) ?? []);
  const comment = (bracketed ?? trailing)?.trim();
  return number !== undefined && comment ? { number: number.trim(), comment } : undefined;
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
  read: (text: string) => Result<CellValue>,
): { readonly value: Result<CellValue>; readonly comment?: string } => {
  const value = read(text);
  const beside = value.ok || unit === undefined ? undefined : besideNumber(text);
  const number = beside && read(beside.number);
  return number?.ok ? { value: number, comment: beside?.comment } : { value };
};
