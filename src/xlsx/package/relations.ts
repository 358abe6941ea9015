import { appendTo, attributeText, edited, removed } from "../xml/editText";
import { childrenOf, readXml, type XmlElement, XmlError } from "../xml/readXml";
import type { Package } from "./package";
import { bytesOfPieces } from "./partText";
import { damaged, partName } from "./readArchive";

/** What a part is related to. */
export interface Relation {
  readonly id: string;
  /** The last word of its type, which transitional and strict workbooks have in common. */
  readonly type: string;
  /** The part; for one outside of the package its address. */
  readonly part: string;
  readonly external: boolean;
}

const TRANSITIONAL = {
  main: "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
  relations: "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
};
/** The namespaces of strict workbooks (ISO/IEC 29500-1, annex A). */
const STRICT = {
  main: "http://purl.oclc.org/ooxml/spreadsheetml/main",
  relations: "http://purl.oclc.org/ooxml/officeDocument/relationships",
};

/** Whether a package is a strict workbook, by what it calls its workbook part. */
const isStrict = (pack: Package): boolean => pack.text("_rels/.rels").includes(STRICT.relations);

/** XML of a new part in the namespaces of the workbook that it comes to. */
export const inItsWords = (pack: Package, xml: string): string =>
  isStrict(pack)
    ? xml
        .replaceAll(`"${TRANSITIONAL.main}"`, `"${STRICT.main}"`)
        .replaceAll(TRANSITIONAL.relations, STRICT.relations)
    : xml;

/** The namespace of what relates parts, as a workbook has it. */
export const relationsNamespace = (pack: Package): string =>
  isStrict(pack) ? STRICT.relations : TRANSITIONAL.relations;

const RELATIONS = "http://schemas.openxmlformats.org/package/2006/relationships";
const TYPES = "[Content_Types].xml";

/** An XML part of a package, read whole. */
export function partXml(pack: Package, part: string): XmlElement {
  try {
    if (!pack.has(part)) throw new XmlError(({ book }) => book.why.missing);
    return readXml(pack.text(part));
  } catch (error) {
    if (error instanceof XmlError)
      throw damaged((told) => told.book.why.part(part, error.say(told)));
    throw error;
  }
}

const relationsPart = (part: string): string => {
  const folder = part.slice(0, part.lastIndexOf("/") + 1);
  return `${folder}_rels/${part.slice(folder.length)}.rels`;
};

/** What a part of a package is related to; "" stands for the package itself. */
export function relationsOf(pack: Package, part: string): Relation[] {
  const rels = relationsPart(part);
  if (!pack.has(rels)) return [];
  return childrenOf(partXml(pack, rels), "Relationship").map(({ attributes }) => {
    const external = attributes.get("TargetMode") === "External";
    const target = attributes.get("Target") ?? "";
    return {
      id: attributes.get("Id") ?? "",
      type: attributes.get("Type")?.split("/").at(-1) ?? "",
      part: external ? target : resolved(part, target),
      external,
    };
  });
}

/** The part that a target names, as seen from another part. */
function resolved(from: string, target: string): string {
  const said = decoded(target).replaceAll("\\", "/").replace(/#.*$/, "");
  const path = said.startsWith("/") ? [] : from.split("/").slice(0, -1);
  for (const step of said.split("/"))
    if (step === "..") path.pop();
    else if (step !== "." && step !== "") path.push(step);
  return path.join("/");
}

const decoded = (target: string): string => {
  try {
    return decodeURI(target);
  } catch {
    return target;
  }
};

/** The type of a relationship as it is written in transitional workbooks. */
export const officeRelation = (type: string): string => `${TRANSITIONAL.relations}/${type}`;

/** Relates a part to another; gives the id of the relationship, the one that is there already where there is one. */
export function relate(pack: Package, part: string, type: string, to: string): string {
  const there = relationsOf(pack, part);
  const same = there.find((one) => one.type === type && partName(one.part) === partName(to));
  if (same) return same.id;
  const used = new Set(there.map(({ id }) => id));
  let number = there.length + 1;
  while (used.has(`rId${number}`)) number += 1;
  const id = `rId${number}`;
  const rels = relationsPart(part);
  const xml = pack.has(rels)
    ? pack.text(rels)
    : `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="${RELATIONS}"/>`;
  const root = readXml(xml);
  const said = inItsWords(pack, officeRelation(type));
  const added = `<${root.prefix}Relationship Id="${id}" Type="${said}" Target="/${attributeText(encodeURI(to))}"/>`;
  pack.put(rels, edited(xml, [appendTo(xml, root, added)]));
  return id;
}

/** Takes the relationships of a part to some others away. */
export function unrelate(pack: Package, part: string, goes: (relation: Relation) => boolean): void {
  const rels = relationsPart(part);
  if (!pack.has(rels)) return;
  const elements = childrenOf(partXml(pack, rels), "Relationship");
  const edits = relationsOf(pack, part).flatMap((relation, at) =>
    goes(relation) ? [removed(elements[at] as XmlElement)] : [],
  );
  if (edits.length > 0) pack.put(rels, edited(pack.text(rels), edits));
}

/** The content type of a part: its own, else that of its ending; undefined where it has none. */
export function typeOf(pack: Package, part: string): string | undefined {
  const types = partXml(pack, TYPES).children;
  const ending = part.slice(part.lastIndexOf(".") + 1).toLowerCase();
  const own = types.find(
    ({ name, attributes }) =>
      name === "Override" && partName(attributes.get("PartName") ?? "") === partName(part),
  );
  const found =
    own ??
    types.find(
      ({ name, attributes }) =>
        name === "Default" && attributes.get("Extension")?.toLowerCase() === ending,
    );
  return found?.attributes.get("ContentType");
}

/**
 * Puts a new part into a package, with its content type.
 *
 * @param content its text, or its pieces, of which the first one names what the part is written in
 */
export function addPart(
  pack: Package,
  part: string,
  type: string,
  content: string | Iterable<string>,
): void {
  pack.put(
    part,
    typeof content === "string"
      ? inItsWords(pack, content)
      : bytesOfPieces(content, (first) => inItsWords(pack, first)),
  );
  if (typeOf(pack, part) === type) return;
  const xml = pack.text(TYPES);
  const root = readXml(xml);
  const added = `<${root.prefix}Override PartName="/${attributeText(encodeURI(part))}" ContentType="${type}"/>`;
  pack.put(TYPES, edited(xml, [appendTo(xml, root, added)]));
}

/** Takes a part out of a package, with its content type and what relates it to others. */
export function dropPart(pack: Package, part: string): void {
  pack.remove(part);
  pack.remove(relationsPart(part));
  const xml = pack.text(TYPES);
  const own = childrenOf(readXml(xml), "Override").filter(
    ({ attributes }) => partName(attributes.get("PartName") ?? "") === partName(part),
  );
  if (own.length > 0) pack.put(TYPES, edited(xml, own.map(removed)));
}

/** A name that no part has yet, such as `xl/worksheets/sheet7.xml` for `xl/worksheets/sheet#.xml`. */
export function freeName(pack: Package, pattern: string): string {
  let number = 1;
  while (pack.has(pattern.replace("#", String(number)))) number += 1;
  return pattern.replace("#", String(number));
}
