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
  const book = elementsOf(text("xl/workbook.xml"))[0];
  const related = relationsOf(text, "xl/workbook.xml");
  const inventory = new Map<string, Map<string, number>>();
  const whole = counter();
  for (const child of book?.children ?? []) if (!PLAIN_BOOK.has(child.name)) whole.element(child);
  for (const { type } of related) if (!SHEETS.has(type)) whole.add(`part ${type}`, 1);
  const styles = elementsOf(text("xl/styles.xml"))[0];
  for (const child of styles?.children ?? []) if (STYLES.has(child.name)) whole.element(child);
  whole.add("richText", /<si>(?:(?!<\/si>)[\s\S])*?<r>/.test(text("xl/sharedStrings.xml")) ? 1 : 0);
  inventory.set(WHOLE_BOOK, whole.counts);

  for (const sheet of book?.children.find(({ name }) => name === "sheets")?.children ?? []) {
    const target = related.find(({ id }) => id === sheet.attributes.get("r:id"));
    if (!target) continue;
    const found = counter();
    const xml = text(target.part);
    const [before = xml, after = ""] = parted(xml);
    for (const child of elementsOf(`${before}${after}`)[0]?.children ?? [])
      if (!PLAIN_SHEET.has(child.name)) found.element(child);
    for (const kind of ["array", "dataTable"])
      found.add(`${kind} formula`, xml.split(`t="${kind}"`).length - 1);
    inRelated(text, target.part, found, new Set());
    inventory.set(sheet.attributes.get("name") ?? "", found.counts);
  }
  return inventory;
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
  /** An element counts its children, or itself where it has none but says something; an extension what it contains. */
  const element = (one: XmlElement): void => {
    if (one.name === "extLst") for (const inner of one.children) element(inner);
    else if (one.name === "ext")
      for (const inner of one.children) {
        element(inner);
        details(inner.name, inner);
      }
    else if (one.name === "AlternateContent")
      for (const choice of one.children.slice(0, 1))
        for (const inner of choice.children) element(inner);
    else if (!saysNothing(one)) {
      const own = one.children.filter((child) => child.name !== "extLst" && !saysNothing(child));
      add(one.name, Math.max(1, own.length));
      // An extension within, such as that of a rule.
      for (const inner of own)
        for (const deeper of inner.children) if (deeper.name === "extLst") element(deeper);
    }
  };
  return { counts, add, element };
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
  text: (name: string) => string,
  part: string,
  found: ReturnType<typeof counter>,
  seen: Set<string>,
): void => {
  for (const { type, part: other } of relationsOf(text, part)) {
    if (seen.has(other)) continue;
    seen.add(other);
    if (type === "comments" || type === "threadedComment") {
      const root = elementsOf(text(other))[0];
      const list = root?.children.find(({ name }) => name === "commentList") ?? root;
      found.add(type, list?.children.length ?? 0);
    } else if (type === "vmlDrawing") {
      // The frames of comments are made anew with them; other shapes are controls and pictures.
      const shapes = text(other)
        .split(/<v:shape[ >]/)
        .slice(1);
      found.add("control", shapes.filter((one) => !one.includes('ObjectType="Note"')).length);
    } else if (type === "drawing") {
      for (const anchor of elementsOf(text(other))[0]?.children ?? [])
        for (const shape of anchor.children.flatMap((one) =>
          one.name === "AlternateContent" ? (one.children[0]?.children ?? []) : one,
        ))
          if (SHAPES.has(shape.name)) found.add(`drawing ${shape.name}${framed(shape)}`, 1);
    } else if (!LEAVES.has(type)) found.add(`part ${type}`, 1);
    if (!LEAVES.has(type)) inRelated(text, other, found, seen);
  }
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
