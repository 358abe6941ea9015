import { keyIds, type Row, rowKey } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { kindWords } from "../../records/kindWords";
import { rowsOf } from "../../records/rowsOf";
import { a1 } from "../../sheets/cells/address";
import { everyKind, type Rule } from "../context";
import type { Finding } from "../findings/finding";
import { keysIn, lackingIn } from "../keysIn";
import { renamedIn } from "./keyChanged";

/** A test that the lineup needs and the workbook lacks: a whole table, or a row of it. */
export const missingRow: Rule = {
  id: "missing-row",
  reads: "book",
  of: everyKind,
  find: (context) => {
    const text = context.text.rules["missing-row"];
    return KINDS.flatMap((kind): Finding[] => {
      const tables = context.tables.filter((table) => table.kind.id === kind.id);
      const first = tables[0];
      if (!first)
        return rowsOf(kind, context.lineup)
          .slice(0, 1)
          .map(() => ({
            rule: "missing-row",
            weight: "stop",
            record: kind.id,
            sheet: kind.sheet,
            address: "A1",
            message: text.noTable(kindWords(context.text, kind.id).title),
          }));
      const ids = keyIds(kind);
      // Without a key column rows cannot be told apart; the missing column is said by its own rule.
      if (tables.some(({ at }) => ids.some((id) => !at.has(id)))) return [];
      const others = tables.slice(1).map(keysIn);
      // Of a row that stands there under another name another rule tells.
      const renamed = new Set(tables.flatMap((table) => [...renamedIn(table).values()]));
      const lacking = lackingIn(first).filter(
        ([key, row]) => !others.some((keys) => keys.has(key)) && !renamed.has(row),
      );
      const at = {
        rule: "missing-row",
        weight: "stop" as const,
        record: kind.id,
        sheet: first.table.sheet,
        address: a1(first.table.top, first.table.left),
      };
      if (!first.table.ownLayout)
        return lacking.map(([key, row]) => ({
          ...at,
          panel: String(row.object),
          row: key,
          message: text.noRow(key),
        }));
      const [object = "object", part, ...rest] = ids;
      return groupsBy(lacking, ([, row]) => rowKey(row, part ? [object, part] : [object])).map(
        ([name, group]) => ({
          ...at,
          panel: String(group[0]?.[1].object),
          row: name,
          message: text.noLine(name, namedIn(group, rest), group.length),
        }),
      );
    });
  },
};

/** Records that a finding names one by one. */
const NAMED = 6;

/** The first of some records, by what their part does not say of them. */
const namedIn = (group: readonly (readonly [string, Row])[], ids: readonly string[]): string[] =>
  ids.length === 0 ? [] : group.slice(0, NAMED).map(([, row]) => rowKey(row, ids));

const groupsBy = <T>(items: readonly T[], nameOf: (item: T) => string): [string, T[]][] => {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const name = nameOf(item);
    const group = groups.get(name);
    if (group) group.push(item);
    else groups.set(name, [item]);
  }
  return [...groups];
};
