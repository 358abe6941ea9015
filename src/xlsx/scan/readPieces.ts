import { BookError } from "../../sheets/bookError";
import { type SheetText, textAround } from "../xml/sheetText";
import { type ScannedSheet, type ScanWith, SheetScanner } from "./scanSheet";

/** Of one row, or of what stands around the cells, no more is held. */
const MOST = 2 ** 29;

/** Bytes of a part that were read as they came, of which only those are kept that are yet to be read. */
class Waiting {
  private held = new Uint8Array(2 ** 20);
  private from = 0;
  private to = 0;

  get bytes(): Uint8Array {
    return this.held.subarray(this.from, this.to);
  }

  add(piece: Uint8Array): void {
    const { bytes } = this;
    const length = bytes.length + piece.length;
    if (length > MOST) throw new BookError(({ book }) => book.large(Math.round(length / 1e6)));
    const into = length > this.held.length ? new Uint8Array(2 * length) : this.held;
    if (into !== this.held || this.from > 0) into.set(bytes);
    into.set(piece, bytes.length);
    [this.held, this.from, this.to] = [into, 0, length];
  }

  drop(count: number): void {
    this.from += count;
  }
}

/**
 * Reads a sheet's part as it is unpacked: its cells, and what stands before and behind them. Never more of
 * it is held than a few pieces.
 *
 * @throws {BookError} where it is damaged, with the part and the place
 */
export async function readPieces(
  pieces: AsyncIterable<Uint8Array>,
  part: string,
  given: ScanWith,
): Promise<{ readonly scanned: ScannedSheet; readonly around: SheetText }> {
  const scanner = new SheetScanner(part, given);
  const waiting = new Waiting();
  let head: Uint8Array | undefined;
  // What was cut off is looked at again once there is twice as much of it.
  let enough = 0;
  const read = (isLast: boolean) => {
    const { bytes } = waiting;
    const count = scanner.read(bytes, isLast);
    if (scanner.from >= 0) head ??= bytes.slice(0, scanner.from);
    waiting.drop(count);
    enough = count > 0 ? 0 : 2 * bytes.length;
  };
  for await (const piece of pieces) {
    waiting.add(piece);
    if (waiting.bytes.length >= enough) read(false);
  }
  read(true);
  const scanned = scanner.scanned();
  return {
    scanned,
    around: textAround(head ?? waiting.bytes, waiting.bytes, scanned.places, part),
  };
}
