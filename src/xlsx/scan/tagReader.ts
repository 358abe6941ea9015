import type { Told } from "../../messages/told";
import { BookError } from "../../sheets/bookError";

const [LT, GT, SLASH, BANG, QUESTION, COLON, EQUALS] = [60, 62, 47, 33, 63, 58, 61];
const [DASH, BRACKET, QUOTE, APOSTROPHE] = [45, 91, 34, 39];
const isSpace = (byte: number | undefined) =>
  byte === 32 || byte === 10 || byte === 13 || byte === 9;

/** A part that is not as it must be where it was read last, or of which more is to come. */
export class BrokenPart extends BookError {}

/**
 * Goes through the tags of an XML part byte by byte, for parts that are too long to be read whole. It takes
 * any prefix, passes over comments and processing instructions, and checks that tags are closed in turn
 * where it enters them.
 */
export class TagReader {
  /** The next byte. */
  at = 0;
  /** Where the tag that was read last begins. */
  tag = 0;
  /** Where the content ends that was passed over last. */
  contentEnd = 0;
  /** Whether the start tag that was read last closes itself. */
  closed = false;
  private nameFrom = 0;
  private nameTo = 0;
  private attributeFrom = 0;
  private attributeTo = 0;
  /** Of the attribute that was read last, its name where that is one letter; else 0. */
  letter = 0;
  /** Of the attribute that was read last, where its value begins and ends. */
  valueFrom = 0;
  valueTo = 0;

  constructor(
    readonly bytes: Uint8Array,
    readonly part: string,
  ) {}

  broken(why: (words: Told["book"]["part"]) => string): BrokenPart {
    return new BrokenPart(({ book }) => book.damaged(book.broken(this.part, why(book.part))));
  }

  /** Goes to the next tag; false at the end of the part. */
  private nextTag(): boolean {
    const { bytes } = this;
    for (;;) {
      const from = bytes[this.at] === LT ? this.at : bytes.indexOf(LT, this.at);
      if (from < 0) return false;
      const next = bytes[from + 1];
      this.at = from + 1;
      if (next !== BANG && next !== QUESTION) {
        this.tag = from;
        return true;
      }
      this.skipMarkup(from);
    }
  }

  /** Passes over a comment, a section of plain text or a processing instruction. */
  private skipMarkup(from: number): void {
    const { bytes } = this;
    if (bytes[from + 1] === QUESTION) this.skipPast(from + 2, [QUESTION, GT]);
    else if (bytes[from + 2] === DASH) this.skipPast(from + 4, [DASH, DASH, GT]);
    else if (bytes[from + 2] === BRACKET) this.skipPast(from + 9, [BRACKET + 2, BRACKET + 2, GT]);
    else throw this.broken((is) => is.declaresType);
  }

  private skipPast(from: number, end: readonly number[]): void {
    const { bytes } = this;
    for (
      let at = bytes.indexOf(end[0] ?? 0, from);
      at >= 0;
      at = bytes.indexOf(end[0] ?? 0, at + 1)
    )
      if (end.every((byte, index) => bytes[at + index] === byte)) {
        this.at = at + end.length;
        return;
      }
    throw this.broken((is) => is.breaksOff);
  }

  private readName(): void {
    const { bytes } = this;
    let at = this.at;
    this.nameFrom = at;
    for (;;) {
      const byte = bytes[at];
      if (byte === GT || byte === SLASH || byte === undefined || isSpace(byte)) break;
      at += 1;
      if (byte === COLON) this.nameFrom = at;
    }
    this.nameTo = at;
    this.at = at;
  }

  /** Whether the tag that was read last has this name, whatever its prefix. */
  isNamed(name: string): boolean {
    return this.isText(this.nameFrom, this.nameTo, name);
  }

  /** Whether the attribute that was read last has this name, whatever its prefix. */
  isAttribute(name: string): boolean {
    return this.isText(this.attributeFrom, this.attributeTo, name);
  }

  isText(from: number, to: number, text: string): boolean {
    if (to - from !== text.length) return false;
    for (let at = 0; at < text.length; at++)
      if (this.bytes[from + at] !== text.charCodeAt(at)) return false;
    return true;
  }

  /** Reads the start tag of the next element up to its name, or the end tag of the one around it: then false. */
  nextChild(): boolean {
    if (!this.nextTag()) throw this.broken((is) => is.breaksOff);
    if (this.bytes[this.at] === SLASH) {
      this.at += 1;
      this.readName();
      this.endTag();
      return false;
    }
    this.readName();
    return true;
  }

  private endTag(): void {
    while (isSpace(this.bytes[this.at])) this.at += 1;
    if (this.bytes[this.at] !== GT) throw this.broken((is) => is.breaksOff);
    this.at += 1;
  }

  /** Reads the next attribute of a start tag; false at its end, `at` then behind it. */
  nextAttribute(): boolean {
    const { bytes } = this;
    let at = this.at;
    while (isSpace(bytes[at])) at += 1;
    const byte = bytes[at];
    if (byte === GT || byte === SLASH) {
      this.closed = byte === SLASH;
      this.at = at + (this.closed ? 2 : 1);
      if (bytes[this.at - 1] !== GT) throw this.broken((is) => is.breaksOff);
      return false;
    }
    this.readValue(this.readAttributeName(at));
    return true;
  }

  private readAttributeName(from: number): number {
    const { bytes } = this;
    let at = from;
    this.attributeFrom = at;
    for (let next = bytes[at]; next !== EQUALS && !isSpace(next); next = bytes[at]) {
      if (next === undefined || next === LT || next === GT) throw this.broken((is) => is.breaksOff);
      at += 1;
      if (next === COLON) this.attributeFrom = at;
    }
    this.attributeTo = at;
    this.letter = at - this.attributeFrom === 1 ? (bytes[at - 1] ?? 0) : 0;
    return at;
  }

  private readValue(from: number): void {
    const { bytes } = this;
    let at = from;
    while (isSpace(bytes[at])) at += 1;
    if (bytes[at] !== EQUALS) throw this.broken((is) => is.breaksOff);
    at += 1;
    while (isSpace(bytes[at])) at += 1;
    const quote = bytes[at];
    if (quote !== QUOTE && quote !== APOSTROPHE) throw this.broken((is) => is.breaksOff);
    at += 1;
    this.valueFrom = at;
    while (bytes[at] !== quote) {
      if (bytes[at] === undefined) throw this.broken((is) => is.breaksOff);
      at += 1;
    }
    this.valueTo = at;
    this.at = at + 1;
  }

  skipAttributes(): void {
    while (this.nextAttribute());
  }

  /** Passes over what stands in the element whose start tag was read, and its end tag. */
  skipContent(): void {
    this.contentEnd = this.at;
    for (let depth = this.closed ? 0 : 1; depth > 0; ) {
      if (!this.nextChild()) {
        depth -= 1;
        this.contentEnd = this.tag;
      } else {
        this.skipAttributes();
        if (!this.closed) depth += 1;
      }
    }
    this.closed = false;
  }

  /** Passes over the rest of an element of which only the name was read. */
  skipElement(): void {
    this.skipAttributes();
    this.skipContent();
  }

  /** Enters the outermost element, which has this name; it may close itself. */
  enter(name: string): void {
    if (!this.nextTag()) throw this.broken((is) => is.holdsNothing);
    this.readName();
    if (!this.isNamed(name)) throw this.broken((is) => is.isNo(name));
    this.skipAttributes();
  }
}
