import { serialDay } from "../../quantities/dates";
import { isBlank } from "../../records/kind";
import { WORKS } from "../../records/repairs";
import { cellAddress } from "../../sheets/cells/address";
import {
  REPAIR_COLUMNS,
  repairsOf,
  repairTable,
  type StoredRepair,
} from "../../sheets/ours/repairSheet";
import type { TableSnapshot } from "../../sheets/snapshot";
import { type Context, dayOf, noKind, type Rule, said } from "../context";
import type { Finding } from "../findings/finding";
import { workIn } from "../repairs";

const RULE = "repair-incomplete";

const NEEDED: readonly string[] = ["sheet", "row", "cause", "work", "done", "by", "date"];

/** A repair that lacks something, or names what the workbook does not have. */
export const repairIncomplete: Rule = {
  id: RULE,
  reads: "book",
  of: noKind,
  find: (context) => {
    const table = repairTable(context.snapshot);
    return table
      ? repairsOf(context.snapshot).flatMap((repair) => wrongIn(repair, table, context) ?? [])
      : [];
  },
};

/** The first thing that is wrong with a repair. */
function wrongIn(
  { index, row }: StoredRepair,
  table: TableSnapshot,
  { tables, today, text }: Context,
): Finding | undefined {
  const says = text.rules[RULE];
  const name = String(row.row || row.sheet || "nothing");
  const at = (id: string, message: string): Finding => {
    const header = REPAIR_COLUMNS.find((column) => column.id === id)?.header ?? id;
    const column = Math.max(0, table.headers.indexOf(header));
    return {
      rule: RULE,
      weight: "query",
      sheet: table.sheet,
      address: cellAddress(table, index, column),
      row: name,
      column: header,
      message,
      found: said(row[id]),
    };
  };
  const lacking = REPAIR_COLUMNS.find(({ id }) => NEEDED.includes(id) && isBlank(row[id]));
  if (lacking) return at(lacking.id, says.lacks(name, lacking.header));
  if (workIn(row.work) === undefined)
    return at("work", says.work(name, String(row.work), WORKS.join(", ")));
  const [day, tested] = [dayOf(row.date), dayOf(row.tested)];
  if (day === undefined) return at("date", says.lacks(name, "Date"));
  if (day >= today + 1) return at("date", says.future(name, serialDay(day)));
  if (tested !== undefined && Math.floor(day) < Math.floor(tested))
    return at("date", says.early(name, serialDay(day), serialDay(tested)));
  const isKnown = tables.some(
    ({ table: one, keys }) => one.sheet === row.sheet && keys.includes(String(row.row).trim()),
  );
  return isKnown ? undefined : at("row", says.noRecord(name, String(row.sheet)));
}
