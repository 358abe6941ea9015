import { SaxesParser } from "saxes";

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

interface Open extends XmlElement {
  readonly children: Open[];
  empty: boolean;
  hasText: boolean;
}

const withoutPrefix = (name: string) => name.slice(name.indexOf(":") + 1);

/**
 * The elements of XML; of XML that is damaged those before the damage.
 *
 * @example elementsOf('<a x="1"><b/></a>')[0]?.children[0]?.name // "b"
 */
export const elementsOf = (xml: string): readonly XmlElement[] => {
  const top: Open[] = [];
  const open: Open[] = [];
  const parser = new SaxesParser();
  let damaged = false;
  parser.on("error", () => {
    damaged = true;
  });
  parser.on("opentag", ({ name, attributes }) => {
    if (damaged) return;
    const element: Open = {
      name: withoutPrefix(name),
      attributes: new Map(Object.entries(attributes)),
      children: [],
      empty: false,
      hasText: false,
    };
    (open.at(-1)?.children ?? top).push(element);
    open.push(element);
  });
  const text = (said: string) => {
    const around = open.at(-1);
    if (around && said.trim() !== "") around.hasText = true;
  };
  parser.on("text", text);
  parser.on("cdata", text);
  parser.on("closetag", () => {
    const element = open.pop();
    if (element)
      element.empty = element.attributes.size + element.children.length === 0 && !element.hasText;
  });
  parser.write(xml).close();
  return top;
};
