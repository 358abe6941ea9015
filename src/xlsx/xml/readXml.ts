import { SaxesParser } from "saxes";
import type { Said } from "../../messages/reasons";
import { type Told, toldIn } from "../../messages/told";
import { beyond, limitOf } from "../../sheets/plan/limits";

/** An element of XML, and where it stands in its text. */
export interface XmlElement {
  /** Without prefix. */
  readonly name: string;
  /** By their names without prefix; those that declare namespaces are left out. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** The text in it that is in none of its elements. */
  readonly text: string;
  /** Where its start tag begins and ends, and where its end tag begins and ends. */
  readonly start: number;
  readonly inner: number;
  readonly close: number;
  readonly end: number;
  /** What stands before its name: "" or a prefix with its colon. */
  readonly prefix: string;
}

type Open = { -readonly [K in keyof XmlElement]: XmlElement[K] } & {
  children: XmlElement[];
  attributes: Map<string, string>;
};

/** XML that cannot be read, or that no workbook holds. */
export class XmlError extends Error {
  override name = "XmlError";

  constructor(readonly say: Said<Told>) {
    super(say(toldIn("en")));
  }
}

const localName = (name: string) => name.slice(name.indexOf(":") + 1);

/**
 * Reads XML whole, for parts that are small beside the cells of a sheet.
 *
 * @returns its outermost element
 * @throws {XmlError} where it is damaged or declares a document type
 * @throws {BookError} where it has more elements than are read
 */
export function readXml(xml: string): XmlElement {
  const open: Open[] = [];
  let root: XmlElement | undefined;
  let count = 0;
  const most = limitOf("elements");
  const parser = new SaxesParser({ position: true });
  parser.on("error", (error) => {
    throw new XmlError(() => error.message.replace(/^undefined:/, ""));
  });
  parser.on("doctype", () => {
    throw new XmlError(({ book }) => book.why.declaresType);
  });
  parser.on("opentag", ({ name, attributes }) => {
    if (++count > most) throw beyond("elements");
    const inner = parser.position;
    const element: Open = {
      name: localName(name),
      prefix: name.slice(0, name.indexOf(":") + 1),
      attributes: attributesOf(attributes as Record<string, string>),
      children: [],
      text: "",
      start: xml.lastIndexOf("<", inner - 2),
      inner,
      close: inner,
      end: inner,
    };
    if (open.length > 0) open.at(-1)?.children.push(element);
    else root = element;
    open.push(element);
  });
  const text = (said: string) => {
    const around = open.at(-1);
    if (around) around.text += said;
  };
  parser.on("text", text);
  parser.on("cdata", text);
  parser.on("closetag", ({ isSelfClosing }) => {
    const element = open.pop();
    if (!element || isSelfClosing) return;
    element.end = parser.position;
    element.close = xml.lastIndexOf("<", parser.position - 2);
  });
  parser.write(xml).close();
  if (!root) throw new XmlError(({ book }) => book.why.holdsNothing);
  return root;
}

function attributesOf(given: Readonly<Record<string, string>>): Map<string, string> {
  const found = new Map<string, string>();
  for (const name of Object.keys(given))
    if (!/^xmlns(:|$)/.test(name)) found.set(localName(name), given[name] as string);
  return found;
}

export const childOf = (element: XmlElement | undefined, name: string): XmlElement | undefined =>
  element?.children.find((child) => child.name === name);

export const childrenOf = (element: XmlElement | undefined, name: string): XmlElement[] =>
  element?.children.filter((child) => child.name === name) ?? [];

/** Every element in an element, however deep, in the order of the text. */
export function* within(element: XmlElement): Generator<XmlElement> {
  const stack = [...element.children].reverse();
  for (let next = stack.pop(); next; next = stack.pop()) {
    yield next;
    for (let at = next.children.length - 1; at >= 0; at--)
      stack.push(next.children[at] as XmlElement);
  }
}

/** Whether an attribute says yes; as `absent` says where it is not there. */
export const isOn = (element: XmlElement | undefined, name: string, absent = false): boolean => {
  const said = element?.attributes.get(name);
  return said === undefined ? absent : said === "1" || said === "true";
};
