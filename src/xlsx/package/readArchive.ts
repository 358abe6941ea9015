import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { BookError } from "../../sheets/bookError";

/** One entry of a ZIP archive, as its directory lists it. */
export interface Entry {
  readonly name: string;
  /** Its record in the directory, as it stands. */
  readonly record: Uint8Array;
  /** Where its local header begins, and where its packed bytes begin and end. */
  readonly offset: number;
  readonly from: number;
  readonly to: number;
  /** How it is packed: 0 not at all, 8 deflated. */
  readonly method: number;
  /** Bytes when unpacked, and their CRC-32. */
  readonly size: number;
  readonly sum: number;
}

/** A ZIP archive as it stands: its entries in the order of the directory. */
export interface Archive {
  readonly file: Uint8Array;
  readonly entries: readonly Entry[];
  /** Where the directory begins. */
  readonly directory: number;
  /** Where the end record begins, which a comment may follow. */
  readonly end: number;
}

/** More entries than any spreadsheet writes. */
const MAX_ENTRIES = 20_000;
/** Bytes that all parts together may unpack to. */
const MAX_ALL = 2 ** 32;
/** Deflate cannot pack tighter than this (RFC 1951: 258 bytes in two bits). */
const TIGHTEST = 1040;
/** Parts longer than this are no workbook's where they are packed tighter than `TIGHT`. */
const LONG = 2 ** 24;
const TIGHT = 400;

const [END, END64, LOCATOR] = [0x06054b50, 0x06064b50, 0x07064b50];
const [RECORD, LOCAL] = [0x02014b50, 0x04034b50];
const END_LENGTH = 22;
const ENCRYPTED = 1;

/** What is said of a file that is no sound workbook. */
export const damaged = (why: Said<Told>) => new BookError((told) => told.book.damaged(why(told)));

/**
 * Reads the directory of a ZIP archive (PKWARE's APPNOTE 6.3); unpacks nothing.
 *
 * @throws {BookError} where it is none, is damaged or would unpack to more than any workbook does
 */
export function readArchive(given: Uint8Array): Archive {
  // Node's buffers are no copies where they are sliced: a plain view of the same bytes is none of them.
  const file = new Uint8Array(given.buffer, given.byteOffset, given.byteLength);
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const end = endOf(view);
  const { count, directory } = directoryOf(view, end);
  if (count > MAX_ENTRIES) throw new BookError(({ book }) => book.manyParts(count, MAX_ENTRIES));
  const entries: Entry[] = [];
  let at = directory;
  for (let index = 0; index < count; index++) {
    const entry = entryAt(file, view, at, end);
    entries.push(entry);
    at += entry.record.length;
  }
  refuseOverlaps(entries, directory);
  refuseBombs(entries);
  return { file, entries, directory, end };
}

/** Where the end record begins; a comment may follow it. */
function endOf(view: DataView): number {
  const first = Math.max(0, view.byteLength - END_LENGTH - 0xffff);
  for (let at = view.byteLength - END_LENGTH; at >= first; at--)
    if (view.getUint32(at, true) === END) return at;
  throw damaged(({ book }) => book.why.endMissing);
}

/** How many entries there are and where their records begin: of a long archive in the end record of ZIP64. */
function directoryOf(view: DataView, end: number) {
  const count = view.getUint16(end + 10, true);
  const directory = view.getUint32(end + 16, true);
  if (count < 0xffff && directory < 0xffffffff) return { count, directory };
  const locator = end - 20;
  const at =
    locator >= 0 && view.getUint32(locator, true) === LOCATOR
      ? Number(view.getBigUint64(locator + 8, true))
      : -1;
  if (at < 0 || at + 56 > locator || view.getUint32(at, true) !== END64)
    throw damaged(({ book }) => book.why.endBroken);
  return {
    count: Number(view.getBigUint64(at + 32, true)),
    directory: Number(view.getBigUint64(at + 48, true)),
  };
}

function entryAt(file: Uint8Array, view: DataView, at: number, end: number): Entry {
  if (at + 46 > end || view.getUint32(at, true) !== RECORD)
    throw damaged(({ book }) => book.why.listBroken);
  const [nameLength, extraLength, commentLength] = [28, 30, 32].map((field) =>
    view.getUint16(at + field, true),
  ) as [number, number, number];
  const length = 46 + nameLength + extraLength + commentLength;
  if (at + length > end) throw damaged(({ book }) => book.why.listBroken);
  const name = new TextDecoder().decode(file.subarray(at + 46, at + 46 + nameLength));
  if (view.getUint16(at + 8, true) & ENCRYPTED)
    throw new BookError(({ book }) => book.encrypted(name));
  const method = view.getUint16(at + 10, true);
  if (method !== 0 && method !== 8) throw damaged(({ book }) => book.why.oddPacking(name));
  const [size, packed, offset] = sizesOf(view, at, nameLength, extraLength);
  if (offset + 30 > file.length || view.getUint32(offset, true) !== LOCAL)
    throw damaged(({ book }) => book.why.misplaced(name));
  const from = offset + 30 + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true);
  return {
    name,
    record: file.subarray(at, at + length),
    offset,
    from,
    to: from + packed,
    method,
    size,
    sum: view.getUint32(at + 16, true),
  };
}

/** Size, packed size and place of an entry: in its record or, where these hold no number, in its ZIP64 field. */
function sizesOf(view: DataView, at: number, name: number, extra: number) {
  const found = [24, 20, 42].map((field) => view.getUint32(at + field, true));
  let field = at + 46 + name;
  const last = field + extra;
  while (field + 4 <= last && view.getUint16(field, true) !== 1)
    field += 4 + view.getUint16(field + 2, true);
  let long = field + 4;
  return found.map((value) => {
    if (value !== 0xffffffff || long + 8 > last) return value;
    long += 8;
    return Number(view.getBigUint64(long - 8, true));
  }) as [size: number, packed: number, offset: number];
}

function refuseOverlaps(entries: readonly Entry[], directory: number) {
  const sorted = [...entries].sort((one, other) => one.offset - other.offset);
  const names = new Set<string>();
  for (const [at, { name, to }] of sorted.entries()) {
    if (to > (sorted[at + 1]?.offset ?? directory))
      throw damaged(({ book }) => book.why.overlaps(name));
    if (names.has(partName(name))) throw damaged(({ book }) => book.why.twoParts(name));
    names.add(partName(name));
  }
}

/** A part that unpacks to more than can be read. */
export const largePart = ({ name, size, from, to }: Entry): BookError =>
  new BookError(({ book }) =>
    book.largePart(name, Math.round(size / 1e6), Math.ceil((to - from) / 1e6)),
  );

function refuseBombs(entries: readonly Entry[]) {
  let all = 0;
  for (const entry of entries) {
    const { name, size, from, to } = entry;
    const packed = to - from;
    if (size > packed * TIGHTEST + TIGHTEST) throw damaged(({ book }) => book.why.tooLarge(name));
    if (size > LONG && size > packed * TIGHT) throw largePart(entry);
    all += size;
  }
  if (all > MAX_ALL) throw new BookError(({ book }) => book.large(Math.round(all / 1e6)));
}

/** The name by which a part is known: not by the case of its letters (ECMA-376 part 2, 6.2.2), nor by another slash. */
export const partName = (name: string): string =>
  name.replaceAll("\\", "/").replace(/^\//, "").toLowerCase();
