import { unescapedCell } from "../xml/editText";
import { TagReader } from "./tagReader";

const decoder = new TextDecoder();
const LT = 60;
const NAMED: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
};

/** Bytes of XML as text: character references, sections of plain text and ends of lines as they are meant. */
export function plainText(bytes: Uint8Array, from: number, to: number): string {
  const text = decoder.decode(bytes.subarray(from, to));
  if (!/[&<\r]/.test(text)) return text;
  return text
    .split(/(<!\[CDATA\[[\s\S]*?\]\]>|<!--[\s\S]*?-->|<\?[\s\S]*?\?>)/)
    .map((piece) =>
      piece.startsWith("<![CDATA[")
        ? piece.slice(9, -3)
        : piece.startsWith("<")
          ? ""
          : meant(piece),
    )
    .join("")
    .replace(/\r\n?/g, "\n");
}

const meant = (text: string): string =>
  text.replace(/&(?:#x([0-9a-fA-F]{1,6})|#(\d{1,7})|(\w+));/g, (whole, hex, decimal, name) => {
    if (name !== undefined) return NAMED[name] ?? whole;
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });

/**
 * The text of a cell whose content stands between two places: of its `t` elements together, without what
 * says how it is spoken.
 */
export function textIn(bytes: Uint8Array, from: number, to: number, part: string): string {
  const tags = new TagReader(bytes.subarray(0, to), part);
  tags.at = from;
  let text = "";
  while (hasTag(tags, to)) {
    if (!tags.nextChild()) continue;
    if (tags.isNamed("t")) {
      tags.skipAttributes();
      const start = tags.at;
      tags.skipContent();
      text += plainText(bytes, start, tags.contentEnd);
    } else if (tags.isNamed("r")) tags.skipAttributes();
    else tags.skipElement();
  }
  return unescapedCell(text);
}

const hasTag = ({ bytes, at }: TagReader, to: number): boolean => {
  const next = bytes.indexOf(LT, at);
  return next >= 0 && next < to;
};
