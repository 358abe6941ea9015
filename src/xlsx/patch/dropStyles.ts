import type { Package } from "../package/package";
import { partXml } from "../package/relations";
import { type Edit, edited, removed, setAttribute } from "../xml/editText";
import { childOf, type XmlElement } from "../xml/readXml";

/**
 * Takes styles for conditional formats off the end of their list, as far as they are of certain looks and
 * no longer used, so that no other is numbered anew.
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
  if (!list || kept === styles.length) return;
  pack.put(part, edited(xml, kept === 0 ? emptied(list) : shortened(xml, list, kept)));
}

/** A list that was made for the styles goes with them; one that was there stays, with nothing in it. */
const emptied = (list: XmlElement): Edit[] =>
  list.attributes.has("count")
    ? [{ from: list.start, to: list.end, text: `<${list.prefix}dxfs count="0"/>` }]
    : [removed(list)];

const shortened = (xml: string, list: XmlElement, kept: number): Edit[] => [
  ...list.children.slice(kept).map(removed),
  ...(list.attributes.has("count") ? [setAttribute(xml, list, "count", String(kept))] : []),
];
