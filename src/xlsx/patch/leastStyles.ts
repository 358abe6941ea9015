import { damaged } from "../package/readArchive";
import { type Edit, edited, removed } from "../xml/editText";
import { childOf, readXml, type XmlElement } from "../xml/readXml";
import { appendToList } from "./placeChild";

/**
 * What each list of styles holds at least, since number 0 of each is the look of a cell that says none; other
 * programs do not open a workbook without. The blank in the first tag is ours: by it the list is known again.
 */
const LEAST: Readonly<Record<string, (p: string) => readonly string[]>> = {
  fonts: (p) => [`<${p}font ><${p}sz val="11"/><${p}name val="Calibri"/></${p}font>`],
  fills: (p) => [
    `<${p}fill ><${p}patternFill patternType="none"/></${p}fill>`,
    `<${p}fill><${p}patternFill patternType="gray125"/></${p}fill>`,
  ],
  borders: (p) => [
    `<${p}border ><${p}left/><${p}right/><${p}top/><${p}bottom/><${p}diagonal/></${p}border>`,
  ],
  cellStyleXfs: (p) => [`<${p}xf  numFmtId="0" fontId="0" fillId="0" borderId="0"/>`],
  cellXfs: (p) => [`<${p}xf  numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>`],
};

/**
 * The text of a styles part, with the least that each list of it must hold.
 *
 * @throws {BookError} where the part holds something else
 */
export function withLeast(xml: string, part: string): string {
  const root = readXml(xml);
  if (root.name !== "styleSheet") throw damaged(({ book }) => book.why.noStyles(part));
  const lacking = Object.keys(LEAST).filter((list) => isEmpty(childOf(root, list)));
  return lacking.reduce(
    (text, list) => appendToList(text, list, LEAST[list]?.(root.prefix) ?? []),
    lacking.length > 0 && isSelfClosing(root) ? opened(xml, root) : xml,
  );
}

const isEmpty = (list: XmlElement | undefined): boolean => (list?.children.length ?? 0) === 0;

const isSelfClosing = ({ inner, end }: XmlElement): boolean => inner === end;

/** A blank in the end tag tells that the element closed itself before. */
function opened(xml: string, { start, inner }: XmlElement): string {
  const tag = /^<([^\s/>]+)/.exec(xml.slice(start, inner))?.[1] ?? "";
  return `${xml.slice(0, inner - 2)}></${tag} >${xml.slice(inner)}`;
}

/** Takes off what `withLeast` put on, as long as nothing has come to it. */
export function withoutLeast(xml: string): string {
  const root = readXml(xml);
  const ours = Object.entries(LEAST).flatMap(([name, least]) => {
    const list = childOf(root, name);
    const text = list && xml.slice(list.inner, list.close);
    const [first = ""] = least(root.prefix);
    return list && text?.startsWith(first)
      ? [{ list, isAll: text === least(root.prefix).join("") }]
      : [];
  });
  if (ours.some(({ isAll }) => !isAll)) return xml;
  return closed(
    edited(
      xml,
      ours.map(({ list }) => emptied(list)),
    ),
  );
}

/** A list that counts was there before, with nothing in it. */
export const emptied = (list: XmlElement): Edit =>
  list.attributes.has("count")
    ? { from: list.start, to: list.end, text: `<${list.prefix}${list.name} count="0"/>` }
    : removed(list);

function closed(xml: string): string {
  const { inner, close, end } = readXml(xml);
  return inner === close && xml.slice(close, end).endsWith(" >")
    ? `${xml.slice(0, inner - 1)}/>${xml.slice(end)}`
    : xml;
}
