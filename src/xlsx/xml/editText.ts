import type { XmlElement } from "./readXml";

/** Some of a text, from one place to another, and what comes in its stead. */
export interface Edit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** A text with edits made, none of which reaches into another; of two at one place the one given first comes first. */
export function edited(text: string, edits: readonly Edit[]): string {
  const sorted = edits
    .map((edit, at) => ({ ...edit, at }))
    .sort((one, other) => one.from - other.from || one.to - other.to || one.at - other.at);
  const pieces: string[] = [];
  let done = 0;
  for (const { from, to, text: instead } of sorted) {
    pieces.push(text.slice(done, from), instead);
    done = to;
  }
  return pieces.join("") + text.slice(done);
}

/** Puts XML at the end of an element, or opens one that is written as empty. */
export function appendTo(xml: string, element: XmlElement, added: string): Edit {
  if (element.close > element.inner || element.end > element.inner)
    return { from: element.close, to: element.close, text: added };
  const tag = /^<([^\s/>]+)/.exec(xml.slice(element.start, element.inner))?.[1] ?? element.name;
  const slash = xml.lastIndexOf("/", element.inner - 1);
  return { from: slash, to: element.inner, text: `>${added}</${tag}>` };
}

/** Gives an attribute of an element another value; adds it where it is not there, removes it for undefined. */
export function setAttribute(
  xml: string,
  element: XmlElement,
  name: string,
  value: string | undefined,
): Edit {
  const tag = xml.slice(element.start, element.inner);
  const said = value === undefined ? "" : ` ${name}="${attributeText(value)}"`;
  const found = new RegExp(`\\s${name.replace(/[^\w:]/g, "\\$&")}\\s*=\\s*("[^"]*"|'[^']*')`).exec(
    tag,
  );
  if (found) {
    const from = element.start + found.index;
    return { from, to: from + found[0].length, text: said };
  }
  const end = /\s*\/?>$/.exec(tag);
  const from = element.start + (end?.index ?? tag.length - 1);
  return { from, to: from, text: said };
}

export const removed = ({ start, end }: XmlElement): Edit => ({ from: start, to: end, text: "" });

/** Control characters that XML 1.0 cannot hold, and halves of letters; they are left out. */
const NO_XML =
  /[\0-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** What may have to be written otherwise: most texts have none of it. */
const SPECIAL = /[&<>\0-\x1f\ud800-\udfff\ufffe\uffff]/;

/** Text as it stands between tags. */
export const elementText = (text: string): string =>
  SPECIAL.test(text)
    ? text
        .replace(NO_XML, "")
        .replaceAll("&", "&amp;")
        .replaceAll("<", "&lt;")
        .replaceAll(">", "&gt;")
    : text;

/** Text as it stands in an attribute's double quotes. */
export const attributeText = (text: string): string =>
  elementText(text)
    .replaceAll('"', "&quot;")
    .replace(/[\n\r\t]/g, (white) => `&#${white.charCodeAt(0)};`);

/** Text of a cell, where a character may be written by its number (ECMA-376 part 1, 22.9.2.19, ST_Xstring). */
export const cellText = (text: string): string =>
  elementText(
    text
      .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_")
      .replace(/[\0-\x08\x0b-\x1f\ufffe\uffff]/g, (control) => escapedCode(control)),
  );

const escapedCode = (control: string) =>
  `_x${control.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`;

/** What `cellText` wrote, as it is meant. */
export const unescapedCell = (text: string): string =>
  text.includes("_x")
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_text, code) =>
        String.fromCharCode(Number.parseInt(code, 16)),
      )
    : text;
