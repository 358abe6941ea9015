import { keyIds } from "../../records/kind";
import type { Rule } from "../context";
import { where } from "../context";
import type { Finding } from "../finding";

/** Two rows of one name: which of them counts? */
export const duplicatedRow: Rule = {
  id: "duplicated-row",
  reads: "table",
  find: (table, { text }) => {
    const first = keyIds(table.kind)[0] ?? "";
    const seen = new Map<string, number>();
    return table.keys.flatMap((key, row): Finding[] => {
      if (table.aside.has(row)) return [];
      const earlier = seen.get(key);
      if (earlier === undefined) {
        seen.set(key, row);
        return [];
      }
      return [
        {
          rule: "duplicated-row",
          weight: "query",
          ...where(table, row, first),
          message: text.rules["duplicated-row"].message(key, where(table, earlier, first).address),
        },
      ];
    });
  },
};
