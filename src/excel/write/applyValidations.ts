import { HEADER_ROW, lastRow } from "../../look/tableLayout";
import { type Validation, validationOf, validationTitle } from "../../look/validation";
import type { Column } from "../../records/kind";
import { a1 } from "../../sheets/cells/address";
import type { PlannedSheet } from "../../sheets/plan/plannedSheet";
import { OBJECT_BYTES, type Step, sentBytes } from "./chunks";

/** What stands on an entry column: its rule, what it says, and how it asks. */
interface ColumnValidation {
  readonly rule: Excel.DataValidationRule;
  readonly errorAlert: Excel.DataValidationErrorAlert;
  readonly prompt?: Excel.DataValidationPrompt;
}

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

/** The validation of a column in Excel's words; undefined where anything is accepted. */
function columnValidation(
  column: Column,
  first: string,
  instruments: string,
): ColumnValidation | undefined {
  const validation = validationOf(column, first, instruments);
  if (!validation) return undefined;
  const { header, help } = column;
  const title = validationTitle(header);
  return {
    rule: rule(validation),
    errorAlert: { message: validation.message, showAlert: true, style: "Warning", title },
    ...(help ? { prompt: { message: help, showPrompt: true, title } } : {}),
  };
}

function rule(validation: Validation): Excel.DataValidationRule {
  switch (validation.type) {
    case "number":
      return {
        decimal: { formula1: validation.least, formula2: validation.most, operator: "Between" },
      };
    case "custom":
      return { custom: { formula: `=${validation.formula}` } };
    case "date":
      return {
        date: { formula1: validation.first, formula2: validation.last, operator: "Between" },
      };
    case "values":
      return { list: { inCellDropDown: true, source: validation.values.join(",") } };
    case "range":
      return { list: { inCellDropDown: true, source: `=${validation.range}` } };
  }
}
