const LT = 60;

/**
 * Knows by column the bytes that stood there last: a column says mostly the same from row to row, and then
 * no text has to be made of it.
 */
export class Repeats {
  private readonly from: number[] = [];
  private readonly lengths: number[] = [];
  private readonly codes: number[] = [];
  /** Where the content ends that was found again. */
  end = 0;

  private readonly view: DataView;

  constructor(private readonly bytes: Uint8Array) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  /** Whether the content from here to its end tag is what stood in the column last. */
  isAgain(column: number, from: number): boolean {
    const length = this.lengths[column] ?? 0;
    if (length === 0 || this.bytes[from + length] !== LT) return false;
    this.end = from + length;
    return this.isSame(this.from[column] ?? 0, from, length);
  }

  codeOf(column: number): number {
    return this.codes[column] ?? 0;
  }

  /** Four bytes at once, then the last few. */
  private isSame(one: number, other: number, length: number): boolean {
    const { bytes, view } = this;
    const last = length - 4;
    let at = 0;
    for (; at <= last; at += 4)
      if (view.getInt32(one + at) !== view.getInt32(other + at)) return false;
    for (; at < length; at++) if (bytes[one + at] !== bytes[other + at]) return false;
    return true;
  }

  /** The code of a content: that of before where it is the same, else what `make` gives. */
  code(
    column: number,
    from: number,
    to: number,
    make: (from: number, to: number) => number,
  ): number {
    const length = to - from;
    const before = this.from[column];
    if (
      before !== undefined &&
      this.lengths[column] === length &&
      this.isSame(before, from, length)
    )
      return this.codes[column] ?? 0;
    const code = make(from, to);
    this.from[column] = from;
    this.lengths[column] = length;
    this.codes[column] = code;
    return code;
  }
}
