import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { quoted } from "../quoted";
import { type DecimalMark, readNumber } from "./readNumber";
import { splitReading } from "./splitReading";

/** Which decimal mark a column or an export uses, and in a sentence how that is known. */
export interface DecimalEvidence {
  readonly mark: DecimalMark | undefined;
  /** Whether the file leaves it open. */
  readonly isOpen: boolean;
  /** Set where it does because its numbers contradict each other. */
  readonly isContradicted?: true;
  readonly evidence: Said<Told>;
}

const PLAIN_POINT = /^-?\d+\.(?:\d{1,2}|\d{4,})$/;
const PLAIN_COMMA = /^-?\d+,(?:\d{1,2}|\d{4,})$/;

/** Takes the texts of a column or export one by one, and says which decimal mark they prove. */
export interface DecimalWatch {
  /** @param line where the text stands */
  readonly note: (text: string, line: number) => void;
  readonly evidence: () => DecimalEvidence;
  /** Whether a mark is proved, by texts that do not contradict each other. */
  readonly isProved: () => boolean;
}

/**
 * Finds the decimal mark of a column or export from the texts that can be read one way only.
 *
 * @param texts the column's cells from the first line on; whatever is no number is passed over
 * @param first the line of the first, for the sentence
 * @returns the mark, or undefined where nothing settles it or two texts contradict each other
 * @example decimalMark(["1,250", "0,82"]) // { mark: ",", evidence: 'decimal comma, because "0,82" on line 2 can be read no other way' }
 */
export const decimalMark = (texts: Iterable<string>, first = 1): DecimalEvidence => {
  const watch = decimalWatch();
  let line = first;
  for (const text of texts) {
    watch.note(text, line);
    line += 1;
  }
  return watch.evidence();
};

/** The same for texts that come one by one. */
export const decimalWatch = (): DecimalWatch => {
  const proofs: Proofs = {};
  let open: Proof | undefined;
  return {
    note: (text, line) => {
      // What most instruments write proves its mark without a closer look.
      if (proofs["."] && PLAIN_POINT.test(text)) return;
      if (proofs[","] && PLAIN_COMMA.test(text)) return;
      if (!/[.,．，]/.test(text)) return;
      const parts = splitReading(text);
      const number = parts && readNumber(parts.number, parts.exponent !== "");
      if (number?.mark) proofs[number.mark] ??= { text, line };
      else if (number?.ambiguous) open ??= { text, line };
    },
    evidence: () => evidenceOf(proofs, open),
    isProved: () => (proofs["."] === undefined) !== (proofs[","] === undefined),
  };
};

/** A text that tells the decimal mark, and its line. */
interface Proof {
  readonly text: string;
  readonly line: number;
}
type Proofs = { [mark in DecimalMark]?: Proof };

const evidenceOf = (
  { ".": point, ",": comma }: Readonly<Proofs>,
  open: Proof | undefined,
): DecimalEvidence => {
  const mark = point && comma ? undefined : point ? "." : comma ? "," : undefined;
  return {
    mark,
    isOpen: mark === undefined && (point ?? open) !== undefined,
    ...(point && comma && { isContradicted: true }),
    evidence: ({ intake: { decimals }, quantities: { marks } }) => {
      const on = ({ text, line }: Proof) => decimals.on(quoted(text), line);
      if (point && comma) return decimals.both(on(point), on(comma));
      const proof = point ?? comma;
      if (mark && proof) return decimals.proved(marks[mark], on(proof));
      return open ? decimals.open(on(open)) : decimals.whole;
    },
  };
};
