import type { Said } from "../../messages/reasons";
import { convertText } from "../convert";
import { quoted } from "../quoted";
import { answer, type Result, refuse } from "../result";
import { type Unit, unitSize } from "../units";
import { decimalInches } from "./decimalInches";
import type { Reading } from "./reading";
import { type DecimalMark, type NumberText, readNumber } from "./readNumber";
import { readUnit } from "./readUnit";
import { splitReading } from "./splitReading";

/** A whole number, or one with a point whose fraction cannot be a thousands group. */
const PLAIN = /^-?(?:\d{1,15}(?:\.(?:\d\d?|\d{4,9}))?|0\.\d{3})$/;

export interface ReadingOptions {
  /** The unit of the answer, assumed where the text carries none. */
  readonly unit: Unit;
  /** The decimal mark of the column or export, where it is known. It settles `1.250` and `1,250`. */
  readonly decimal?: DecimalMark;
}

/**
 * Reads what people and instruments write: `5.2 GΩ`, `1 250,5 MOhm`, `> 2 TΩ`, `OL (> 200 GΩ)`, `1.2E+3`.
 *
 * An over-range mark, `>` or `≥` makes the value a lower bound, `<` or `≤` an upper one.
 *
 * @param text the reading as written
 * @param options the unit of the answer, and the decimal mark where known
 * @returns the reading in `options.unit`; `none` for blank text; `wrong` for text that is no reading,
 *   is of another quantity, is ambiguous, or has an over-range mark without the instrument's range;
 *   `range` for a value beyond any number
 * @example readReading("5.2 GΩ", { unit: "MΩ" }) // value 5200, bound "exact"
 * @example readReading("> 2 TΩ", { unit: "MΩ" }) // value 2000000, bound "above"
 */
export const readReading = (text: string, { unit, decimal }: ReadingOptions): Result<Reading> => {
  if (PLAIN.test(text) && (decimal !== "," || !text.includes(".")))
    return answer({ value: Number(text) + 0, unit, bound: "exact", text });
  if (text.trim() === "")
    return refuse("none", ({ quantities }) => quantities.nothingWritten(unit));

  const parts = splitReading(unitSize(unit).quantity === "length" ? decimalInches(text) : text);
  const number = parts && readNumber(parts.number, parts.exponent !== "");
  if (!parts || !number || (parts.over && (parts.number === "" || parts.bound === "<")))
    return refuse("wrong", whyNot(text, parts, unit));
  return inUnit(text, parts, number, { unit, decimal });
};

/** The reading that a sign, number, exponent and unit come to. */
const inUnit = (
  text: string,
  parts: NonNullable<ReturnType<typeof splitReading>>,
  number: NumberText,
  { unit, decimal }: ReadingOptions,
): Result<Reading> => {
  const plain = byDecimalMark(text, number, decimal);
  if (!plain.ok) return plain;
  const written = parts.unit === "" ? answer(unit) : readUnit(parts.unit, unit);
  if (!written.ok) return written;
  const exponent = parts.exponent && `e${parts.exponent}`;
  const value = convertText(`${parts.sign}${plain.value}${exponent}`, written.value, unit);
  if (!value.ok)
    return refuse(value.kind, (words) => words.quantities.because(quoted(text), value.say(words)));
  const bound = BOUNDS[parts.bound || (parts.over ? ">" : "")];
  return answer({ value: value.value, unit, bound, text });
};

/** Why a text is no reading, and what to write. */
const whyNot =
  (text: string, parts: ReturnType<typeof splitReading>, unit: Unit): Said =>
  ({ quantities }) => {
    if (parts?.over && parts.number === "") return quantities.withoutRange(quoted(text), unit);
    if (parts?.over && parts.bound === "<") return quantities.overAndUnder(quoted(text));
    return quantities.noReading(quoted(text), unit);
  };

const BOUNDS = { ">": "above", "<": "below", "": "exact" } as const;

/** Brings the number's own decimal mark and that of its column together, or says why they cannot be. */
const byDecimalMark = (
  text: string,
  { plain, mark, ambiguous }: NumberText,
  decimal: DecimalMark | undefined,
): Result<string> => {
  if (ambiguous === undefined)
    return decimal === undefined || mark === undefined || mark === decimal
      ? answer(plain)
      : refuse("wrong", ({ quantities: { otherMark, marks } }) =>
          otherMark(quoted(text), marks[mark], marks[decimal]),
        );
  const grouped = plain.replace(".", "");
  return decimal === undefined
    ? refuse("wrong", ({ quantities }) =>
        quantities.eitherMark(quoted(text), String(Number(plain)), grouped, plain),
      )
    : answer(decimal === ambiguous ? plain : grouped);
};
