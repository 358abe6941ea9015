import { readUnit } from "../../quantities/reading/readUnit";
import type { TextRow } from "./delimited";

/** The cells of a row that are not blank. */
export const filledOf = (cells: readonly string[]) => cells.filter((cell) => cell !== "");

/** How many these are. */
export const countFilled = (cells: readonly string[]): number => {
  let filled = 0;
  for (let at = 0; at < cells.length; at++) if (cells[at] !== "") filled += 1;
  return filled;
};

/** A row of readings with what is written for it in cells that reach down from rows above. */
export const wholeRow = (row: TextRow): TextRow => {
  const { joined } = row;
  return joined
    ? {
        line: row.line,
        cells: row.cells.map((cell, at) => (cell === "" ? (joined.get(at) ?? "") : cell)),
      }
    : row;
};

/** The name of a device that begins with its function's number, as `52-M1` does, and no day such as `17-Mar-2026`. */
export const isDesignation = (text: string): boolean =>
  /^\d{1,3}[-–/](?:\p{Lu}{1,2}(?!\p{L})|\p{Lu}{3}\d)/u.test(text);

/** The terminals of a core: `2S1-2S2`, `1a-1n`. */
export const areTerminals = (text: string): boolean =>
  /^\d{1,2}\p{L}\d{0,2}[-–/]\d{1,2}\p{L}\d{0,2}$/u.test(text);

/** Words after the number of a function, and no day or unit: `51 pick-up (A)`, `50P time at 2x`. */
const isNumbered = (text: string): boolean => {
  const [, word = ""] = /^\d{2}[A-Z]{0,2}\s+(\p{L}[\p{L}-]{2,})(?:\s|$)/u.exec(text) ?? [];
  return word !== "" && !/\d{4}/.test(text) && !readUnit(word).ok;
};

/** A multiple of a pick-up with words or a time's unit after it, its element before it or not: `2x PU s`, `5 × I> (s)`, `51 10x (ms)`. */
export const isMultiple = (text: string): boolean =>
  /^(?:\d{2}\p{Lu}{0,2}[\s:]{1,2})?\d{1,2}(?:[.,]\d{1,2})?\s?[x×]\s?(?:\p{L}{1,9}|[([]\s?m?s(?:ec)?\s?[)\]])/u.test(
    text,
  );

/** What insulation was read at, and after how long: `1 kV DC 1 min (MΩ)`. */
const AT_STEP = /^\d+(?:[.,]\d)?\s?k?V\s?(?:DC|CC)[\s,;/@]{1,3}\d{1,2}\s?(?:s|sec|min)\b/i;

/** A number or the beginning of one, no time such as the 60 s of a title, and no designation. */
export const isNumberish = (cell: string) => {
  const sign = cell.charCodeAt(0);
  // Of letters, most of what stands in cells, nothing more need be asked.
  if (sign >= 0x41 && sign <= 0x7a) return false;
  return (
    !isNumbered(cell) &&
    /^[-+<>≤≥~]?\s*[.,]?\d/.test(cell) &&
    !/^\d+ ?(?:s|sec|min)\b/i.test(cell) &&
    !isMultiple(cell) &&
    !AT_STEP.test(cell) &&
    !/^\d(?:[.,]\d+)? ?[x×·]? ?U ?[0o₀]/i.test(cell) &&
    !isDesignation(cell)
  );
};
