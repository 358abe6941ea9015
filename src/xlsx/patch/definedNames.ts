import type { Package } from "../package/package";
import { partXml } from "../package/relations";
import { appendTo, attributeText, edited, elementText, removed } from "../xml/editText";
import { childOf, childrenOf, type XmlElement } from "../xml/readXml";
import { placeChild } from "./placeChild";

/** A name of the workbook, and what it refers to. */
export interface DefinedName {
  readonly name: string;
  readonly reference: string;
}

const namesIn = (root: XmlElement): XmlElement[] =>
  childrenOf(childOf(root, "definedNames"), "definedName");

const nameOf = ({ attributes }: XmlElement): string => attributes.get("name") ?? "";

/** The names that the workbook part defines. */
export const definedNames = (pack: Package, bookPart: string): DefinedName[] =>
  namesIn(partXml(pack, bookPart)).map((element) => ({
    name: nameOf(element),
    reference: element.text,
  }));

/** Defines names that no user sees in a list. */
export function addHiddenNames(
  pack: Package,
  bookPart: string,
  added: readonly DefinedName[],
): void {
  if (added.length === 0) return;
  const xml = pack.text(bookPart);
  const root = partXml(pack, bookPart);
  const p = root.prefix;
  const texts = added.map(
    ({ name, reference }) =>
      `<${p}definedName name="${attributeText(name)}" hidden="1">${elementText(reference)}</${p}definedName>`,
  );
  const there = childOf(root, "definedNames");
  const list = `<${p}definedNames>${texts.join("")}</${p}definedNames>`;
  const edit = there
    ? appendTo(xml, there, texts.join(""))
    : placeChild(xml, root, "definedNames", list);
  pack.put(bookPart, edited(xml, [edit]));
}

/** Takes names out; the list goes with its last one. */
export function dropNames(
  pack: Package,
  bookPart: string,
  isGone: (name: string) => boolean,
): void {
  const root = partXml(pack, bookPart);
  const list = childOf(root, "definedNames");
  if (!list) return;
  const gone = namesIn(root).filter((element) => isGone(nameOf(element)));
  if (gone.length === 0) return;
  const whole = gone.length === list.children.length ? [list] : gone;
  pack.put(bookPart, edited(pack.text(bookPart), whole.map(removed)));
}
