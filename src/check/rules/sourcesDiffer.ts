import type { Column } from "../../records/kind";
import { SOURCES } from "../../records/limits";
import { amongDifferences, differences } from "../compare/differences";
import { everyKind, overRows, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";

const isSources = ({ id }: Column) => id === SOURCES;

/**
 * Sources of limits that a workbook words in another way than they are worded now, as one does that was built
 * earlier: one finding, at the first such row. The limits themselves are compared by a rule of their own.
 */
export const sourcesDiffer: Rule = {
  id: "sources-differ",
  reads: "book",
  of: everyKind,
  find: ({ tables, text }) => {
    const says = text.rules["sources-differ"];
    const found = tables.flatMap((table) =>
      overRows(
        table,
        differences(table, isSources, (row, { id }, stored, wanted) => ({
          rule: "sources-differ",
          weight: "note",
          ...where(table, row, id),
          message: rowName(table, row),
          found: said(stored),
          expected: said(wanted),
        })),
        amongDifferences(table, isSources),
      ).map(({ finding }): Finding => finding),
    );
    const [first] = found;
    return first ? [{ ...first, message: says.message(first.message, found.length - 1) }] : [];
  },
};
