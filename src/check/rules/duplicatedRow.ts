import { keyIds } from "../../records/kind";
import type { Rule } from "../context";
import { where } from "../context";
import type { Finding } from "../finding";

/** Two rows of one name: which of them counts? */
export const duplicatedRow: Rule = {
  id: "duplicated-row",
  title: "A row stands twice",
  finds: "two rows of one table with the same name",
  why: "Of two readings of one test nobody can say which counts; the worse one disappears easily.",
  satisfies: "one row kept, the other removed or named for what it is",
  quiet: "never: two rows of one name are always asked about",
  reads: "table",
  find: (table) => {
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
          message: `${key}: the row stands twice (also at ${where(table, earlier, first).address}); keep the one that counts.`,
        },
      ];
    });
  },
};
