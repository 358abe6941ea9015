import { parseStructRef, toCol, tokenize } from "@borgar/fx/xlsx";
import { a1 } from "../../sheets/cells/address";
import { bodyRows, boxAt, type Sheet, type StandInBook, type Table } from "../book";

const column = (sheet: Sheet, table: Table, header: string): number => {
  for (let at = table.area.left; at <= table.area.right; at++)
    if (String(boxAt(sheet, table.area.top, at)?.value ?? "") === header) return at;
  return -1;
};

/**
 * A formula in the form that the grid's engine reads: structured references become A1 references, since
 * the grid knows no tables.
 *
 * @param formula as the sheet shows it, without the equals sign
 * @param row sheet row that the formula stands in
 */
export function gridFormula(book: StandInBook, sheet: Sheet, row: number, formula: string): string {
  const text = piecesOf(formula).map((piece) =>
    typeof piece === "string" ? piece : (reference(book, sheet, row, piece) ?? "#REF!"),
  );
  return `=${text.join("")}`;
}

type Structured = NonNullable<ReturnType<typeof parseStructRef>>;

/** Formulas cut up before: all rows of a column have the same one. */
const known = new Map<string, readonly (string | Structured)[]>();

/** A formula as its structured references and the text between them. */
function piecesOf(formula: string): readonly (string | Structured)[] {
  const pieces =
    known.get(formula) ??
    tokenize(formula).map(({ type, value }) =>
      type === "structured" ? (parseStructRef(value) ?? "#REF!") : value,
    );
  known.set(formula, pieces);
  return pieces;
}

function reference(
  book: StandInBook,
  sheet: Sheet,
  row: number,
  parsed: Structured,
): string | undefined {
  if (!parsed.columns?.length) return undefined;
  const home = parsed.table
    ? book.sheets
        .flatMap((other) => other.tables.map((table) => ({ sheet: other, table })))
        .find(({ table }) => table.name.toLowerCase() === parsed.table?.toLowerCase())
    : sheet.tables
        .filter(({ area }) => row >= area.top && row <= area.bottom)
        .map((table) => ({ sheet, table }))[0];
  if (!home) return undefined;
  const [at = -1, to = at] = parsed.columns.map((name) => column(home.sheet, home.table, name));
  if (at < 0 || to < at) return undefined;
  const prefix = home.sheet === sheet ? "" : `'${home.sheet.name.replaceAll("'", "''")}'!`;
  if (parsed.sections?.some((section) => /this row/i.test(section)))
    return `${prefix}${a1(row, at)}${to > at ? `:${a1(row, to)}` : ""}`;
  const { first, last } = bodyRows(home.table);
  return `${prefix}$${toCol(at)}$${first + 1}:$${toCol(to)}$${last + 1}`;
}
