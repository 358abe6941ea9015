import { keyIds } from "../../records/kind";
import { type Rule, where, whereTable } from "../context";
import type { Finding } from "../findings/finding";

/** Rows of a record that a reader of the sheet does not see: hidden, filtered away, or on a hidden sheet. */
export const hiddenRow: Rule = {
  id: "hidden-row",
  reads: "table",
  find: (table, { snapshot, text: { rules } }) => {
    const text = rules["hidden-row"];
    const { hidden, sheet, name } = table.table;
    const first = keyIds(table.kind)[0] ?? "";
    const isOutOfSight = snapshot.sheets.find((one) => one.name === sheet)?.hidden === true;
    const whole: Finding[] = isOutOfSight
      ? [
          {
            rule: "hidden-row",
            weight: "query",
            ...whereTable(table),
            message: text.sheet(sheet, name),
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
          message: text.rows(table.keys[from] ?? "", table.keys[to] ?? "", to - from + 1),
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
