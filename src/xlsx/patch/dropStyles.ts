import type { Package } from "../package/package";
import { partXml } from "../package/relations";
import { type Edit, edited, removed, setAttribute } from "../xml/editText";
import { childOf, type XmlElement } from "../xml/readXml";
import { emptied, withoutLeast } from "./leastStyles";

/**
 * Takes styles for conditional formats off the end of their list, as far as they are of certain looks and
 * no longer used, so that no other is numbered anew. With them goes what the part had to be given before.
 *
 * @param part of the styles
 * @param looks as they are written
 * @param used the highest number that is still used; -1 for none
 */
export function dropStyles(
  pack: Package,
  part: string,
  looks: ReadonlySet<string>,
  used: number,
): void {
  const xml = pack.text(part);
  const list = childOf(partXml(pack, part), "dxfs");
  const styles = list?.children ?? [];
  let kept = styles.length;
  while (kept > used + 1 && looks.has(xml.slice(styles[kept - 1]?.start, styles[kept - 1]?.end)))
    kept -= 1;
  const dropped = list && kept < styles.length ? shorter(xml, list, kept) : [];
  const text = withoutLeast(edited(xml, dropped));
  if (text !== xml) pack.put(part, text);
}

/** A list that was made for the styles goes with them; one that was there stays, with nothing in it. */
const shorter = (xml: string, list: XmlElement, kept: number): Edit[] =>
  kept === 0 ? [emptied(list)] : shortened(xml, list, kept);

const shortened = (xml: string, list: XmlElement, kept: number): Edit[] => [
  ...list.children.slice(kept).map(removed),
  ...(list.attributes.has("count") ? [setAttribute(xml, list, "count", String(kept))] : []),
];
