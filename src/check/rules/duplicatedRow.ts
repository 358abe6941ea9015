import { keyIds } from "../../records/kind";
import type { Rule } from "../context";
import { where } from "../context";
import type { Finding } from "../finding";

/** Two rows of one name: which of them counts? */
export const duplicatedRow: Rule = {
  id: "duplicated-row",
  find: (context) =>
    context.tables.flatMap((table) => {
      const first = keyIds(table.kind)[0] ?? "";
      const seen = new Map<string, number>();
      return table.keys.flatMap((key, row): Finding[] => {
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
            message: `${key}: the row stands twice (also at ${where(table, earlier, first).address}); keep the one that counts.`,
          },
        ];
      });
    }),
};
