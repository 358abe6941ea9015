import { areaAddress } from "../../sheets/cells/area";
import { attributesXml } from "../patch/styles";
import { attributeText, elementText } from "../xml/editText";
import type { DraftTable } from "./sheetDraft";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** A table's part. */
export function tableXml(
  { name, area, headers, formulas, totals }: DraftTable,
  id: number,
): string {
  const columns = headers.map((header, at) => columnXml(header, at + 1, formulas?.get(header)));
  const filtered = totals ? { ...area, bottom: area.bottom - 1 } : area;
  const attributes = attributesXml({
    id,
    name,
    displayName: name,
    ref: areaAddress(area),
    totalsRowCount: totals ? 1 : undefined,
    totalsRowShown: totals ? undefined : 0,
  });
  return [
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<table xmlns="${MAIN}"${attributes}>`,
    `<autoFilter ref="${areaAddress(filtered)}"/>`,
    `<tableColumns count="${columns.length}">${columns.join("")}</tableColumns>`,
    '<tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="0" showColumnStripes="0"/></table>',
  ].join("");
}

/** A header over several lines: a table's definition writes the line's end as its number. */
const headerText = (header: string): string =>
  attributeText(header.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_").replaceAll("\n", "_x000a_"));

const columnXml = (header: string, id: number, formula: string | undefined): string => {
  const tag = `<tableColumn id="${id}" name="${headerText(header)}"`;
  return formula === undefined
    ? `${tag}/>`
    : `${tag}><calculatedColumnFormula>${elementText(formula)}</calculatedColumnFormula></tableColumn>`;
};
