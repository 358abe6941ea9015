import { type Book, onePart } from "./book";
import { partXml } from "./package/relations";
import { childOf, childrenOf } from "./xml/readXml";

/** Number formats of days and times that every spreadsheet knows by number (ECMA-376 part 1, 18.8.30). */
const BUILT_IN = (format: number) =>
  (format >= 14 && format <= 22) ||
  (format >= 27 && format <= 36) ||
  (format >= 45 && format <= 47) ||
  (format >= 50 && format <= 58);

/** Whether a format shows a day or time: d, m, y, h or s outside of quotes, brackets and escapes. */
export const isDayFormat = (code: string): boolean =>
  /[dmyhs]/i.test(
    code.replace(/"[^"]*"|\[(?!h+\]|m+\]|s+\])[^\]]*\]|\\.|_.|\*./gi, "").replace(/general/gi, ""),
  );

/** Tells the cell styles of a workbook that show days or times. */
export function dayStyles(book: Book): (style: number) => boolean {
  const part = onePart(book, "styles");
  if (!part) return () => false;
  const root = partXml(book.pack, part);
  const own = new Map(
    childrenOf(childOf(root, "numFmts"), "numFmt").map(({ attributes }) => [
      Number(attributes.get("numFmtId")),
      isDayFormat(attributes.get("formatCode") ?? ""),
    ]),
  );
  const styles = childrenOf(childOf(root, "cellXfs"), "xf").map(({ attributes }) => {
    const format = Number(attributes.get("numFmtId") ?? 0);
    return own.get(format) ?? BUILT_IN(format);
  });
  return (style) => styles[style] ?? false;
}
