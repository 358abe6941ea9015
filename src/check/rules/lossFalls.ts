import { amongRows, columnsNamed } from "../among/amongRows";
import { headerOf, type Rule, rowName, said, where } from "../context";

/** A loss that falls as the voltage rises: readings exchanged, or an end that leaks. */
export const lossFalls: Rule = {
  id: "loss-falls",
  reads: "row",
  of: ({ rising }) => rising !== undefined,
  among: (table) =>
    amongRows(
      table,
      columnsNamed(table, ...(table.kind.rising?.columns ?? [])),
      (stored) => typeof stored === "number",
    ),
  rows: (table, { text }) => {
    const says = text.rules["loss-falls"];
    const { columns = [], by = 0, share = 0 } = table.kind.rising ?? {};
    return (row, stored) => {
      const read = columns.flatMap((id) => {
        const value = stored[id];
        return typeof value === "number" ? [{ id, value }] : [];
      });
      const at = read.findIndex(({ value }, place) => {
        const before = read[place - 1]?.value ?? 0;
        return before - value > Math.max(by, share * before) + 1e-9;
      });
      const [before, fallen] = [read[at - 1], read[at]];
      if (!before || !fallen) return undefined;
      return {
        rule: "loss-falls",
        weight: "query",
        ...where(table, row, fallen.id),
        message: says.message(
          rowName(table, row),
          headerOf(table, fallen.id),
          said(fallen.value),
          headerOf(table, before.id),
          said(before.value),
        ),
        found: said(fallen.value),
      };
    };
  },
};
