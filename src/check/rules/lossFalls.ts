import type { Row } from "../../records/kind";
import { amongRows, columnsNamed } from "../among/amongRows";
import {
  type Context,
  headerOf,
  type JudgedTable,
  overRows,
  type Rule,
  rowName,
  said,
  where,
} from "../context";
import type { Finding } from "../findings/finding";

/** A loss that falls as the voltage rises: readings exchanged, or an end that leaks. */
export const lossFalls: Rule = {
  id: "loss-falls",
  reads: "table",
  find: (table, context) => {
    const { rising } = table.kind;
    if (!rising) return [];
    const among = amongRows(
      table,
      columnsNamed(table, ...rising.columns),
      (stored) => typeof stored === "number",
    );
    return overRows(table, (row, stored) => fallIn(table, row, stored, rising, context), among).map(
      ({ finding }) => finding,
    );
  },
};

type Rising = NonNullable<JudgedTable["kind"]["rising"]>;

function fallIn(
  table: JudgedTable,
  row: number,
  stored: Row,
  { columns, by, share }: Rising,
  { text }: Context,
): Finding | undefined {
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
    message: text.rules["loss-falls"].message(
      rowName(table, row),
      headerOf(table, fallen.id),
      said(fallen.value),
      headerOf(table, before.id),
      said(before.value),
    ),
    found: said(fallen.value),
  };
}
