import type { Repeats } from "./repeats";

const [LT, GT, SLASH, QUOTE, EQUALS, BLANK] = [60, 62, 47, 34, 61, 32];
const [C, F, R, S, T, V] = Array.from("cfrstv", (letter) => letter.charCodeAt(0));
/** No kind is written: the cell holds a number. */
export const NO_KIND = 0;
/** What `t="str"` says, where other kinds are told by their letter. */
export const STR = 1;

/**
 * A cell as nearly every program writes nearly all of them: `<c r="AB12" s="3" t="s"><f>…</f><v>…</v></c>`,
 * without what it does not have. It is read in one go, at half the cost of tag by tag; of any other form,
 * as with further attributes, nothing is read.
 */
export class PlainCell {
  /** Column from 0. */
  column = 0;
  style = 0;
  /** Letter of its kind, `STR` or `NO_KIND`. */
  kind = NO_KIND;
  /** Where its formula begins and ends; the same where it has none. */
  formulaFrom = 0;
  formulaTo = 0;
  /** Whether the formula is that of the cell above. */
  repeated = false;
  hasValue = false;
  valueFrom = 0;
  valueTo = 0;
  /** Behind its end tag. */
  end = 0;

  constructor(
    private readonly bytes: Uint8Array,
    private readonly formulas: Repeats,
  ) {}

  /** Reads the cell that begins here; false where it is of another form. */
  read(from: number): boolean {
    const behind = this.kindFrom(this.styleFrom(this.columnFrom(from)));
    if (behind < 0) return false;
    this.hasValue = false;
    this.formulaFrom = this.formulaTo = 0;
    if (this.bytes[behind] === SLASH) {
      this.end = behind + 2;
      return this.bytes[behind + 1] === GT;
    }
    if (this.bytes[behind] !== GT) return false;
    const last = this.valueBehind(this.formulaBehind(behind + 1));
    if (last < 0 || !this.isEndTag(last, C)) return false;
    this.end = last + 4;
    return true;
  }

  /** Reads `<c r="AB12"`; gives where it ends, or -1. */
  private columnFrom(from: number): number {
    const { bytes } = this;
    if (bytes[from] !== LT || bytes[from + 1] !== C || !this.isAttribute(from + 2, R)) return -1;
    let at = from + 6;
    let column = 0;
    for (let letter = bytes[at] ?? 0; letter >= 65 && letter <= 90; letter = bytes[at] ?? 0) {
      column = column * 26 + letter - 64;
      at += 1;
    }
    this.column = column - 1;
    while (isDigit(bytes[at])) at += 1;
    return column > 0 && bytes[at] === QUOTE ? at + 1 : -1;
  }

  private styleFrom(from: number): number {
    const { bytes } = this;
    this.style = 0;
    if (from < 0 || !this.isAttribute(from, S)) return from;
    let at = from + 4;
    let style = 0;
    for (; isDigit(bytes[at]); at++) style = style * 10 + (bytes[at] ?? 0) - 48;
    this.style = style;
    return bytes[at] === QUOTE ? at + 1 : -1;
  }

  private kindFrom(from: number): number {
    const { bytes } = this;
    this.kind = NO_KIND;
    if (from < 0 || !this.isAttribute(from, T)) return from;
    const at = from + 4;
    this.kind = bytes[at] ?? 0;
    if (bytes[at + 1] === QUOTE) return at + 2;
    this.kind = STR;
    const isStr = bytes[at] === S && bytes[at + 1] === T && bytes[at + 2] === R;
    return isStr && bytes[at + 3] === QUOTE ? at + 4 : -1;
  }

  /** Reads `<f>…</f>` where it stands here; gives where it ends, or -1 where it is of another form. */
  private formulaBehind(from: number): number {
    const { bytes, formulas, column } = this;
    if (bytes[from] !== LT || bytes[from + 1] !== F) return from;
    if (bytes[from + 2] !== GT) return -1;
    this.formulaFrom = from + 3;
    this.repeated = formulas.isAgain(column, from + 3);
    const to = this.repeated ? formulas.end : bytes.indexOf(LT, from + 3);
    this.formulaTo = to;
    return to >= 0 && this.isEndTag(to, F) ? to + 4 : -1;
  }

  private valueBehind(from: number): number {
    const { bytes } = this;
    if (from < 0 || bytes[from] !== LT || bytes[from + 1] !== V) return from;
    if (bytes[from + 2] !== GT) return -1;
    let to = from + 3;
    while (to < bytes.length && bytes[to] !== LT) to += 1;
    this.hasValue = true;
    this.valueFrom = from + 3;
    this.valueTo = to;
    return this.isEndTag(to, V) ? to + 4 : -1;
  }

  /** Whether ` x="` stands here. */
  private isAttribute(at: number, letter: number | undefined): boolean {
    const { bytes } = this;
    return (
      bytes[at] === BLANK &&
      bytes[at + 1] === letter &&
      bytes[at + 2] === EQUALS &&
      bytes[at + 3] === QUOTE
    );
  }

  /** Whether `</x>` stands here. */
  private isEndTag(at: number, letter: number | undefined): boolean {
    const { bytes } = this;
    return (
      bytes[at] === LT &&
      bytes[at + 1] === SLASH &&
      bytes[at + 2] === letter &&
      bytes[at + 3] === GT
    );
  }
}

const isDigit = (byte: number | undefined): boolean =>
  byte !== undefined && byte >= 48 && byte <= 57;
