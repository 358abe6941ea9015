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
  readonly evidence: string;
  readonly confidence: Confidence;
}

/** What the user has said about it, which then counts alone. */
export const asAnswered = <T>(value: T, what: string): Evidence<T> => ({
  value,
  evidence: `${what}, as you set it`,
  confidence: "certain",
});
