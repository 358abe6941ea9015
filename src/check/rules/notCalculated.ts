import { everyKind, type Rule, whereTable } from "../context";

/** Tables named one by one; there are no more record kinds than this. */
const NAMED = 30;

/** Tables whose formulas stand without their values: what was stored cannot be compared with what is computed. */
export const notCalculated: Rule = {
  id: "not-calculated",
  reads: "book",
  of: everyKind,
  find: ({ tables, text }) => {
    const bare = tables.filter(({ calculated }) => !calculated);
    const [first] = bare;
    if (!first) return [];
    const names = bare.slice(0, NAMED).map(({ table }) => table.name);
    const { sheet, address } = whereTable(first);
    return [
      {
        rule: "not-calculated",
        weight: "query",
        sheet,
        address,
        message: text.rules["not-calculated"].message(names, bare.length - names.length),
      },
    ];
  },
};
