import { strFromU8, unzipSync } from "fflate";
import { elementsOf, type XmlElement } from "./elements";

/** What a workbook file holds beyond the plain values of its cells: by sheet, each feature and how many. */
export type Inventory = ReadonlyMap<string, ReadonlyMap<string, number>>;

/** Under this name stands what belongs to the workbook and to no one sheet. */
export const WHOLE_BOOK = "";

/**
 * Counts what the package of a workbook holds: per sheet the elements of its XML by name, the extensions
 * among them by what they contain, and the parts that it is related to with the elements of those; the
 * same for the workbook. It knows no list of features, so that it counts also those to come.
 */
export const inventoryOf = (file: Uint8Array): Inventory => {
  const parts = unzipSync(file, {
    filter: ({ name }) => !/\.(?:bin|png|jpe?g|gif|emf)$/i.test(name),
  });
  const text = (name: string) => strFromU8(parts[name] ?? new Uint8Array());
  const book = elementsOf(text("xl/workbook.xml"))[0]?.children ?? [];
  const related = relationsOf(text, "xl/workbook.xml");
  const sheets = book.find(({ name }) => name === "sheets")?.children ?? [];
  return new Map([
    [WHOLE_BOOK, countsOfBook(text, book, related)],
    ...sheets.flatMap(({ attributes }): [string, ReadonlyMap<string, number>][] => {
      const target = related.find(({ id }) => id === attributes.get("r:id"));
      return target ? [[attributes.get("name") ?? "", countsOfSheet(text, target.part)]] : [];
    }),
  ]);
};

type PartText = (name: string) => string;

const countsOfBook = (
  text: PartText,
  book: readonly XmlElement[],
  related: readonly Related[],
): ReadonlyMap<string, number> => {
  const { counts, add, element } = counter();
  for (const child of book) if (!PLAIN_BOOK.has(child.name)) element(child);
  for (const { type } of related) if (!SHEETS.has(type)) add(`part ${type}`, 1);
  for (const child of elementsOf(text("xl/styles.xml"))[0]?.children ?? [])
    if (STYLES.has(child.name)) element(child);
  add("richText", /<si>(?:(?!<\/si>)[\s\S])*?<r>/.test(text("xl/sharedStrings.xml")) ? 1 : 0);
  return counts;
};

const countsOfSheet = (text: PartText, part: string): ReadonlyMap<string, number> => {
  const found = counter();
  const xml = text(part);
  const [before = xml, after = ""] = parted(xml);
  for (const child of elementsOf(`${before}${after}`)[0]?.children ?? [])
    if (!PLAIN_SHEET.has(child.name)) found.element(child);
  for (const kind of ["array", "dataTable"])
    found.add(`${kind} formula`, xml.split(`t="${kind}"`).length - 1);
  inRelated(text, part, found, new Set());
  return found.counts;
};

/** What every sheet has, what says nothing of its own, and what may be told in fewer or more elements. */
const PLAIN_SHEET = new Set(
  "dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr phoneticPr pageMargins legacyDrawing drawing tableParts".split(
    " ",
  ),
);
const PLAIN_BOOK = new Set(
  "fileVersion workbookPr bookViews sheets calcPr extLst AlternateContent revisionPtr fileRecoveryPr".split(
    " ",
  ),
);
const STYLES = new Set(["tableStyles", "extLst"]);
const SHEETS = new Set(
  "worksheet chartsheet theme styles sharedStrings calcChain customXml sheetMetadata".split(" "),
);
/** Of these parts the sheet's own elements or nothing else tell; what lies in them is not counted. */
const LEAVES = new Set(["hyperlink", "printerSettings", "image", "table"]);

const parted = (xml: string): [string, string] | [] => {
  const [from, to] = [xml.indexOf("<sheetData"), xml.indexOf("</sheetData>")];
  return from >= 0 && to > from ? [xml.slice(0, from), xml.slice(to + "</sheetData>".length)] : [];
};

/** Elements whose attributes are all off where they are not written. */
const SWITCHES = new Set(["printOptions", "headerFooter"]);

/**
 * Whether an element leaves everything as it is without it: other programs write headers without text, and
 * settings that are all off (`gridLinesSet` only says that `gridLines` is meant).
 */
const saysNothing = ({ name, empty, attributes, children, hasText }: XmlElement): boolean =>
  empty ||
  (SWITCHES.has(name) &&
    !hasText &&
    attributes.size + children.length > 0 &&
    [...attributes].every(
      ([name, value]) => /^(?:0|false)$/.test(value) || name === "gridLinesSet",
    ) &&
    children.every(saysNothing));

const counter = () => {
  const counts = new Map<string, number>();
  const add = (feature: string, count: number) => {
    if (count > 0) counts.set(feature, (counts.get(feature) ?? 0) + count);
  };
  /** What is said within an element of an extension: each attribute and each element by its name. */
  const details = (feature: string, one: XmlElement): void => {
    for (const inner of one.children) {
      add(`${feature}: ${inner.name}`, 1);
      for (const name of inner.attributes.keys())
        if (!name.startsWith("xmlns")) add(`${feature}: ${inner.name} ${name}`, 1);
      details(feature, inner);
    }
  };
  const extended = ({ children }: XmlElement): void => {
    for (const inner of children) {
      element(inner);
      details(inner.name, inner);
    }
  };
  /** An element counts its children, or itself where it has none but says something; an extension what it contains. */
  const element = (one: XmlElement): void => {
    const deeper = EXTENDING[one.name];
    if (one.name === "ext") extended(one);
    else if (deeper) deeper(one).forEach(element);
    else if (!saysNothing(one)) said(one);
  };
  const said = (one: XmlElement): void => {
    const own = one.children.filter((child) => child.name !== "extLst" && !saysNothing(child));
    add(one.name, Math.max(1, own.length));
    // An extension within, such as that of a rule.
    for (const deeper of own.flatMap(({ children }) => children))
      if (deeper.name === "extLst") element(deeper);
  };
  return { counts, add, element };
};

/** Elements that only hold others, and which of these count. */
const EXTENDING: Readonly<Record<string, (one: XmlElement) => readonly XmlElement[]>> = {
  extLst: ({ children }) => children,
  AlternateContent: ({ children }) => children[0]?.children ?? [],
};

interface Related {
  readonly id: string;
  readonly type: string;
  readonly part: string;
}

/** What a part of a package is related to, by its relationships. */
export const relationsOf = (text: (name: string) => string, part: string): Related[] => {
  const folder = part.slice(0, part.lastIndexOf("/") + 1);
  const rels = `${folder}_rels/${part.slice(folder.length)}.rels`;
  return (elementsOf(text(rels))[0]?.children ?? []).map(({ attributes }) => ({
    id: attributes.get("Id") ?? "",
    type: (attributes.get("Type") ?? "").split("/").at(-1) ?? "",
    part: resolved(folder, attributes.get("Target") ?? ""),
  }));
};

const resolved = (folder: string, target: string): string => {
  if (target.startsWith("/")) return target.slice(1);
  const path = folder.split("/").slice(0, -1);
  for (const step of target.split("/"))
    if (step === "..") path.pop();
    else path.push(step);
  return path.join("/");
};

/** The parts that a part is related to, and theirs: how many of each sort, and what lies in drawings and comments. */
const inRelated = (
  text: PartText,
  part: string,
  found: ReturnType<typeof counter>,
  seen: Set<string>,
): void => {
  for (const { type, part: other } of relationsOf(text, part)) {
    if (seen.has(other)) continue;
    seen.add(other);
    const count = WITHIN[type];
    if (count) for (const [feature, many] of count(text(other), type)) found.add(feature, many);
    else if (!LEAVES.has(type)) found.add(`part ${type}`, 1);
    if (!LEAVES.has(type)) inRelated(text, other, found, seen);
  }
};

type CountWithin = (xml: string, type: string) => [feature: string, count: number][];

const comments: CountWithin = (xml, type) => {
  const root = elementsOf(xml)[0];
  const list = root?.children.find(({ name }) => name === "commentList") ?? root;
  return [[type, list?.children.length ?? 0]];
};

/** What lies in a part, by its sort. */
const WITHIN: Readonly<Record<string, CountWithin>> = {
  comments,
  threadedComment: comments,
  // The frames of comments are made anew with them; other shapes are controls and pictures.
  vmlDrawing: (xml) => {
    const shapes = xml.split(/<v:shape[ >]/).slice(1);
    return [["control", shapes.filter((shape) => !shape.includes('ObjectType="Note"')).length]];
  },
  drawing: (xml) =>
    (elementsOf(xml)[0]?.children ?? [])
      .flatMap(({ children }) => children)
      .flatMap((shape) =>
        shape.name === "AlternateContent" ? (shape.children[0]?.children ?? []) : shape,
      )
      .filter(({ name }) => SHAPES.has(name))
      .map((shape) => [`drawing ${shape.name}${framed(shape)}`, 1]),
};

/** What a frame holds, such as a chart or a slicer, by the last word of its namespace. */
const framed = (shape: XmlElement): string => {
  const data = shape.children
    .find(({ name }) => name === "graphic")
    ?.children.find(({ name }) => name === "graphicData");
  const uri = data?.attributes.get("uri");
  return uri === undefined ? "" : ` ${uri.split("/").at(-1)}`;
};

const SHAPES = new Set(["sp", "pic", "graphicFrame", "cxnSp", "grpSp", "contentPart"]);
