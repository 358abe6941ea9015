import type { Reasons, Said } from "../messages/reasons";

/**
 * What a calculation gives: a value, or a refusal that says why and what would be right.
 *
 * `kind` tells a spreadsheet which error to show:
 * - `wrong`: not the sort of thing asked for (`#VALUE!`), e.g. text where a number belongs
 * - `range`: the right sort, but outside what the formula allows (`#NUM!`), e.g. a negative resistance
 * - `none`: nothing to answer with (`#N/A`), e.g. no criterion for this rated voltage
 */
export type Result<T, Text = Reasons> = Answer<T> | Refusal<Text>;

export interface Answer<T> {
  readonly ok: true;
  readonly value: T;
}

export interface Refusal<Text = Reasons> {
  readonly ok: false;
  readonly kind: "wrong" | "range" | "none";
  /** Why, and what would be right. */
  readonly say: Said<Text>;
}

export const answer = <T>(value: T): Answer<T> => ({ ok: true, value });

export const refuse = <Text = Reasons>(kind: Refusal["kind"], say: Said<Text>): Refusal<Text> => ({
  ok: false,
  kind,
  say,
});
