/** A reading's text in its parts, none of them judged yet. */
export interface ReadingParts {
  /** An over-range mark such as OL or ∞ stood beside the number, or alone. */
  readonly over: boolean;
  readonly bound: ">" | "<" | "";
  readonly sign: "-" | "";
  /** The number with its marks and separators; empty where there is none. */
  readonly number: string;
  readonly exponent: string;
  readonly unit: string;
}

const OVER = "(?:o\\.?l\\.?|o/l|over(?:[ -]?(?:range|load|flow))?|inf(?:inity|inite)?|∞)";
const OVER_FIRST = new RegExp(`^[>≥+]?=? ?${OVER}(?![a-z])[ :,;]*`, "i");
const OVER_LAST = new RegExp(`(^|[^a-z])${OVER}$`, "i");
const BOUND = /^(?:(>=|=>|[>≥⩾])|(?:<=|=<|[<≤⩽])) ?/;
const NUMBER = /^([-+]?) ?([.,]?\d[\d.,' ]*)/;
const EXPONENT = /^(?:e ?|[x×*·] ?10 ?\^ ?)([-+]?\d{1,3})(?!\d)/i;
const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** No reading is longer than this; whatever is, is something else. */
const LONGEST = 80;

/** Full-width signs, the many spaces, minus signs and apostrophes, and raised digits, each made plain. */
const tidy = (text: string): string =>
  text
    .replace(/[！-～]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) - 0xfee0))
    .replace(/[\u200b-\u200f\u2060]/g, "")
    .replace(/\s+/g, " ")
    .replace(/[−–‒﹣]/g, "-")
    .replace(/[’‘ʼ´`]/g, "'")
    .replace(/[⁻⁺]?[⁰¹²³⁴-⁹]+/g, (raised) =>
      raised.replace(/./g, (sign, at: number) => {
        const plain = sign === "⁻" ? "-" : sign === "⁺" ? "+" : String(SUPERSCRIPTS.indexOf(sign));
        return at === 0 ? `^${plain}` : plain;
      }),
    )
    .trim();

/**
 * Splits what was written into over-range mark, bound, number, exponent and unit.
 *
 * @returns undefined where the text holds neither a number nor an over-range mark
 * @example splitReading("OL > 2 TΩ") // { over: true, bound: ">", sign: "", number: "2", exponent: "", unit: "TΩ" }
 */
export const splitReading = (text: string): ReadingParts | undefined => {
  if (text.length > LONGEST) return undefined;
  const all = tidy(text);
  const marked = OVER_FIRST.test(all) || OVER_LAST.test(all.replace(/[ )]+$/, ""));
  const rest = marked
    ? all
        .replace(OVER_FIRST, "")
        .replace(/[()]/g, " ")
        .trim()
        .replace(OVER_LAST, "$1")
        .replace(/[ :,;]+$/, "")
    : all;

  const bound = BOUND.exec(rest);
  const [signed, sign, number = ""] = NUMBER.exec(rest.slice(bound?.[0].length ?? 0)) ?? [""];
  if (number === "" && !(marked && /^[>≥+]?$/.test(rest))) return undefined;

  const tail = rest.slice((bound?.[0].length ?? 0) + signed.length);
  const exponent = EXPONENT.exec(tail);
  return {
    over: marked,
    bound: bound ? (bound[1] ? ">" : "<") : "",
    sign: sign === "-" ? "-" : "",
    number: number.trim(),
    exponent: exponent?.[1] ?? "",
    unit: tail.slice(exponent?.[0].length ?? 0).trim(),
  };
};
