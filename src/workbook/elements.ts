import { unescaped } from "./memory";

/** An element of XML: its name without prefix, its attributes, and the elements in it; text is passed over. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** Whether it says nothing: no attribute, no element and no text. */
  readonly empty: boolean;
}

const TAG =
  /<!--[\s\S]*?-->|<!\[CDATA\[[\s\S]*?\]\]>|<[?!][^>]*>|<(\/?)(?:[\w.-]+:)?([\w.-]+)((?:\s+[\w:.-]+\s*=\s*(?:"[^"]*"|'[^']*'))*)\s*(\/?)>/g;
const ATTRIBUTE = /([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

interface Open extends XmlElement {
  readonly children: Open[];
}

/**
 * The elements of XML as a spreadsheet writes it; tags that do not close end with what they stand in.
 *
 * @example elementsOf('<a x="1"><b/></a>')[0]?.children[0]?.name // "b"
 */
export const elementsOf = (xml: string): readonly XmlElement[] => {
  const top: Open[] = [];
  const open: Open[] = [];
  for (const [, closing, name, attributes = "", alone] of xml.matchAll(TAG)) {
    if (name === undefined) continue;
    if (closing) {
      const at = open.findLastIndex((one) => one.name === name);
      if (at >= 0) open.length = at;
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
    };
    (open.at(-1)?.children ?? top).push(element);
    if (!alone) open.push(element);
  }
  return top;
};
