import { memoizeFor } from "../../quantities/memoizeFor";
import { lookAlikes } from "../../quantities/reading/lookAlikes";
import { isBlank, keyIds, type Row } from "../../records/kind";
import { type JudgedTable, overColumns, type Rule, said, shown, where } from "../context";
import type { Finding } from "../findings/finding";
import { keysIn, lackingIn } from "../keysIn";

/** A row whose name was changed in one cell from that of a row which the lineup needs and the table lacks. */
export const keyChanged: Rule = {
  id: "key-changed",
  reach: "table",
  reads: "table",
  find: (table, { text }) => {
    const { renamed, nameless: says } = text.rules["key-changed"];
    const ids = keyIds(table.kind);
    if (ids.some((id) => !table.at.has(id))) return [];
    if (lackingIn(table).length === 0 && keysIn(table).size === table.given.size) return [];
    const meant = renamedIn(table);
    const keys = table.kind.columns.filter(({ role }) => role === "key");
    return table.rows.flatMap((stored, row): Finding[] => {
      if (table.given.has(table.keys[row] ?? "")) return [];
      if (keys.every(({ id }) => isBlank(stored[id]))) return nameless(table, row, stored, says);
      const alike = meant.get(row);
      if (!alike) return [];
      return (
        overColumns(keys, ({ id, header }) =>
          same(alike[id], stored[id])
            ? undefined
            : {
                rule: "key-changed",
                weight: "stop",
                ...where(table, row, id),
                message: renamed(
                  table.keys[row] ?? "",
                  header,
                  shown(alike[id], text),
                  lookAlikes(String(stored[id] ?? ""), String(alike[id] ?? "")),
                ),
                found: said(stored[id]),
                expected: shown(alike[id], text),
              },
        ) ?? []
      );
    });
  },
};

/** The rows whose name was changed, each with the row of the lineup that it is. */
export const renamedIn = memoizeFor((table: JudgedTable): ReadonlyMap<number, Row> => {
  const ids = keyIds(table.kind);
  const missing = lackingIn(table).map(([, row]) => row);
  if (missing.length === 0) return new Map();
  return new Map(
    table.rows.flatMap((stored, row): [number, Row][] => {
      const isNamed = ids.some((id) => !isBlank(stored[id]));
      const alike =
        isNamed && !table.given.has(table.keys[row] ?? "")
          ? closest(missing, stored, ids)
          : undefined;
      return alike ? [[row, alike]] : [];
    }),
  );
});

const same = (one: Row[string] | undefined, other: Row[string] | undefined) =>
  String(one ?? "").trim() === String(other ?? "").trim();

/** The missing row that differs from a stored one in a single key cell. */
const closest = (missing: readonly Row[], stored: Row, ids: readonly string[]) =>
  missing.find((row) => ids.filter((id) => !same(row[id], stored[id])).length === 1);

function nameless(table: JudgedTable, row: number, stored: Row, message: string): Finding[] {
  const readings = table.kind.columns.filter(({ need }) => need === "reading");
  const first = keyIds(table.kind)[0] ?? "";
  return readings.some(({ id }) => !isBlank(stored[id]))
    ? [
        {
          rule: "key-changed",
          weight: "stop",
          ...where(table, row, first),
          message,
        },
      ]
    : [];
}
