import { parseStructRef, tokenize } from "@borgar/fx/xlsx";

/** Functions of later versions, which a file stores with a prefix that no user sees. */
const LATER = new Set(
  [
    "AGGREGATE ARRAYTOTEXT BYCOL BYROW CEILING.MATH CHOOSECOLS CHOOSEROWS CONCAT DAYS DROP EXPAND FILTER",
    "FLOOR.MATH FORECAST.LINEAR HSTACK IFNA IFS ISFORMULA ISOWEEKNUM LAMBDA LET MAKEARRAY MAP MAXIFS MINIFS",
    "MODE.SNGL NUMBERVALUE PERCENTILE.EXC PERCENTILE.INC RANDARRAY RANK.EQ REDUCE SCAN SEQUENCE SHEET SHEETS",
    "SORT SORTBY STDEV.P STDEV.S SWITCH TAKE TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL TOROW UNICHAR",
    "UNICODE UNIQUE VAR.P VAR.S VSTACK WRAPCOLS WRAPROWS XLOOKUP XMATCH XOR",
  ].flatMap((line) => line.split(" ")),
);

/**
 * A formula in the form that a file stores, from any form that Excel may show it in: with or without the
 * table's name, `[@Column]` or `[[#This Row],[Column]]`, `GEAR.NAME` or, where the add-in has not loaded
 * yet, `_xldudf_GEAR_NAME`.
 *
 * @param text as shown, with or without the equals sign
 * @param table name of the table that the cell belongs to
 * @example storedFormula('=GEAR.IRMINIMUM([@[Rated kV]],"IEC")', "GearInsulation")
 * // '_xldudf_GEAR_IRMINIMUM(GearInsulation[[#This Row],[Rated kV]],"IEC")'
 */
export const storedFormula = (text: string, table: string): string =>
  tokenize(text)
    .map(({ type, value }) => {
      switch (type) {
        case "fx_prefix":
          return "";
        case "func":
          return storedFunction(value);
        case "structured":
          return storedReference(value, table);
        default:
          return value;
      }
    })
    .join("");

function storedFunction(name: string): string {
  const bare = name.replace(/^_xlfn\.(_xlws\.)?/, "");
  if (/^GEAR\./i.test(bare)) return `_xldudf_GEAR_${bare.slice(5)}`;
  return LATER.has(bare.toUpperCase()) ? `_xlfn.${bare}` : bare;
}

const escaped = (name: string) => `[${name.replace(/[[\]#']/g, "'$&")}]`;

function storedReference(text: string, table: string): string {
  const read = parseStructRef(text);
  if (!read || read.workbookName || read.sheetName) return text;
  const { columns = [], sections = [] } = read;
  const name = read.table || table;
  const parts = [
    ...sections.map(
      (section) => `[#${section.replace(/\b\w/g, (letter) => letter.toUpperCase())}]`,
    ),
    ...(columns.length > 0 ? [columns.map(escaped).join(":")] : []),
  ];
  const single = parts.length === 1 && columns.length < 2;
  return single ? `${name}${parts[0]}` : `${name}[${parts.join(",")}]`;
}

/**
 * A stored formula as it is given to Excel, with its equals sign. References to the row of a table are
 * understood in the form that the file has.
 *
 * @example enteredFormula("_xldudf_GEAR_IRMINIMUM(12)") // "=GEAR.IRMINIMUM(12)"
 */
export const enteredFormula = (stored: string): string =>
  `=${stored.replaceAll("_xldudf_GEAR_", "GEAR.").replaceAll("_xlfn.", "")}`;
