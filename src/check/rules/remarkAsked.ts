import { type CellValue, isBlank, verdictOf } from "../../records/kind";
import { amongEntries, columnsNamed } from "../among/amongRows";
import { type JudgedTable, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

/** An item that says what is to stand in its remarks. */
const ASKS = /\bin (?:the )?remarks?\b/i;

/** An item that by its own words asks for a remark, and was answered without one. */
export const remarkAsked: Rule = {
  id: "remark-asked",
  reads: "table",
  find: (table, { text }) =>
    overRows(
      table,
      (row, stored, judged): Finding | undefined =>
        isBlank(stored.remarks) && verdictOf(judged) === "Pass"
          ? {
              rule: "remark-asked",
              weight: "query",
              ...where(table, row, "remarks"),
              message: text.rules["remark-asked"].message(rowName(table, row)),
            }
          : undefined,
      askingIn(table),
    ).map(({ finding }) => finding),
};

const askingIn = (table: JudgedTable): readonly number[] =>
  table.kind.ownItems === "seen to"
    ? amongEntries(table, columnsNamed(table, "part"), (item: CellValue) => ASKS.test(String(item)))
    : [];
