import type { Told } from "../../messages/told";
import { fieldMeant } from "./fields";
import { isStated, STATED } from "./statedColumns";

/** What a title is mapped to so that its column is left out. */
export const LEFT_OUT = "left out";

/**
 * What a user maps a title to, in our own words for it: a field, `resistance of L1-E`, what a layout
 * states, or left out. Undefined for what is none of these.
 *
 * @example mappedTo("combination") // "position"
 */
export const mappedTo = (answer: string): string | undefined => {
  const text = answer.trim();
  const plain = text.toLowerCase();
  if (plain === LEFT_OUT || isStated(plain)) return plain;
  const whole = fieldMeant(text);
  if (whole !== undefined) return whole;
  const [, head = "", of] = /^(.*\S) of (\S.*)$/.exec(text) ?? [];
  const field = fieldMeant(head);
  return field === undefined || of === undefined ? undefined : `${field} of ${of}`;
};

/** What a title can be mapped to, in words. */
export const mappable = ({ intake }: Told): string =>
  intake.mappable(Object.entries(intake.fields), Object.keys(STATED), LEFT_OUT);
