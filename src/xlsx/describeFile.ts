import { openFile } from "./book";
import { typeOf } from "./package/relations";

/**
 * How the name of a workbook file ends by what is in it: Excel opens one of a macro workbook or a template
 * only under its own (ECMA-376 part 1, 15.2.11, and MS-OFFMACRO2, 2.2.1.1; both from memory).
 */
const ENDINGS: readonly (readonly [type: string, ending: string])[] = [
  ["spreadsheetml.sheet.main+xml", ".xlsx"],
  ["spreadsheetml.template.main+xml", ".xltx"],
  ["ms-excel.sheet.macroEnabled.main+xml", ".xlsm"],
  ["ms-excel.template.macroEnabled.main+xml", ".xltm"],
];

/** The ending under which Excel opens a workbook file; undefined where its type is none of a workbook's. */
export function endingOf(file: Uint8Array): string | undefined {
  const { pack, part } = openFile(file);
  const said = typeOf(pack, part) ?? "";
  return ENDINGS.find(([type]) => said.endsWith(type))?.[1];
}

/** Whether a workbook file carries a digital signature (ECMA-376 part 2, 10: the part names are from memory). */
export const isSigned = (file: Uint8Array): boolean =>
  openFile(file).pack.names.some((name) => name.startsWith("_xmlsignatures/"));
