import type { Package } from "../package/package";
import { bytesOf, textOf } from "../package/partText";
import { partXml, relationsOf } from "../package/relations";
import type { ReadSheet } from "../readSheet";
import { formulasOf } from "../scan/formulasOf";
import { attributeText, type Edit, edited, elementText, setAttribute } from "../xml/editText";
import { readXml, within, type XmlElement } from "../xml/readXml";
import { type Insertion, movedAreas, movedFormula, movedReference } from "./movedReference";
import { columnsOf } from "./rowPatch";
import { joined } from "./texts";

/** Attributes that hold areas of the sheet that they stand on. */
const AREAS = ["ref", "sqref", "topLeftCell", "activeCell"];
/** Elements that hold formulas, whatever part they stand in. */
const FORMULAS = new Set([
  "f",
  "formula",
  "formula1",
  "formula2",
  "calculatedColumnFormula",
  "totalsRowFormula",
  "definedName",
]);

/** Parts of a sheet that name its cells. */
const NAMING = new Set(["table", "comments", "threadedComment", "pivotTable"]);

/** What refers to the cells of a sheet in a text of XML, where they now are. */
const moves = (
  xml: string,
  root: XmlElement,
  home: string | undefined,
  insertion: Insertion,
): Edit[] =>
  [...within(root), root].flatMap((element) => [
    ...movedAttributes(xml, element, home, insertion),
    ...movedContent(element, home, insertion),
  ]);

/** Areas of the sheet itself, and where a link leads to. */
function movedAttributes(
  xml: string,
  element: XmlElement,
  home: string | undefined,
  insertion: Insertion,
): Edit[] {
  const edits: Edit[] = [];
  const move = (attribute: string, moved: (text: string) => string) => {
    const text = element.attributes.get(attribute);
    if (text === undefined) return;
    const now = moved(text);
    if (now !== text) edits.push(setAttribute(xml, element, attribute, now));
  };
  if (home === insertion.sheet)
    for (const attribute of AREAS) move(attribute, (areas) => movedAreas(areas, insertion));
  if (element.name === "hyperlink")
    move("location", (formula) => movedFormula(formula, home, insertion));
  return edits;
}

function movedContent(element: XmlElement, home: string | undefined, insertion: Insertion): Edit[] {
  const { name, text, children } = element;
  if (children.length > 0 || text === "") return [];
  const now = FORMULAS.has(name)
    ? movedFormula(text, home, insertion)
    : name === "sqref" && home === insertion.sheet
      ? movedAreas(text, insertion)
      : text;
  return now === text ? [] : [inside(element, now)];
}

const inside = ({ inner, close }: XmlElement, text: string): Edit => ({
  from: inner,
  to: close,
  text: elementText(text),
});

/** The part of the sheet that gets the rows. */
export function withRows(read: ReadSheet, insertion: Insertion): Uint8Array {
  const { around } = read;
  const { sheet } = insertion;
  const breaks = [...within(around.root)].flatMap((element): Edit[] =>
    element.name === "rowBreaks"
      ? element.children.flatMap((one) => brokenAt(around.text, one, insertion))
      : [],
  );
  return resized(read, movedRows(read, insertion, sheet, true), [
    ...moves(around.text, around.root, sheet, insertion),
    ...anchors(around.root, insertion),
    ...breaks,
  ]);
}

/** A sheet's part with other rows, and edits around them. */
function resized({ around }: ReadSheet, rows: string, edits: readonly Edit[]): Uint8Array {
  const before = edits.filter(({ to }) => to <= around.gap);
  const head = edited(around.text.slice(0, around.gap), before);
  const tail = edited(around.text, edits).slice(head.length);
  return joined([bytesOf(head), bytesOf(rows), bytesOf(tail)]);
}

const brokenAt = (xml: string, element: XmlElement, { at, count }: Insertion): Edit[] => {
  const row = Number(element.attributes.get("id"));
  return row > at ? [setAttribute(xml, element, "id", String(row + count))] : [];
};

/** The rows of a sheet with their numbers and formulas as they now are; formulas that were shared are written out. */
function movedRows(read: ReadSheet, insertion: Insertion, home: string, renumber: boolean): string {
  const { bytes, scanned } = read;
  const { from, to, rows, begins, ends } = scanned.places;
  const formulaAt = formulasOf(scanned.cells, scanned.formulas);
  const pieces: string[] = [];
  let done = from;
  for (const [index, row] of rows.entries()) {
    const [begin, end] = [begins[index] ?? 0, ends[index] ?? 0];
    pieces.push(textOf(bytes.subarray(done, begin)));
    const xml = textOf(bytes.subarray(begin, end));
    const down = renumber && row >= insertion.at ? insertion.count : 0;
    pieces.push(movedRow(xml, row, down, (column) => formulaAt(row, column), home, insertion));
    done = end;
  }
  pieces.push(textOf(bytes.subarray(done, to)));
  return pieces.join("");
}

function movedRow(
  xml: string,
  row: number,
  down: number,
  formula: (column: number) => string | undefined,
  home: string,
  insertion: Insertion,
): string {
  if (down === 0 && !/<(?:\w+:)?f[\s>/]/.test(xml)) return xml;
  const root = readXml(xml);
  const edits = down > 0 ? [setAttribute(xml, root, "r", String(row + down + 1))] : [];
  const columns = columnsOf(root.children);
  for (const [at, cell] of root.children.entries()) {
    const address = cell.attributes.get("r");
    if (down > 0 && address !== undefined)
      edits.push(setAttribute(xml, cell, "r", address.replace(/\d+$/, String(row + down + 1))));
    for (const child of cell.children)
      if (child.name === "f")
        edits.push(...movedCellFormula(xml, child, formula(columns[at] ?? 0), home, insertion));
  }
  return edited(xml, edits);
}

function movedCellFormula(
  xml: string,
  element: XmlElement,
  formula: string | undefined,
  home: string,
  insertion: Insertion,
): Edit[] {
  const now = formula === undefined ? undefined : movedFormula(formula, home, insertion);
  const shared = element.attributes.get("t") === "shared";
  if (shared && now !== undefined) {
    const tag = `${element.prefix}f`;
    return [{ from: element.start, to: element.end, text: `<${tag}>${elementText(now)}</${tag}>` }];
  }
  const area = element.attributes.get("ref");
  const moved = area && home === insertion.sheet ? movedAreas(area, insertion) : area;
  return [
    ...(moved !== undefined && moved !== area ? [setAttribute(xml, element, "ref", moved)] : []),
    ...(now !== undefined && element.text !== "" && now !== element.text
      ? [inside(element, now)]
      : []),
  ];
}

/** Places of pictures, charts and controls on a sheet: the rows that they reach from and to. */
function anchors(root: XmlElement, { at, count }: Insertion): Edit[] {
  return [...within(root)].flatMap((element): Edit[] => {
    if (element.name !== "from" && element.name !== "to") return [];
    const row = element.children.find(({ name }) => name === "row");
    const number = Number(row?.text);
    return row && number >= at ? [inside(row, String(number + count))] : [];
  });
}

/** The other parts of a package, once a sheet has got rows. */
export function moveOthers(
  pack: Package,
  part: string,
  others: readonly {
    readonly name: string;
    readonly part: string;
    readonly read: () => ReadSheet;
  }[],
  book: string,
  insertion: Insertion,
): void {
  for (const { type, part: related, external } of relationsOf(pack, part)) {
    if (external || !pack.has(related)) continue;
    if (NAMING.has(type))
      change(pack, related, (xml, root) => moves(xml, root, insertion.sheet, insertion));
    else if (type === "drawing") change(pack, related, (_xml, root) => anchors(root, insertion));
    else if (type === "vmlDrawing") pack.put(related, movedShapes(pack.text(related), insertion));
  }
  change(pack, book, (xml, root) => moves(xml, root, undefined, insertion));
  for (const chart of pack.names.filter((name) => /(^|\/)charts\/[^/]+\.xml$/i.test(name)))
    change(pack, chart, (xml, root) => moves(xml, root, undefined, insertion));
  for (const cache of pack.names.filter((name) => /pivotCacheDefinition[^/]*\.xml$/i.test(name)))
    change(pack, cache, (xml, root) => pivotSources(xml, root, insertion));
  for (const other of others) {
    if (!mentions(pack.text(other.part), insertion.sheet)) continue;
    const read = other.read();
    const { around } = read;
    const edits = moves(around.text, around.root, other.name, insertion);
    pack.put(other.part, resized(read, movedRows(read, insertion, other.name, false), edits));
  }
}

function change(
  pack: Package,
  part: string,
  edits: (xml: string, root: XmlElement) => readonly Edit[],
): void {
  const root = partXml(pack, part);
  const xml = pack.text(part);
  const found = edits(xml, root);
  if (found.length > 0) pack.put(part, edited(xml, found));
}

/** Whether a sheet's part names another sheet in a formula. */
const mentions = (xml: string, sheet: string): boolean =>
  xml.includes(`${elementText(sheet)}!`) ||
  xml.includes(`${elementText(sheet.replaceAll("'", "''"))}'!`) ||
  xml.includes(`${attributeText(sheet.replaceAll("'", "''"))}'!`);

const pivotSources = (xml: string, root: XmlElement, insertion: Insertion): Edit[] =>
  [...within(root)].flatMap((element) => {
    const area = element.attributes.get("ref");
    return element.name === "worksheetSource" &&
      element.attributes.get("sheet") === insertion.sheet &&
      area !== undefined
      ? [setAttribute(xml, element, "ref", movedReference(area, insertion))]
      : [];
  });

/** Notes and controls in the older drawing format: row and corners of each. */
const movedShapes = (xml: string, { at, count }: Insertion): string =>
  xml
    .replace(/(<x:Row>\s*)(\d+)/g, (whole, tag: string, row: string) =>
      Number(row) >= at ? `${tag}${Number(row) + count}` : whole,
    )
    .replace(/(<x:Anchor>)([^<]*)/g, (_whole, tag: string, corners: string) => {
      const numbers = corners.split(",");
      return (
        tag +
        numbers
          .map((number, index) =>
            (index === 2 || index === 6) && Number(number) >= at
              ? ` ${Number(number) + count}`
              : number,
          )
          .join(",")
      );
    });
