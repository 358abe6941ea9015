import type { Column } from "../records/kind";
import { EXCEL_LIMITS } from "../sheets/plan/excelLimits";
import { HEADER_ROW, INSTRUMENT_ROWS } from "./tableLayout";

/** What an entry column accepts, before it is put into the words of a file or of Excel. */
export type Validation = (
  | { readonly type: "number"; readonly least: number; readonly most: number }
  | { readonly type: "custom"; readonly formula: string }
  | { readonly type: "date"; readonly first: string; readonly last: string }
  | { readonly type: "values"; readonly values: readonly string[] }
  | { readonly type: "range"; readonly range: string }
) & { readonly message: string };

/** The title of a validation's messages: the column's header, as far as Excel takes it. */
export const validationTitle = (header: string): string =>
  header.slice(0, EXCEL_LIMITS.promptTitle.most);

const LEAST = -1e9;
const MOST = 1e9;

/**
 * The validation of an entry column; undefined where anything is accepted. It warns; nothing written is
 * refused.
 *
 * @param first address of the column's first cell
 * @param instruments name of the sheet that lists the instruments
 */
export function validationOf(
  { accepts, id, role }: Column,
  first: string,
  instruments: string,
): Validation | undefined {
  if (role !== "entry") return undefined;
  switch (accepts?.type) {
    case "number": {
      const { least = LEAST, most = MOST } = accepts;
      return {
        type: "number",
        least,
        most,
        message: `A number from ${least} to ${most} is expected here.`,
      };
    }
    case "reading":
      return {
        type: "custom",
        formula: `OR(ISTEXT(${first}),AND(ISNUMBER(${first}),${first}>=0))`,
        message: 'A number of at least 0, or a reading as written with its unit ("> 2 TΩ").',
      };
    case "date":
      return {
        type: "date",
        first: "2000-01-01",
        last: "2099-12-31",
        message: "A date is expected here, as 2026-11-25.",
      };
    case "list": {
      const named = `One of: ${accepts.values.join(", ")}.`;
      return {
        type: "values",
        values: accepts.values,
        message:
          named.length > EXCEL_LIMITS.errorMessage.most ? "One of the words of the list." : named,
      };
    }
    case "text":
      return id === "instrument"
        ? {
            type: "range",
            range: `'${instruments.replaceAll("'", "''")}'!$A$${HEADER_ROW + 2}:$A$${HEADER_ROW + 1 + INSTRUMENT_ROWS}`,
            message:
              "This Id is not in the table of instruments. Several stand with semicolons between them.",
          }
        : undefined;
    case undefined:
      return undefined;
  }
}
