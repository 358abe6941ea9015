import type { CellValue } from "../../records/kind";
import { cellText, elementText } from "../xml/editText";

/** How texts are written into cells: by the number of a shared one, or undefined for in the cell itself. */
export type TextNumber = (text: string) => number | undefined;

export interface CellContent {
  readonly value: CellValue;
  /** The formula's element as it stands in the file, or the text of a new one. */
  readonly formula?: { readonly xml: string } | { readonly text: string };
}

/** What a formula gives that cannot be computed (ECMA-376 part 1, 18.17.3, and those of later versions). */
const ERROR =
  /^#(?:NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|GETTING_DATA|SPILL!|CALC!|FIELD!|BLOCKED!|UNKNOWN!)$/;

/**
 * A cell as a file writes it.
 *
 * @param p prefix of the sheet's elements, with its colon
 * @param attributes those that it shall have besides what its value asks for: address, style
 */
export function cellXml(
  p: string,
  attributes: string,
  { value, formula }: CellContent,
  number: TextNumber,
): string {
  if (formula === undefined) return plainXml(p, attributes, value, number);
  const f = "xml" in formula ? formula.xml : `<${p}f>${elementText(formula.text)}</${p}f>`;
  const [type, text] = resultOf(value);
  return `<${p}c${attributes}${type}>${f}<${p}v>${text}</${p}v></${p}c>`;
}

/** What a formula came to; a blank is an empty text, as every formula gives something. */
function resultOf(value: CellValue): [type: string, text: string] {
  switch (typeof value) {
    case "number":
      return ["", String(value)];
    case "boolean":
      return [' t="b"', value ? "1" : "0"];
    case "string":
      return ERROR.test(value) ? [' t="e"', value] : [' t="str"', cellText(value)];
    default:
      return [' t="str"', ""];
  }
}

function plainXml(p: string, attributes: string, value: CellValue, number: TextNumber): string {
  switch (typeof value) {
    case "number":
      return `<${p}c${attributes}><${p}v>${value}</${p}v></${p}c>`;
    case "boolean":
      return `<${p}c${attributes} t="b"><${p}v>${value ? 1 : 0}</${p}v></${p}c>`;
    case "string": {
      const shared = number(value);
      return shared === undefined
        ? `<${p}c${attributes} t="inlineStr"><${p}is>${textXml(p, value)}</${p}is></${p}c>`
        : `<${p}c${attributes} t="s"><${p}v>${shared}</${p}v></${p}c>`;
    }
    default:
      return `<${p}c${attributes}/>`;
  }
}

/** A text; blanks at its ends and ends of lines are kept. */
export const textXml = (p: string, text: string): string =>
  `<${p}t${/^\s|\s$|\n/.test(text) ? ' xml:space="preserve"' : ""}>${cellText(text)}</${p}t>`;
