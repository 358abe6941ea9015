import { quoted } from "./quoted";
import { type DecimalMark, readNumber } from "./readNumber";
import { splitReading } from "./splitReading";

/** Which decimal mark a column or an export uses, and in a sentence how that is known. */
export interface DecimalEvidence {
  readonly mark: DecimalMark | undefined;
  readonly evidence: string;
}

const PLAIN_POINT = /^-?\d+\.(?:\d{1,2}|\d{4,})$/;
const PLAIN_COMMA = /^-?\d+,(?:\d{1,2}|\d{4,})$/;

/** Takes the texts of a column or export one by one, and says which decimal mark they prove. */
export interface DecimalWatch {
  /** @param place where the text stands; asked only of a text that is told */
  readonly note: (text: string, place: () => string) => void;
  readonly evidence: () => DecimalEvidence;
}

/**
 * Finds the decimal mark of a column or export from the texts that can be read one way only.
 *
 * @param texts the column's cells from the first line on; whatever is no number is passed over
 * @param place where the text at an index stands, for the sentence; "line 1" is the first
 * @returns the mark, or undefined where nothing settles it or two texts contradict each other
 * @example decimalMark(["1,250", "0,82"]) // { mark: ",", evidence: 'decimal comma, because "0,82" on line 2 can be read no other way' }
 */
export const decimalMark = (
  texts: Iterable<string>,
  place: (index: number) => string = (index) => `line ${index + 1}`,
): DecimalEvidence => {
  const watch = decimalWatch();
  let index = -1;
  const here = () => place(index);
  for (const text of texts) {
    index += 1;
    watch.note(text, here);
  }
  return watch.evidence();
};

/** The same for texts that come one by one. */
export const decimalWatch = (): DecimalWatch => {
  const proofs: { [mark in DecimalMark]?: string } = {};
  let open: string | undefined;
  return {
    note: (text, place) => {
      // What most instruments write proves its mark without a closer look.
      if (proofs["."] && PLAIN_POINT.test(text)) return;
      if (proofs[","] && PLAIN_COMMA.test(text)) return;
      if (!/[.,．，]/.test(text)) return;
      const parts = splitReading(text);
      const number = parts && readNumber(parts.number, parts.exponent !== "");
      if (number?.mark) proofs[number.mark] ??= `${quoted(text)} on ${place()}`;
      else if (number?.ambiguous) open ??= `${quoted(text)} on ${place()}`;
    },
    evidence: () => evidenceOf(proofs, open),
  };
};

const evidenceOf = (
  proofs: { readonly [mark in DecimalMark]?: string },
  open: string | undefined,
): DecimalEvidence => {
  const { ".": point, ",": comma } = proofs;
  if (point && comma)
    return {
      mark: undefined,
      evidence: `no one decimal mark, because ${point} needs a decimal point and ${comma} a decimal comma`,
    };
  if (point)
    return { mark: ".", evidence: `decimal point, because ${point} can be read no other way` };
  if (comma)
    return { mark: ",", evidence: `decimal comma, because ${comma} can be read no other way` };
  return {
    mark: undefined,
    evidence: open
      ? `decimal mark unknown, because ${open} could be read either way and nothing else settles it`
      : "no decimal mark in use: every number is whole",
  };
};
