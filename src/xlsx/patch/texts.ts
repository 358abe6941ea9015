import { type Book, onePart } from "../book";
import { bytesOf, textOf } from "../package/partText";
import { addPart, relate } from "../package/relations";
import type { SharedTexts } from "../scan/sharedTexts";
import { TagReader } from "../scan/tagReader";
import { edited, setAttribute } from "../xml/editText";
import { readXml } from "../xml/readXml";
import { type TextNumber, textXml } from "./cellXml";

/** The texts that the cells of a workbook share, for cells to be written. */
export interface Texts {
  /** The number of a text that is there already. */
  readonly find: TextNumber;
  /** The number of a text, appended where it is not there. */
  readonly add: (text: string) => number;
  /** Puts what was appended into the package. */
  readonly save: () => void;
}

const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sharedStrings+xml";
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const EMPTY = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<sst xmlns="${MAIN}" count="0" uniqueCount="0"></sst>`;

export function openTexts(book: Book, shared: SharedTexts): Texts {
  let known: Map<string, number> | undefined;
  const numbers = () => {
    if (known) return known;
    known = new Map();
    for (let index = 0; index < shared.count; index++) {
      const text = shared.plain(index);
      if (text !== undefined && !known.has(text)) known.set(text, index);
    }
    return known;
  };
  const added: string[] = [];
  let uses = 0;
  const find = (text: string) => numbers().get(text);
  return {
    find,
    add(text) {
      uses += 1;
      const there = find(text);
      if (there !== undefined) return there;
      const number = shared.count + added.push(text) - 1;
      numbers().set(text, number);
      return number;
    },
    save() {
      if (added.length > 0) append(book, added, uses);
    },
  };
}

function append({ pack, ...book }: Book, added: readonly string[], uses: number): void {
  let part = onePart({ pack, ...book }, "sharedStrings");
  if (part === undefined) {
    part = `${book.part.slice(0, book.part.lastIndexOf("/") + 1)}sharedStrings.xml`;
    addPart(pack, part, TYPE, EMPTY);
    relate(pack, book.part, "sharedStrings", part);
  }
  pack.put(part, withTexts(pack.bytes(part), part, added, uses));
}

/** Texts behind those that are there. The part may be long, so that only its ends are looked at. */
function withTexts(
  bytes: Uint8Array,
  part: string,
  added: readonly string[],
  uses: number,
): Uint8Array {
  const tags = new TagReader(bytes, part);
  tags.enter("sst");
  const end = tags.closed ? bytes.length : bytes.lastIndexOf(60);
  const head = textOf(bytes.subarray(0, tags.at)).replace(/\/>$/, ">");
  const from = head.lastIndexOf("<");
  const tag = head.slice(from + 1).split(/[\s>]/)[0];
  const root = readXml(`${head.slice(from)}</${tag}>`);
  const p = root.prefix;
  const counted = (name: string, more: number) =>
    setAttribute(
      head.slice(from),
      root,
      name,
      String(Number(root.attributes.get(name) ?? 0) + more),
    );
  const items = added.map((text) => `<${p}si>${textXml(p, text)}</${p}si>`).join("");
  const start =
    head.slice(0, from) +
    edited(head.slice(from), [counted("count", uses), counted("uniqueCount", added.length)]);
  return joined([
    bytesOf(start),
    bytes.subarray(tags.at, Math.max(end, tags.at)),
    bytesOf(items),
    tags.closed ? bytesOf(`</${tag}>`) : bytes.subarray(end),
  ]);
}

export function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
