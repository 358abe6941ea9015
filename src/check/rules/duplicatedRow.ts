import { keyIds } from "../../records/kind";
import type { Rule } from "../context";
import { where } from "../context";
import type { Finding } from "../findings/finding";
import { keysIn } from "../keysIn";

/** Two rows of one name: which of them counts? */
export const duplicatedRow: Rule = {
  id: "duplicated-row",
  reads: "table",
  find: (table, { text }) => {
    if (keysIn(table).size === table.keys.length) return [];
    const first = keyIds(table.kind)[0] ?? "";
    const seen = new Map<string, number>();
    const { furtherBy = [] } = table.kind;
    return table.keys.flatMap((key, row): Finding[] => {
      if (table.aside.has(row)) return [];
      const further = furtherBy.map((id) => table.rows[row]?.[id]);
      const name = further.length === 0 ? key : [key, ...further].join("\u0000");
      const earlier = seen.get(name);
      if (earlier === undefined) {
        seen.set(name, row);
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
