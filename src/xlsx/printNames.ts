import { escaped, unescaped } from "../memory/memory";

const PRINT_NAME =
  /(<definedName\b(?=[^>]*\bname="_xlnm\.Print_(?:Area|Titles)")[^>]*\blocalSheetId="(\d+)"[^>]*>)([^<]*)/g;

/**
 * The print areas and titles of a workbook part with their sheet's name in apostrophes before each area,
 * as formulas name a sheet (ECMA-376 Part 1, 18.17.2.2: a name with a blank, say, stands in apostrophes),
 * and columns before rows. The file library writes the bare name, and before the first area alone.
 *
 * @param xml of `xl/workbook.xml`
 * @example withPrintNames(xml) // …>'Control wiring'!$A$1:$V$49<…
 */
export function withPrintNames(xml: string): string {
  const names = Array.from(xml.matchAll(/<sheet\b[^>]*?\bname="([^"]*)"/g), ([, name = ""]) =>
    unescaped(name),
  );
  return xml.replace(PRINT_NAME, (whole, tag: string, at: string, text: string) => {
    const name = names[Number(at)];
    if (name === undefined) return whole;
    const quoted = `'${name.replaceAll("'", "''")}'!`;
    const areas = unescaped(text)
      .replaceAll(quoted, "")
      .replaceAll(`${name}!`, "")
      .split(",")
      // Of a sheet's name with a comma the library reads a piece as an area.
      .filter((area) => AREA.test(area))
      .sort((one, other) => Number(isRows(one)) - Number(isRows(other)));
    return `${tag}${escaped(areas.map((area) => `${quoted}${area}`).join(","))}`;
  });
}

const AREA = /^\$?[A-Z]*\$?\d*(?::\$?[A-Z]*\$?\d*)?$/i;
const isRows = (area: string): boolean => /^\$?\d+:\$?\d+$/.test(area);
