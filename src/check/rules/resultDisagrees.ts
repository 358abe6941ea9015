import type { FindingsText } from "../../messages/messages";
import { type CellValue, isBlank } from "../../records/kind";
import { amongRows, cameOtherwise } from "../among/amongRows";
import { earlierIn } from "../compare/earlierBuild";
import { isSameResult } from "../compare/isSameResult";
import {
  isStored,
  type JudgedTable,
  overColumns,
  type Rule,
  rowName,
  shown,
  where,
} from "../context";
import { isErrorValue } from "../errorValue";

/** A stored result, or a stored intermediate value, that differs from the one computed from the row's entries. */
export const resultDisagrees: Rule = {
  id: "result-disagrees",
  reads: "row",
  among: (table) =>
    amongRows(
      table,
      cameOtherwise(table, computedIn(table)),
      (stored, judged) => !isSameResult(stored, judged),
    ),
  rows: (table, context) => {
    const { text } = context;
    const computed = computedIn(table);
    const isEarlier = earlierIn(table, context);
    return (row, stored, judged) =>
      overColumns(computed, ({ id, header, role }) =>
        isSameResult(stored[id], judged[id]) ||
        isErrorValue(stored[id]) ||
        !isStored(table, row, id) ||
        (role !== "result" && isEarlier(row, id))
          ? undefined
          : {
              rule: "result-disagrees",
              weight: "stop",
              ...where(table, row, id),
              message: text.rules["result-disagrees"].message(
                rowName(table, row),
                header,
                apart(stored[id], judged[id], text),
                apart(judged[id], stored[id], text),
              ),
              found: isBlank(stored[id]) ? "" : apart(stored[id], judged[id], text),
              expected: apart(judged[id], stored[id], text),
            },
      );
  },
};

const computedIn = ({ kind, at }: JudgedTable) =>
  kind.columns.filter(({ role, id }) => (role === "computed" || role === "result") && at.has(id));

/** A cell as it is said beside another: in full where the short form is the same for both. */
const apart = (
  cell: CellValue | undefined,
  other: CellValue | undefined,
  text: FindingsText,
): string => (shown(cell, text) === shown(other, text) ? String(cell) : shown(cell, text));
