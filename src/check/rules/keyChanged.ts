import { isBlank, keyIds, type Row } from "../../records/kind";
import { type JudgedTable, overColumns, type Rule, shown, where } from "../context";
import type { Finding } from "../finding";

/** A row whose name was changed in one cell from that of a row which the lineup needs and the table lacks. */
export const keyChanged: Rule = {
  id: "key-changed",
  title: "A row renamed",
  finds:
    "a row that is none of the lineup's and has all but one key cell of a row that is missing; a row with readings and no name",
  why: "The reading stands under another name than the one it was taken for, and the test it belongs to looks missing.",
  satisfies: "the name restored",
  quiet: "for rows added by the project, where no row of the lineup is missing that they resemble",
  reads: "table",
  find: (table) => {
    const ids = keyIds(table.kind);
    if (ids.some((id) => !table.at.has(id))) return [];
    const present = new Set(table.keys);
    const missing = [...table.given].filter(([key]) => !present.has(key)).map(([, row]) => row);
    const keys = table.kind.columns.filter(({ role }) => role === "key");
    return table.rows.flatMap((stored, row): Finding[] => {
      if (table.given.has(table.keys[row] ?? "")) return [];
      if (keys.every(({ id }) => isBlank(stored[id]))) return nameless(table, row, stored);
      const alike = missing.length === 0 ? undefined : closest(missing, stored, ids);
      if (!alike) return [];
      return (
        overColumns(keys, ({ id, header }) =>
          same(alike[id], stored[id])
            ? undefined
            : {
                rule: "key-changed",
                weight: "stop",
                ...where(table, row, id),
                message: `${table.keys[row]}: the lineup has no such row, and the workbook lacks the one whose "${header}" is ${shown(alike[id])}; restore the name.`,
                found: shown(stored[id]),
                expected: shown(alike[id]),
              },
        ) ?? []
      );
    });
  },
};

const same = (one: Row[string] | undefined, other: Row[string] | undefined) =>
  String(one ?? "").trim() === String(other ?? "").trim();

/** The missing row that differs from a stored one in a single key cell. */
const closest = (missing: readonly Row[], stored: Row, ids: readonly string[]) =>
  missing.find((row) => ids.filter((id) => !same(row[id], stored[id])).length === 1);

function nameless(table: JudgedTable, row: number, stored: Row): Finding[] {
  const readings = table.kind.columns.filter(({ need }) => need === "reading");
  const first = keyIds(table.kind)[0] ?? "";
  return readings.some(({ id }) => !isBlank(stored[id]))
    ? [
        {
          rule: "key-changed",
          weight: "stop",
          ...where(table, row, first),
          message: "A row with readings has no name; restore it.",
        },
      ]
    : [];
}
