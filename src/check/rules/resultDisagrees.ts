import { type CellValue, isBlank } from "../../records/kind";
import { headerOf, overRows, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../finding";

/** A stored result, or a stored intermediate value, that differs from the one computed from the row's entries. */
export const resultDisagrees: Rule = {
  id: "result-disagrees",
  find: (context) => {
    const columns = new Map(
      context.tables.map((table) => [
        table,
        table.kind.columns.filter(
          ({ role, id }) => (role === "computed" || role === "result") && table.at.has(id),
        ),
      ]),
    );
    return overRows(context, (table, row, stored, judged) =>
      (columns.get(table) ?? []).flatMap(({ id }): Finding[] =>
        agrees(stored[id] ?? null, judged[id] ?? null)
          ? []
          : [
              {
                rule: "result-disagrees",
                weight: "stop",
                ...where(table, row, id),
                message: `${rowName(table, row)}: "${headerOf(table, id)}" says ${shown(stored[id])}; from the row's own entries it is ${shown(judged[id])}.`,
                found: shown(stored[id]),
                expected: shown(judged[id]),
              },
            ],
      ),
    );
  },
};

const shown = (cell: CellValue | undefined) => (isBlank(cell) ? "blank" : said(cell));

/** Equal to nine digits, as text, or both blank. */
export const agrees = (one: CellValue, other: CellValue): boolean =>
  typeof one === "number" && typeof other === "number"
    ? one === other || Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other))
    : isBlank(one)
      ? isBlank(other)
      : one === other;
