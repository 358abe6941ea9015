import type { CellStyle, Line } from "../../look/cellStyle";
import { type Book, onePart } from "../book";
import type { Package } from "../package/package";
import { addPart, dropPart, inItsWords, relate, unrelate } from "../package/relations";
import { attributeText } from "../xml/editText";
import { childOf, childrenOf, isOn, readXml, type XmlElement } from "../xml/readXml";
import { withLeast } from "./leastStyles";
import { appendToList } from "./placeChild";

/** The styles of a workbook: looked up, and appended where it lacks one; none is ever numbered anew. */
export interface Styles {
  readonly part: string;
  /** The number of a cell style. */
  readonly cell: (style: CellStyle) => number;
  /** The number of a style for conditional formats. */
  readonly conditional: (style: CellStyle) => number;
  /** Whether text of a cell style goes on in a further line. */
  readonly wraps: (style: number) => boolean;
  /** Puts what was appended into the package. */
  readonly save: () => void;
}

const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml";
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** Styles of a workbook that has none: the least that a spreadsheet asks for. */
export const plainStyles = (font: string): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<styleSheet xmlns="${MAIN}"><fonts count="1">${font}</fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles><dxfs count="0"/><tableStyles count="0" defaultTableStyle="TableStyleMedium9" defaultPivotStyle="PivotStyleLight16"/></styleSheet>`;

const PLAIN = plainStyles('<font><sz val="11"/><name val="Calibri"/><family val="2"/></font>');

/** A list in the styles part: what it holds, as written, and what comes to it. */
class List {
  private readonly numbers = new Map<string, number>();
  readonly added: string[] = [];

  constructor(xml: string, root: XmlElement, name: string) {
    for (const [at, { start, end }] of (childOf(root, name)?.children ?? []).entries()) {
      const text = xml.slice(start, end);
      if (!this.numbers.has(text)) this.numbers.set(text, at);
    }
    this.count = childOf(root, name)?.children.length ?? 0;
  }

  private count: number;

  number(text: string): number {
    const known = this.numbers.get(text);
    if (known !== undefined) return known;
    this.numbers.set(text, this.count);
    this.added.push(text);
    return this.count++;
  }
}

const LISTS = ["fonts", "fills", "borders", "cellXfs", "dxfs"] as const;
type Lists = Record<(typeof LISTS)[number], List>;

export function openStyles(book: Book): Styles {
  const { pack } = book;
  const there = onePart(book, "styles");
  const part = there ?? `${book.part.slice(0, book.part.lastIndexOf("/") + 1)}styles.xml`;
  const xml = there === undefined ? PLAIN : withLeast(pack.text(part), part);
  const root = readXml(xml);
  const p = root.prefix;
  const lists = Object.fromEntries(LISTS.map((name) => [name, new List(xml, root, name)])) as Lists;
  const formats = numberFormats(root);
  const [ofCells, ofRules] = [new Map<CellStyle, number>(), new Map<CellStyle, number>()];
  /** The same style is asked for cell after cell. */
  const remembered = (
    known: Map<CellStyle, number>,
    style: CellStyle,
    make: () => number,
  ): number => {
    const number = known.get(style) ?? make();
    known.set(style, number);
    return number;
  };
  return {
    part,
    cell: (style) =>
      remembered(ofCells, style, () => lists.cellXfs.number(xfXml(p, style, lists, formats))),
    conditional: (style) => remembered(ofRules, style, () => lists.dxfs.number(dxfXml(p, style))),
    wraps: wrapsOf(root, lists),
    save() {
      let text = appendToList(xml, "numFmts", formats.added(p));
      for (const name of LISTS) text = appendToList(text, name, lists[name].added);
      if (text === xml) return;
      if (there === undefined) addStyles(pack, book.part, part, text);
      else pack.put(part, text);
    },
  };
}

function addStyles(pack: Package, book: string, part: string, text: string): void {
  addPart(pack, part, TYPE, text);
  relate(pack, book, "styles", part);
}

/** Takes the styles away from a workbook that had none, where nothing is left of what came to them. */
export function dropPlainStyles(pack: Package, book: string, part: string): void {
  if (pack.text(part) !== inItsWords(pack, PLAIN)) return;
  unrelate(pack, book, ({ type }) => type === "styles");
  dropPart(pack, part);
}

/** Whether text goes on in a further line: of a style that was there, and of one that came. */
function wrapsOf(root: XmlElement, { cellXfs }: Lists): (style: number) => boolean {
  const there = childrenOf(childOf(root, "cellXfs"), "xf").map((xf) =>
    isOn(childOf(xf, "alignment"), "wrapText"),
  );
  return (style) =>
    there[style] ?? cellXfs.added[style - there.length]?.includes('wrapText="1"') ?? false;
}

/** Formats that every spreadsheet knows by number (ECMA-376 part 1, 18.8.30). */
const BUILT_IN: Readonly<Record<string, number>> = {
  General: 0,
  "0": 1,
  "0.00": 2,
  "#,##0": 3,
  "#,##0.00": 4,
  "0%": 9,
  "0.00%": 10,
  "@": 49,
};
/** Below stand the numbers of formats that spreadsheets know. */
const FIRST_OWN = 164;

function numberFormats(root: XmlElement) {
  const numbers = new Map<string, number>();
  let next = FIRST_OWN;
  for (const { attributes } of childrenOf(childOf(root, "numFmts"), "numFmt")) {
    const number = Number(attributes.get("numFmtId"));
    numbers.set(attributes.get("formatCode") ?? "", number);
    next = Math.max(next, number + 1);
  }
  const added: [code: string, number: number][] = [];
  return {
    number(code: string): number {
      const known = BUILT_IN[code] ?? numbers.get(code);
      if (known !== undefined) return known;
      numbers.set(code, next);
      added.push([code, next]);
      return next++;
    },
    added: (p: string) =>
      added.map(
        ([code, number]) =>
          `<${p}numFmt numFmtId="${number}" formatCode="${attributeText(code)}"/>`,
      ),
  };
}

const xfXml = (
  p: string,
  { font, fill, border, alignment, numFmt }: CellStyle,
  lists: Lists,
  formats: ReturnType<typeof numberFormats>,
): string => {
  const format = numFmt === undefined ? 0 : formats.number(numFmt);
  const numbers = {
    numFmtId: format,
    fontId: font ? lists.fonts.number(fontXml(p, font)) : 0,
    fillId: fill ? lists.fills.number(fillXml(p, fill)) : 0,
    borderId: border ? lists.borders.number(borderXml(p, border)) : 0,
    xfId: 0,
    applyNumberFormat: format > 0 ? 1 : undefined,
    applyFont: font && 1,
    applyFill: fill && 1,
    applyBorder: border && 1,
    applyAlignment: alignment && 1,
  };
  return alignment
    ? `<${p}xf${attributesXml(numbers)}><${p}alignment${attributesXml({
        ...alignment,
        wrapText: alignment.wrapText && 1,
      })}/></${p}xf>`
    : `<${p}xf${attributesXml(numbers)}/>`;
};

/** Attributes as they are written; those that are not said are left out. */
export const attributesXml = (
  attributes: Readonly<Record<string, string | number | false | undefined>>,
): string =>
  Object.entries(attributes)
    .flatMap(([name, value]) =>
      value === undefined || value === false ? [] : [` ${name}="${attributeText(String(value))}"`],
    )
    .join("");

const colourXml = (tag: string, rgb: string) => `<${tag} rgb="FF${rgb}"/>`;

/** A font as cells have it: the order is that of the schema (CT_Font). */
export const fontXml = (
  p: string,
  { name, size, bold, color }: NonNullable<CellStyle["font"]>,
): string =>
  [
    `<${p}font>`,
    bold ? `<${p}b/>` : "",
    size === undefined ? "" : `<${p}sz val="${size}"/>`,
    color ? colourXml(`${p}color`, color.rgb) : "",
    name === undefined ? "" : `<${p}name val="${attributeText(name)}"/><${p}family val="2"/>`,
    `</${p}font>`,
  ].join("");

const fillXml = (p: string, { fgColor, bgColor }: NonNullable<CellStyle["fill"]>): string =>
  `<${p}fill><${p}patternFill patternType="solid">${colourXml(`${p}fgColor`, fgColor.rgb)}${bgColor ? colourXml(`${p}bgColor`, bgColor.rgb) : `<${p}bgColor indexed="64"/>`}</${p}patternFill></${p}fill>`;

const borderXml = (p: string, border: NonNullable<CellStyle["border"]>): string => {
  const side = (name: string, { style, color }: Line) =>
    `<${p}${name} style="${style}">${colourXml(`${p}color`, color.rgb)}</${p}${name}>`;
  const { left, right, top, bottom } = border;
  return `<${p}border>${side("left", left)}${side("right", right)}${side("top", top)}${side("bottom", bottom)}<${p}diagonal/></${p}border>`;
};

export const dxfXml = (p: string, { font, fill }: CellStyle): string =>
  `<${p}dxf>${font ? fontXml(p, font) : ""}${fill ? fillXml(p, fill) : ""}</${p}dxf>`;
