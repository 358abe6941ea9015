import { BookError } from "../../sheets/bookError";
import { checksum, inflated, inflatedPieces } from "./deflate";
import { bytesOf, inUtf8, textOf } from "./partText";
import { damaged, type Entry, largePart, partName, readArchive } from "./readArchive";
import { type Changed, type Packed, packedPart, writeArchive } from "./writeArchive";

/**
 * The parts of a workbook file: unpacked when asked for, and written back as they were unless changed.
 * Nothing but the file itself is held of a part that is only read.
 */
export interface Package {
  readonly names: readonly string[];
  readonly has: (name: string) => boolean;
  /** The bytes of an XML part, in UTF-8. Throws a BookError where it is missing or damaged. */
  readonly bytes: (name: string) => Uint8Array;
  /**
   * The same piece by piece, of a part however long. A piece holds until the next is asked for. That the part
   * is damaged may be seen at its end alone.
   */
  readonly pieces: (name: string) => AsyncIterable<Uint8Array>;
  /** The text of an XML part; empty where there is none. */
  readonly text: (name: string) => string;
  readonly put: (name: string, content: Uint8Array | string) => void;
  readonly remove: (name: string) => void;
  /** The file with what was changed; the very same where nothing was. */
  readonly save: () => Uint8Array;
}

/** From so many bytes on a part is unpacked piece by piece by whoever can take it so. */
const STREAMED = 2 ** 20;
/** Bytes that a part may unpack to where it is held as a whole. */
const MAX_PART = 2 ** 29;

/** A part that is added is packed at once from so many bytes on: a long workbook holds many. */
const LONG = 2 ** 16;

/**
 * Opens a workbook file as a package.
 *
 * @param file none for a new one
 * @throws {BookError} where it is none, is damaged, or has a password
 */
export function openPackage(file?: Uint8Array): Package {
  const archive = file && readArchive(refuseOthers(file));
  const entries = new Map(
    archive?.entries
      .filter(({ name }) => !/[\\/]$/.test(name))
      .map((entry) => [partName(entry.name), entry]),
  );
  const changed = new Map<Entry, Changed>();
  const added = new Map<string, Uint8Array | Packed>();
  const addedAs = (name: string) =>
    [...added.keys()].find((one) => partName(one) === partName(name));
  const there = (name: string) => {
    const entry = entries.get(partName(name));
    return entry && changed.get(entry) !== null ? entry : undefined;
  };
  const has = (name: string) => addedAs(name) !== undefined || there(name) !== undefined;
  const bytes = (name: string) => {
    const fresh = addedAs(name);
    if (fresh !== undefined) return unpackedPart(added.get(fresh) as Uint8Array | Packed);
    const entry = there(name);
    if (!archive || !entry) throw damaged(({ book }) => book.why.partMissing(name));
    return changed.get(entry) ?? inUtf8(unpacked(archive.file, entry));
  };
  async function* pieces(name: string): AsyncGenerator<Uint8Array> {
    const entry = there(name);
    if (!archive || !entry || changed.has(entry) || entry.size < STREAMED) return yield bytes(name);
    let isFirst = true;
    for await (const piece of unpackedPieces(archive.file, entry)) {
      if (isFirst && inUtf8(piece) !== piece) return yield bytes(name);
      isFirst = false;
      yield piece;
    }
  }
  return {
    get names() {
      return [
        ...[...entries.values()].flatMap(({ name }) => (there(name) ? [name] : [])),
        ...added.keys(),
      ];
    },
    has,
    bytes,
    pieces,
    text: (name) => (has(name) ? textOf(bytes(name)) : ""),
    put(name, content) {
      const data = typeof content === "string" ? bytesOf(content) : content;
      const entry = entries.get(partName(name));
      if (entry) changed.set(entry, data);
      else added.set(addedAs(name) ?? name, data.length < LONG ? data : packedPart(data));
    },
    remove(name) {
      const [entry, fresh] = [entries.get(partName(name)), addedAs(name)];
      if (entry) changed.set(entry, null);
      if (fresh !== undefined) added.delete(fresh);
    },
    save: () =>
      file && changed.size + added.size === 0 ? file : writeArchive(archive, changed, added),
  };
}

/** Containers that are no package: what Excel saves with a password, and files of before 2007. */
const OLE = [0xd0, 0xcf, 0x11, 0xe0];

function refuseOthers(file: Uint8Array): Uint8Array {
  if (file.length === 0) throw new BookError(({ book }) => book.empty);
  if (OLE.every((byte, at) => file[at] === byte))
    throw new BookError(({ book }) => book.encryptedOrOld);
  if (file[0] !== 0x50 || file[1] !== 0x4b) throw new BookError(({ book }) => book.noWorkbook);
  return file;
}

const unpackedPart = (part: Uint8Array | Packed): Uint8Array =>
  "packed" in part ? (inflated(part.packed, part.size) as Uint8Array) : part;

function unpacked(file: Uint8Array, entry: Entry): Uint8Array {
  const { name, from, to, method, size, sum } = entry;
  if (size > MAX_PART) throw largePart(entry);
  const packed = file.subarray(from, to);
  const bytes = method === 0 ? packed : inflated(packed, size);
  if (!bytes || bytes.length !== size || checksum(bytes) !== sum)
    throw damaged(({ book }) => book.why.notUnpacked(name));
  return bytes;
}

async function* unpackedPieces(file: Uint8Array, entry: Entry): AsyncGenerator<Uint8Array> {
  const { name, from, to, method, size, sum } = entry;
  if (method === 0) return yield unpacked(file, entry);
  let found = 0;
  try {
    for await (const piece of inflatedPieces(file.subarray(from, to), size)) {
      found = checksum(piece, found);
      yield piece;
    }
  } catch {
    throw damaged(({ book }) => book.why.notUnpacked(name));
  }
  if (found !== sum) throw damaged(({ book }) => book.why.notUnpacked(name));
}
