import type { Column } from "../records/kind";
import { a1 } from "../sheets/address";
import type { PlannedSheet } from "../sheets/plannedSheet";
import { OBJECT_BYTES, type Step, sentBytes } from "./excelChunks";
import { HEADER_ROW, lastRow } from "./excelLook";

/** What stands on an entry column: its rule, what it says, and how it asks. */
interface ColumnValidation {
  readonly rule: Excel.DataValidationRule;
  readonly errorAlert: Excel.DataValidationErrorAlert;
  readonly prompt?: Excel.DataValidationPrompt;
}

/** Excel shows so many characters of a validation's title. */
const TITLE_LENGTH = 32;

/** Puts validations on the entry columns of a sheet of the plan. */
export function validationSteps(
  sheet: () => Excel.Worksheet,
  { columns }: PlannedSheet,
  rows: number,
  instruments: string,
): Step[] {
  return columns.flatMap((column, at): Step[] => {
    const first = a1(HEADER_ROW + 1, at);
    const validation = columnValidation(column, first, instruments);
    if (!validation) return [];
    return [
      {
        bytes: sentBytes(validation) + 2 * OBJECT_BYTES,
        queue: () => {
          const set = sheet()
            .getRange(`${first}:${a1(lastRow(rows), at)}`)
            .untrack().dataValidation;
          set.rule = validation.rule;
          set.errorAlert = validation.errorAlert;
          if (validation.prompt) set.prompt = validation.prompt;
        },
      },
    ];
  });
}

/**
 * What an entry column accepts. It warns; nothing written is refused.
 *
 * @param first address of the column's first cell
 * @param instruments name of the sheet that lists the instruments
 */
function columnValidation(
  { accepts, header, help, id }: Column,
  first: string,
  instruments: string,
): ColumnValidation | undefined {
  if (!accepts) return undefined;
  const title = header.slice(0, TITLE_LENGTH);
  const of = (rule: Excel.DataValidationRule, message: string): ColumnValidation => ({
    rule,
    errorAlert: { message, showAlert: true, style: "Warning", title },
    ...(help ? { prompt: { message: help, showPrompt: true, title } } : {}),
  });
  switch (accepts.type) {
    case "number":
      return of(
        {
          decimal: {
            formula1: accepts.least ?? -1e9,
            formula2: accepts.most ?? 1e9,
            operator: "Between",
          },
        },
        `A number from ${accepts.least ?? "any"} to ${accepts.most ?? "any"} is expected here.`,
      );
    case "reading":
      return of(
        { custom: { formula: `=OR(ISTEXT(${first}),AND(ISNUMBER(${first}),${first}>=0))` } },
        'A number of at least 0, or a reading as written with its unit ("> 2 TΩ").',
      );
    case "date":
      return of(
        { date: { formula1: "2000-01-01", formula2: "2099-12-31", operator: "Between" } },
        "A date is expected here, as 2026-11-25.",
      );
    case "list":
      return of(
        { list: { inCellDropDown: true, source: accepts.values.join(",") } },
        `One of: ${accepts.values.join(", ")}.`,
      );
    case "text":
      return id === "instrument"
        ? of(
            {
              list: {
                inCellDropDown: true,
                source: `='${instruments.replaceAll("'", "''")}'!$A$5:$A$204`,
              },
            },
            "This Id is not in the table of instruments.",
          )
        : undefined;
  }
}
