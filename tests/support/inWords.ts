import type { Said } from "../../src/messages/reasons";
import { type Told, toldIn } from "../../src/messages/told";

/** What is told, in English. */
export const english: Told = toldIn("en");

/** What somebody who reads English is told in place of `Said`. */
type InWords<T> =
  T extends Said<never>
    ? string
    : T extends ReadonlySet<unknown> | ReadonlyMap<unknown, unknown>
      ? T
      : T extends object
        ? { [Key in keyof T]: InWords<T[Key]> }
        : T;

/**
 * An outcome with everything that it tells put into English words.
 *
 * @example inWords(refuse("none", ({ engineering }) => engineering.fewValues)).say // "A spread needs …"
 */
export const inWords = <T>(outcome: T): InWords<T> => worded(outcome) as InWords<T>;

const worded = (part: unknown): unknown => {
  if (typeof part === "function") return part.length === 1 ? saidBy(part as Said<Told>) : part;
  if (Array.isArray(part)) return part.map(worded);
  if (typeof part !== "object" || part === null || Object.getPrototypeOf(part) !== Object.prototype)
    return part;
  return Object.fromEntries(Object.entries(part).map(([key, value]) => [key, worded(value)]));
};

/** What a function tells; itself, where it tells nothing. */
const saidBy = (say: Said<Told>): unknown => {
  try {
    const words: unknown = say(english);
    return typeof words === "string" ? words : say;
  } catch {
    return say;
  }
};
