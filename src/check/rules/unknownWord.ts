import { type CellValue, type Column, isBlank } from "../../records/kind";
import { amongEntries } from "../among/amongRows";
import { overColumns, overRows, type Rule, rowName, where } from "../context";
import { isErrorValue } from "../errorValue";
import type { Finding } from "../findings/finding";
import { oncePerEntry } from "../findings/oncePerEntry";

/** A word that is none of those that its column is answered by. */
export const unknownWord: Rule = {
  id: "unknown-word",
  reads: "table",
  find: (table, { text }) => {
    const lists = table.kind.columns.filter(
      ({ role, accepts }) => role === "entry" && accepts?.type === "list",
    );
    const found = overRows(
      table,
      (row, stored) =>
        overColumns(lists, ({ id, header, accepts }): Finding | undefined => {
          const cell = stored[id] ?? null;
          return accepts?.type !== "list" || !isUnknown(cell, { accepts })
            ? undefined
            : {
                rule: "unknown-word",
                weight: "query",
                ...where(table, row, id),
                message: text.rules["unknown-word"].message(
                  rowName(table, row),
                  header,
                  String(cell).slice(0, 40),
                  accepts.values,
                ),
                found: String(cell).slice(0, 80),
                expected: accepts.values.join(" / "),
              };
        }),
      amongEntries(table, lists, isUnknown),
    );
    return oncePerEntry(
      found.map(({ finding }) => finding),
      text,
    );
  },
};

/** Whether a word is none of its column's; a spreadsheet compares text without regard to case. */
const isUnknown = (cell: CellValue, { accepts }: Pick<Column, "accepts">): boolean => {
  if (isBlank(cell) || accepts?.type !== "list" || isErrorValue(cell)) return false;
  const word = String(cell).toLowerCase();
  return !accepts.values.some((value) => value.toLowerCase() === word);
};
