import { appendTo, type Edit, edited, setAttribute } from "../xml/editText";
import { childOf, readXml, type XmlElement } from "../xml/readXml";

/** The order in which elements stand in their parts (ECMA-376 part 1, annex A: CT_Worksheet, CT_Workbook, CT_Stylesheet). */
const ORDER = {
  worksheet:
    "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter rowBreaks colBreaks customProperties cellWatches ignoredErrors smartTags drawing legacyDrawing legacyDrawingHF drawingHF picture oleObjects controls webPublishItems tableParts extLst",
  workbook:
    "fileVersion fileSharing workbookPr AlternateContent workbookProtection bookViews sheets functionGroups externalReferences definedNames calcPr oleSize customWorkbookViews pivotCaches smartTagPr smartTagTypes webPublishing fileRecoveryPr webPublishObjects extLst",
  styleSheet:
    "numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs tableStyles colors extLst",
} as const;

export type Parent = keyof typeof ORDER;

/**
 * Puts XML for a child of a part's outermost element where the schema has it: behind the last element that
 * comes before it. Elements that the schema does not know stand where they are.
 */
export function placeChild(xml: string, root: XmlElement, name: string, added: string): Edit {
  const order = ORDER[root.name as Parent].split(" ");
  const rank = order.indexOf(name);
  const before = root.children.filter((child) => {
    const at = order.indexOf(child.name);
    return at >= 0 && at < rank;
  });
  const last = before.at(-1);
  if (last) return { from: last.end, to: last.end, text: added };
  if (root.children.length === 0) return appendTo(xml, root, added);
  return { from: root.inner, to: root.inner, text: added };
}

/**
 * Appends items to a list that is a child of a part's outermost element, and counts them where it counts;
 * makes the list where there is none. One that is made here does not count, by which it is known again.
 */
export function appendToList(xml: string, list: string, items: readonly string[]): string {
  if (items.length === 0) return xml;
  const root = readXml(xml);
  const there = childOf(root, list);
  const text = items.join("");
  if (!there) {
    const tag = `${root.prefix}${list}`;
    return edited(xml, [placeChild(xml, root, list, `<${tag}>${text}</${tag}>`)]);
  }
  const longer = edited(xml, [appendTo(xml, there, text)]);
  if (!there.attributes.has("count")) return longer;
  const grown = childOf(readXml(longer), list) ?? there;
  return edited(longer, [setAttribute(longer, grown, "count", String(grown.children.length))]);
}
