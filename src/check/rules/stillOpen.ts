import { isLeftOut } from "../../records/rowsOf";
import { everyKind, type JudgedTable, type Rule, where } from "../context";

/** At hand-over, tests of which nothing is recorded: one finding for each panel and record. */
export const stillOpen: Rule = {
  id: "still-open",
  reads: "book",
  of: everyKind,
  find: ({ lineup, openRows, tables, text }) =>
    openRows !== "gathered"
      ? []
      : tables
          .filter(({ kind }) => !isLeftOut(lineup, kind))
          .flatMap((table) =>
            byObject(table).map(([object, { open, all }]) => ({
              rule: "still-open",
              weight: "stop" as const,
              ...where(table, open[0] ?? 0, "result"),
              message: text.rules["still-open"].message(object, table.kind.sheet, open.length, all),
            })),
          ),
};

/** By panel or section with any, its open rows, and how many it has in all. */
const byObject = ({ rows, open, aside }: JudgedTable) => {
  const found = new Map<string, { readonly open: number[]; all: number }>();
  for (const [at, row] of rows.entries()) {
    if (aside.has(at)) continue;
    const object = String(row.object ?? "");
    const group = found.get(object) ?? { open: [], all: 0 };
    group.all += 1;
    if (open.has(at)) group.open.push(at);
    found.set(object, group);
  }
  return [...found].filter(([, group]) => group.open.length > 0);
};
