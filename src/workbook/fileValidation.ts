import type { DataValidation } from "hucre/xlsx";
import type { Column } from "../records/kind";
import { HEADER_ROW } from "./layout";

/** What an entry column accepts, as a validation on its range. It warns; nothing written is refused. */
export function validation(column: Column, range: string, first: string): DataValidation[] {
  const { accepts, header, help } = column;
  if (!accepts) return [];
  const common = {
    range,
    allowBlank: true,
    showErrorMessage: true,
    errorStyle: "warning" as const,
    errorTitle: header,
    ...(help ? { showInputMessage: true, inputTitle: header, inputMessage: help } : {}),
  };
  switch (accepts.type) {
    case "number":
      return [
        {
          ...common,
          type: "decimal",
          operator: "between",
          formula1: String(accepts.least ?? -1e9),
          formula2: String(accepts.most ?? 1e9),
          errorMessage: `A number from ${accepts.least ?? "any"} to ${accepts.most ?? "any"} is expected here.`,
        },
      ];
    case "reading":
      return [
        {
          ...common,
          type: "custom",
          formula1: `OR(ISTEXT(${first}),AND(ISNUMBER(${first}),${first}>=0))`,
          errorMessage: 'A number of at least 0, or a reading as written with its unit ("> 2 TΩ").',
        },
      ];
    case "date":
      return [
        {
          ...common,
          type: "date",
          operator: "between",
          formula1: "36526",
          formula2: "73050",
          errorMessage: "A date is expected here, as 2026-11-25.",
        },
      ];
    case "list":
      return [
        {
          ...common,
          type: "list",
          values: [...accepts.values],
          errorMessage: `One of: ${accepts.values.join(", ")}.`,
        },
      ];
    case "text":
      return column.id === "instrument"
        ? [
            {
              ...common,
              type: "list",
              formula1: `Instruments!$A$${HEADER_ROW + 2}:$A$${HEADER_ROW + 201}`,
              errorMessage: "This Id is not in the table of instruments.",
            },
          ]
        : [];
  }
}
