import { unescaped } from "../memory/memory";

/** An element of XML: its name without prefix, its attributes, and the elements in it; of text, whether there is any. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** Whether it says nothing: no attribute, no element and no text. */
  readonly empty: boolean;
  /** Whether text stands in it, besides blanks. */
  readonly hasText: boolean;
}

const TAG =
  /<!--[\s\S]*?-->|<!\[CDATA\[[\s\S]*?\]\]>|<[?!][^>]*>|<(\/?)(?:[\w.-]+:)?([\w.-]+)((?:\s+[\w:.-]+\s*=\s*(?:"[^"]*"|'[^']*'))*)\s*(\/?)>/g;
const ATTRIBUTE = /([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

interface Open extends XmlElement {
  readonly children: Open[];
  empty: boolean;
  hasText: boolean;
}

/**
 * The elements of XML as a spreadsheet writes it; tags that do not close end with what they stand in.
 *
 * @example elementsOf('<a x="1"><b/></a>')[0]?.children[0]?.name // "b"
 */
export const elementsOf = (xml: string): readonly XmlElement[] => {
  const top: Open[] = [];
  const open: Open[] = [];
  let end = 0;
  for (const tag of xml.matchAll(TAG)) {
    const [whole, closing, name, attributes = "", alone] = tag;
    const around = open.at(-1);
    if (around && xml.slice(end, tag.index).trim() !== "") around.hasText = true;
    end = tag.index + whole.length;
    if (name === undefined) {
      if (around && whole.startsWith("<![CDATA[")) around.hasText = true;
      continue;
    }
    if (closing) {
      const at = open.findLastIndex((one) => one.name === name);
      for (const one of open.splice(at >= 0 ? at : open.length))
        one.empty = one.attributes.size === 0 && one.children.length === 0 && !one.hasText;
      continue;
    }
    const element: Open = {
      name,
      attributes: new Map(
        Array.from(attributes.matchAll(ATTRIBUTE), ([, key = "", double, single]) => [
          key,
          unescaped(double ?? single ?? ""),
        ]),
      ),
      children: [],
      empty: alone !== "" && attributes === "",
      hasText: false,
    };
    (open.at(-1)?.children ?? top).push(element);
    if (!alone) open.push(element);
  }
  return top;
};
