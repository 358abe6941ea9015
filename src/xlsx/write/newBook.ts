import { FONT } from "../../look/look";
import { type Book, bookOf } from "../book";
import { openPackage } from "../package/package";
import { officeRelation } from "../package/relations";
import { fontXml, plainStyles } from "../patch/styles";
import { elementText } from "../xml/editText";

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const SHEETML = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const OFFICE = "application/vnd.openxmlformats-officedocument";
const PART = "xl/workbook.xml";
/** No file tells when it was made, so that the same lineup gives the same file. */
const MADE = "2026-01-01T00:00:00Z";

const relation = (id: number, type: string, target: string) =>
  `<Relationship Id="rId${id}" Type="${type}" Target="${target}"/>`;

/** The parts of a workbook without sheets, which are added as to any other. */
const parts = (title: string): Readonly<Record<string, string>> => ({
  "[Content_Types].xml": `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/${PART}" ContentType="${SHEETML}.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="${SHEETML}.styles+xml"/><Override PartName="/docProps/core.xml" ContentType="application/vnd.openxmlformats-package.core-properties+xml"/><Override PartName="/docProps/app.xml" ContentType="${OFFICE}.extended-properties+xml"/></Types>`,
  "_rels/.rels": `<Relationships xmlns="${PACKAGE}/relationships">${relation(1, officeRelation("officeDocument"), PART)}${relation(2, `${PACKAGE}/relationships/metadata/core-properties`, "docProps/core.xml")}${relation(3, officeRelation("extended-properties"), "docProps/app.xml")}</Relationships>`,
  "docProps/app.xml": `<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Microsoft Excel</Application></Properties>`,
  "docProps/core.xml": `<cp:coreProperties xmlns:cp="${PACKAGE}/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"><dc:title>${elementText(title)}</dc:title><dc:creator>Gearproof</dc:creator><dcterms:created xsi:type="dcterms:W3CDTF">${MADE}</dcterms:created><dcterms:modified xsi:type="dcterms:W3CDTF">${MADE}</dcterms:modified></cp:coreProperties>`,
  [PART]: `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${officeRelation("").slice(0, -1)}"><bookViews><workbookView/></bookViews><sheets></sheets><calcPr calcId="191029"/></workbook>`,
  "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${PACKAGE}/relationships">${relation(1, officeRelation("styles"), "styles.xml")}</Relationships>`,
});

/**
 * A workbook without sheets yet. LibreOffice keeps cached results only of files whose application it knows,
 * so that these say Excel; and none asks for a calculation on opening, which without the add-in would turn
 * every worksheet function of ours into `#NAME?`.
 */
export function newBook(title: string): Book {
  const pack = openPackage();
  for (const [name, xml] of Object.entries(parts(title))) pack.put(name, HEAD + xml);
  pack.put("xl/styles.xml", plainStyles(fontXml("", { name: FONT, size: 10 })));
  return bookOf(pack, PART);
}
