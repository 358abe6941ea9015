/** The two marks that part a number's whole from its fraction. Whichever is not, may group thousands. */
export type DecimalMark = "." | ",";

export const otherMark = (mark: DecimalMark): DecimalMark => (mark === "." ? "," : ".");

/**
 * A number's text, understood:
 * - `plain`: its digits with a point as decimal mark and nothing grouped
 * - `mark`: the decimal mark that the text itself proves, where it proves one
 * - `ambiguous`: set where the only mark could be either; `plain` then takes it for a decimal mark
 */
export interface NumberText {
  readonly plain: string;
  readonly mark?: DecimalMark;
  readonly ambiguous?: DecimalMark;
}

/** Thousands in threes by one separator throughout, or the lakh grouping 1,25,000. */
const GROUPED = /^(?:[1-9]\d{0,2}([ '.,])\d{3}(?:\1\d{3})*|[1-9]\d?(?:,\d\d)+,\d{3})$/;

const ungroup = (text: string): string | undefined =>
  /^\d+$/.test(text) ? text : GROUPED.test(text) ? text.replace(/[ '.,]/g, "") : undefined;

/**
 * Tells the whole, the fraction and the thousands separators of an unsigned number.
 *
 * One mark with exactly three digits after it and one to three before could part a fraction or
 * group thousands, so `1.250` and `1,250` are ambiguous. Every other text can be read one way only:
 * a thousands group never begins with a zero, never follows more than three digits, and never
 * stands in a mantissa.
 *
 * @param text digits, marks, spaces and apostrophes
 * @param mantissa whether an exponent follows
 * @returns undefined where the text is no number
 * @example readNumber("1 250,5") // { plain: "1250.5", mark: "," }
 * @example readNumber("1,250") // { plain: "1.250", ambiguous: "," }
 */
export const readNumber = (text: string, mantissa = false): NumberText | undefined => {
  const marks = text.replace(/[^.,]/g, "");
  const last = marks.at(-1) as DecimalMark | undefined;
  if (last === undefined) return whole(text);

  if (marks.length > 1 && marks === last.repeat(marks.length) && !mantissa)
    return whole(text, otherMark(last));

  const at = text.lastIndexOf(last);
  const [before, after] = [text.slice(0, at), text.slice(at + 1)];
  if (before.includes(last) || !/^\d*$/.test(after)) return undefined;
  if (!mantissa && after.length === 3 && /^[1-9]\d{0,2}$/.test(before))
    return { plain: `${before}.${after}`, ambiguous: last };

  const digits = before === "" ? "0" : ungroup(before);
  return digits === undefined ? undefined : { plain: `${digits}.${after}`, mark: last };
};

const whole = (text: string, mark?: DecimalMark): NumberText | undefined => {
  const plain = ungroup(text);
  return plain === undefined ? undefined : { plain, ...(mark && { mark }) };
};
