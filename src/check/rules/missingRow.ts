import { keyIds, type Row, rowKey } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { rowsOf } from "../../records/rowsOf";
import { a1 } from "../../sheets/address";
import type { Rule } from "../context";
import type { Finding } from "../finding";

/** A test that the lineup needs and the workbook lacks: a whole table, or a row of it. */
export const missingRow: Rule = {
  id: "missing-row",
  title: "A test missing",
  finds:
    "a row or a whole table that the lineup needs and the workbook lacks; of mapped blocks once for each part of a panel",
  why: "A test without a row is missed by everybody who reads the sheet.",
  satisfies: "the lineup built onto the workbook again, or the line in a mapped block",
  quiet: "for record kinds that the project leaves out",
  reads: "book",
  of: "every kind",
  find: (context) =>
    KINDS.flatMap((kind): Finding[] => {
      const tables = context.tables.filter((table) => table.kind === kind);
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
            message: `The workbook has no table for "${kind.title}"; build the lineup onto it again, or map the block that holds these records.`,
          }));
      const ids = keyIds(kind);
      // Without a key column rows cannot be told apart; the missing column is said by its own rule.
      if (tables.some(({ at }) => ids.some((id) => !at.has(id)))) return [];
      const present = new Set(tables.flatMap(({ keys }) => keys));
      const lacking = [...first.given].filter(([key]) => !present.has(key));
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
          message: `${key}: the lineup needs this row and the table lacks it; build the lineup onto the workbook again.`,
        }));
      const [object = "object", ...others] = ids;
      const [part, ...rest] = others;
      return groupsBy(lacking, ([, row]) => rowKey(row, part ? [object, part] : [object])).map(
        ([name, group]) => ({
          ...at,
          panel: String(group[0]?.[1].object),
          row: name,
          message: `${name}: the lineup needs ${needed(group, rest)} and no line of the mapped blocks is ${group.length === 1 ? "it" : "one of them"}; put it there, or map the block that holds it.`,
        }),
      );
    }),
};

/** Records that a finding names one by one. */
const NAMED = 6;

const needed = (group: readonly (readonly [string, Row])[], ids: readonly string[]): string => {
  const named = group.slice(0, NAMED).map(([, row]) => rowKey(row, ids));
  const more = group.length - named.length;
  return ids.length === 0
    ? "this record"
    : `${group.length === 1 ? "the record" : `${group.length} records:`} ${named.join(", ")}${more > 0 ? ` and ${more} more` : ""},`;
};

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
