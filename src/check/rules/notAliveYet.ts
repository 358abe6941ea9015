import { serialDay } from "../../quantities/dates";
import { isBlank, type Row, verdictOf } from "../../records/kind";
import {
  type Context,
  dayOf,
  type JudgedTable,
  overRows,
  type Rule,
  rowName,
  where,
} from "../context";
import type { Finding } from "../findings/finding";
import { oncePerEntry } from "../findings/oncePerEntry";

/** A reading that needs the gear under voltage, of a day on which no record tells of voltage yet. */
export const notAliveYet: Rule = {
  id: "not-alive-yet",
  reads: "book",
  of: ({ live, stages }) => live !== undefined || stages !== undefined,
  find: (context) => {
    const told = context.tables.filter(({ kind }) => kind.stages);
    // Gear in service was alive before any of these records.
    if (told.length === 0 || context.lineup.purpose === "maintenance") return [];
    const first = Math.min(...told.flatMap(aliveDays));
    return context.tables.flatMap((table) =>
      table.kind.live ? oncePerEntry(earlyIn(table, first, context), context.text) : [],
    );
  },
};

/** The days on which a record tells of voltage. */
const aliveDays = ({ kind, judged }: JudgedTable): readonly number[] =>
  judged.flatMap((row) =>
    kind.stages?.alive(row) && verdictOf(row) === "Pass" ? (dayOf(row.date) ?? []) : [],
  );

const earlyIn = (table: JudgedTable, first: number, { text }: Context): Finding[] =>
  overRows(table, (row, stored): Finding | undefined => {
    const day = dayOf(stored.date);
    if (day === undefined || !table.kind.live?.(stored) || !isRead(table, stored)) return undefined;
    if (!isBlank(stored.remarks) || Math.floor(day) >= Math.floor(first)) return undefined;
    const says = text.rules["not-alive-yet"];
    return {
      rule: "not-alive-yet",
      weight: "query",
      ...where(table, row, "date"),
      message: Number.isFinite(first)
        ? says.early(rowName(table, row), serialDay(day), serialDay(first))
        : says.never(rowName(table, row), serialDay(day)),
      found: serialDay(day),
    };
  }).map(({ finding }) => finding);

const isRead = ({ kind }: JudgedTable, row: Row): boolean =>
  kind.columns.some(({ id, need }) => need === "reading" && !isBlank(row[id]));
