import type { DataValidation } from "hucre/xlsx";
import { type Validation, validationOf, validationTitle } from "../look/validation";
import { daySerial } from "../quantities/dates";
import type { Column } from "../records/kind";
import { INSTRUMENT_SHEET } from "../sheets/ours/instrumentSheet";

/** The validation of a column's range in the words of the file library; none where anything is accepted. */
export function fileValidation(column: Column, range: string, first: string): DataValidation[] {
  const { header, help } = column;
  const validation = validationOf(column, first, INSTRUMENT_SHEET);
  if (!validation) return [];
  return [
    {
      ...rule(validation),
      range,
      allowBlank: true,
      showErrorMessage: true,
      errorStyle: "warning",
      errorTitle: validationTitle(header),
      errorMessage: validation.message,
      ...(help
        ? { showInputMessage: true, inputTitle: validationTitle(header), inputMessage: help }
        : {}),
    },
  ];
}

function rule(
  validation: Validation,
): Pick<DataValidation, "type" | "operator" | "formula1" | "formula2" | "values"> {
  switch (validation.type) {
    case "number":
      return {
        type: "decimal",
        operator: "between",
        formula1: String(validation.least),
        formula2: String(validation.most),
      };
    case "custom":
      return { type: "custom", formula1: validation.formula };
    case "date":
      return {
        type: "date",
        operator: "between",
        formula1: String(daySerial(validation.first)),
        formula2: String(daySerial(validation.last)),
      };
    case "values":
      return { type: "list", values: [...validation.values] };
    case "range":
      return { type: "list", formula1: validation.range };
  }
}
