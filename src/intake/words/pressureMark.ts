/** What a gas pressure stands above: the air around, or nothing. */
export type PressureMark = "gauge" | "absolute";

/** No unit with its mark is longer. */
const LONGEST = 100;
const MARKED =
  /(?<=(?<!\p{L})(?:m?bar|[kMh]?Pa|psi))[\s,]{0,2}[([]?(g|gauge|man(?:\.|om\p{L}{0,9})?|(?:über|relativ)druck|absolutdruck|rel(?:\.|ati[vf]\p{L}{0,2})?|ü|a|abs(?:\.|olut?\p{L}{0,2})?)[)\]]?$/iu;

/** A unit of pressure without the mark after it: `bar g`, `barg` and `bar (abs)` are bar. */
export const withoutPressureMark = (text: string): string =>
  text.length > LONGEST ? text : text.replace(MARKED, "");

/**
 * What the mark after a unit of pressure says, at the end of a reading or of a title.
 *
 * @example pressureMark("SF6 pressure (bar g)") // "gauge"
 */
export const pressureMark = (text: string): PressureMark | undefined => {
  if (text.length > LONGEST) return undefined;
  const [, mark] = MARKED.exec(text.trim().replace(/[)\]]$/, "")) ?? [];
  if (mark === undefined) return undefined;
  return mark.toLowerCase().startsWith("a") ? "absolute" : "gauge";
};
