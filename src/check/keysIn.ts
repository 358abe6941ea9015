import { memoizeFor } from "../quantities/memoizeFor";
import type { JudgedTable } from "./context";

/** The names of a table's rows; as many as it has rows, where no two are of one name. */
export const keysIn = memoizeFor(({ keys }: JudgedTable): ReadonlySet<string> => new Set(keys));

/** The rows that the lineup needs and a table lacks, with their names. */
export const lackingIn = memoizeFor((table: JudgedTable) => {
  const present = keysIn(table);
  return [...table.given].filter(([key]) => !present.has(key));
});
