import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
/**
 * How sure an inspection is of what it found:
 * - `certain`: nothing in the file allows another reading
 * - `likely`: another reading is possible, and nothing in the file speaks for it
 * - `open`: the file does not settle it, and whatever depends on it is asked or refused
 */
export type Confidence = "certain" | "likely" | "open";

/** Something that an inspection found, how it is known, in a sentence, and how surely. */
export interface Evidence<T> {
  readonly value: T;
  readonly evidence: Said<Told>;
  readonly confidence: Confidence;
}

/** What the user has said about it, which then counts alone. */
export const asAnswered = <T>(value: T, what: Said<Told>): Evidence<T> => ({
  value,
  evidence: (text) => text.intake.seen.asSet(what(text)),
  confidence: "certain",
});

/** How the cells of a sheet are told apart: they are. */
export const inSheet = (): Evidence<string> =>
  asAnswered("", ({ intake }) => intake.seen.sheetCells);
