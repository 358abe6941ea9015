import { checksum, deflated } from "./deflate";
import type { Archive, Entry } from "./readArchive";

/** What becomes of a part: its new bytes, or null where it goes. */
export type Changed = Uint8Array | null;

/** A part as an archive keeps it. */
export interface Packed {
  readonly packed: Uint8Array;
  /** Bytes when unpacked, and their CRC-32. */
  readonly size: number;
  readonly sum: number;
}

export const packedPart = (bytes: Uint8Array): Packed => ({
  packed: deflated(bytes),
  size: bytes.length,
  sum: checksum(bytes),
});

/** 1 January 2026, 00:00, as ZIP archives keep a moment: no file tells when it was made. */
const [TIME, DAY] = [0, ((2026 - 1980) << 9) | (1 << 5) | 1];
const [LOCAL, RECORD] = [0x04034b50, 0x02014b50];
/** Names are UTF-8. */
const FLAGS = 0x0800;
const VERSION = 20;

/**
 * Writes an archive with some of its parts changed. All others keep their place in the order, and every
 * byte: packed content, dates, attributes.
 *
 * @param changed by the entry that they take the place of
 * @param added by name, in the order in which they come after the others
 */
export function writeArchive(
  archive: Archive | undefined,
  changed: ReadonlyMap<Entry, Changed>,
  added: ReadonlyMap<string, Uint8Array | Packed>,
): Uint8Array {
  const pieces: Uint8Array[] = [];
  const records: Uint8Array[] = [];
  let at = 0;
  const put = (...bytes: Uint8Array[]) => {
    for (const one of bytes) {
      pieces.push(one);
      at += one.length;
    }
  };
  const putNew = (name: Uint8Array, part: Uint8Array | Packed) => {
    const packed = "packed" in part ? part : packedPart(part);
    const { local, record } = newEntry(name, packed, at);
    records.push(record);
    put(local, packed.packed);
  };
  for (const { entry, region } of archive ? regionsOf(archive) : []) {
    const bytes = changed.get(entry);
    if (bytes === undefined) {
      records.push(movedTo(entry, at));
      put(region);
    } else if (bytes) putNew(nameIn(entry), bytes);
  }
  for (const [name, part] of added) putNew(new TextEncoder().encode(name), part);
  const directory = at;
  const inOrder = archive ? inOrderOf(archive, changed, records) : records;
  put(...inOrder);
  put(endRecord(records.length, directory, at - directory, archive));
  return joined(pieces, at);
}

/** Each entry with all bytes from its local header to the next, in the order of the file. */
function regionsOf({ file, entries, directory }: Archive) {
  const sorted = [...entries].sort((one, other) => one.offset - other.offset);
  return sorted.map((entry, index) => ({
    entry,
    region: file.subarray(entry.offset, sorted[index + 1]?.offset ?? directory),
  }));
}

/** The records, made in the order of the file, in that of the directory as it was; new ones come last. */
function inOrderOf(
  archive: Archive,
  changed: ReadonlyMap<Entry, Changed>,
  records: readonly Uint8Array[],
): Uint8Array[] {
  const kept = regionsOf(archive)
    .map(({ entry }) => entry)
    .filter((entry) => changed.get(entry) !== null);
  const of = new Map(kept.map((entry, index) => [entry, records[index] as Uint8Array]));
  return [
    ...archive.entries.flatMap((entry) => of.get(entry) ?? []),
    ...records.slice(kept.length),
  ];
}

const nameIn = ({ record }: Entry): Uint8Array =>
  record.subarray(46, 46 + viewOf(record).getUint16(28, true));

const viewOf = (bytes: Uint8Array) =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** The record of an entry that now begins elsewhere. */
function movedTo({ record }: Entry, offset: number): Uint8Array {
  const moved = new Uint8Array(record);
  const view = viewOf(moved);
  // Where the place stands in the ZIP64 field, the field is told by no number: the record takes it back.
  view.setUint32(42, offset, true);
  return moved;
}

function newEntry(name: Uint8Array, { packed, size, sum }: Packed, offset: number) {
  const local = new Uint8Array(30 + name.length);
  const record = new Uint8Array(46 + name.length);
  const [inLocal, inRecord] = [viewOf(local), viewOf(record)];
  inLocal.setUint32(0, LOCAL, true);
  inRecord.setUint32(0, RECORD, true);
  inRecord.setUint16(4, VERSION, true);
  inRecord.setUint32(42, offset, true);
  for (const [view, at] of [
    [inLocal, 4],
    [inRecord, 6],
  ] as const) {
    for (const [index, field] of [VERSION, FLAGS, 8, TIME, DAY].entries())
      view.setUint16(at + 2 * index, field, true);
    for (const [index, field] of [sum, packed.length, size].entries())
      view.setUint32(at + 10 + 4 * index, field, true);
    view.setUint16(at + 22, name.length, true);
  }
  local.set(name, 30);
  record.set(name, 46);
  return { local, record };
}

/** The end record: the one that was there with new numbers, its comment kept. */
function endRecord(
  count: number,
  directory: number,
  length: number,
  archive: Archive | undefined,
): Uint8Array {
  const end = new Uint8Array(archive ? archive.file.length - archive.end : 22);
  if (archive) end.set(archive.file.subarray(archive.end));
  const view = viewOf(end);
  view.setUint32(0, 0x06054b50, true);
  view.setUint16(8, count, true);
  view.setUint16(10, count, true);
  view.setUint32(12, length, true);
  view.setUint32(16, directory, true);
  return end;
}

function joined(pieces: readonly Uint8Array[], length: number): Uint8Array {
  const all = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
