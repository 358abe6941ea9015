import { keyIds } from "../../records/kind";
import { type Rule, where, whereTable } from "../context";
import type { Finding } from "../finding";

/** Rows of a record that a reader of the sheet does not see: hidden, filtered away, or on a hidden sheet. */
export const hiddenRow: Rule = {
  id: "hidden-row",
  title: "Hidden rows",
  finds: "rows of a record that are hidden or filtered away, and record tables on hidden sheets",
  why: "Who reads or prints the sheet takes it for the whole record.",
  satisfies: "the filter cleared, the rows or the sheet shown",
  quiet: "where the program that read the workbook does not tell what is hidden",
  reads: "table",
  find: (table, { snapshot }) => {
    const { hidden, sheet, name } = table.table;
    const first = keyIds(table.kind)[0] ?? "";
    const isOutOfSight = snapshot.sheets.find((one) => one.name === sheet)?.hidden === true;
    const whole: Finding[] = isOutOfSight
      ? [
          {
            rule: "hidden-row",
            weight: "query",
            ...whereTable(table),
            message: `The sheet "${sheet}" with the table "${name}" is hidden; show it.`,
          },
        ]
      : [];
    return [
      ...whole,
      ...runs(hidden ?? new Set(), table.rows.length).map(
        ([from, to]): Finding => ({
          rule: "hidden-row",
          weight: "query",
          ...where(table, from, first),
          message:
            from === to
              ? `${table.keys[from]}: the row is hidden or filtered away; show it.`
              : `${table.keys[from]} to ${table.keys[to]}: ${to - from + 1} rows are hidden or filtered away; show them.`,
        }),
      ),
    ];
  },
};

/** First and last of each run of neighbouring rows. */
function runs(hidden: ReadonlySet<number>, count: number): [number, number][] {
  const found: [number, number][] = [];
  for (const row of [...hidden].filter((one) => one < count).sort((one, other) => one - other)) {
    const last = found.at(-1);
    if (last && last[1] === row - 1) last[1] = row;
    else found.push([row, row]);
  }
  return found;
}
