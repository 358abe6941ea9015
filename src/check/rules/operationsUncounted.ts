import { serialDay } from "../../quantities/dates";
import { groupedBy } from "../../quantities/groupedBy";
import { isBlank, type RecordKind, type Row } from "../../records/kind";
import {
  type Context,
  dayOf,
  type JudgedTable,
  type OfKinds,
  type Rule,
  rowName,
  where,
} from "../context";
import type { Finding } from "../findings/finding";

const [BEFORE, AFTER] = ["counterBefore", "counterAfter"] as const;
/** What an operating test's column says that it made. */
const OPERATION = "operation";

const has = ({ columns }: RecordKind, id: string) => columns.some((column) => column.id === id);
const isCounted: OfKinds = (kind) => has(kind, BEFORE) && has(kind, "made");
const isOperated: OfKinds = (kind) => has(kind, OPERATION) && kind.spread !== undefined;

/** An operation counter that moved by less than the operations that the records show. */
export const operationsUncounted: Rule = {
  id: "operations-uncounted",
  reads: "book",
  of: (kind) => isCounted(kind) || isOperated(kind),
  find: (context) => {
    const counts = context.tables.filter(({ kind }) => isCounted(kind)).flatMap(countsIn);
    const closings = closingsIn(context);
    const ofDevice = groupedBy(counts, ({ device }) => device);
    return counts.flatMap((count): Finding[] => [
      ...ofRow(count, context),
      ...sinceLast(count, ofDevice.get(count.device) ?? [], closings, context),
    ]);
  },
};

interface Count {
  readonly table: JudgedTable;
  readonly row: number;
  /** The panel and the device, without what is tried of it. */
  readonly device: string;
  readonly day: number;
  readonly before: number;
  readonly after: number;
}

const countsIn = (table: JudgedTable): Count[] =>
  table.rows.flatMap((stored, row) => {
    const { counterBefore: before, counterAfter: after } = stored;
    const day = dayOf(stored.date);
    return typeof before !== "number" ||
      typeof after !== "number" ||
      day === undefined ||
      table.aside.has(row)
      ? []
      : [{ table, row, device: deviceOf(stored), day: Math.floor(day), before, after }];
  });

/** `=K01` and `Breaker Q0` of what is called `Breaker Q0 closing`. */
const deviceOf = ({ object, part }: Row): string =>
  `${object}\u0000${String(part).split(" ").slice(0, 2).join(" ")}`;

/** Fewer counted than closings that the row itself shows: each coil that worked at a voltage worked once at least. */
function ofRow(count: Count, { text }: Context): Finding[] {
  const { table, row, before, after } = count;
  const stored = table.rows[row] ?? {};
  const tried = (coil: string) =>
    [`${coil}Low`, `${coil}High`].filter((id) => !isBlank(stored[id])).length;
  // A breaker opens once for each time that it was closed.
  const shown = Math.max(tried("closing"), tried("opening"));
  const counted = after - before;
  if (counted < 0 || counted >= shown) return [];
  return [
    finding(
      count,
      text.rules["operations-uncounted"].row(rowName(table, row), counted, shown),
      AFTER,
      counted,
    ),
  ];
}

/** A counter that stands where another record left it, although the device was closed on the days between. */
function sinceLast(
  count: Count,
  counts: readonly Count[],
  closings: ReadonlyMap<string, readonly number[]>,
  { text }: Context,
): Finding[] {
  const earlier = counts
    .filter(({ day }) => day < count.day)
    .sort((one, other) => other.day - one.day)[0];
  if (!earlier) return [];
  const between = (closings.get(count.device) ?? []).filter(
    (day) => day > earlier.day && day < count.day,
  );
  const moved = count.before - earlier.after;
  const [first] = between;
  // One that stands lower than before runs back, which its own result tells.
  if (first === undefined || moved < 0 || moved >= between.length) return [];
  return [
    finding(
      count,
      text.rules["operations-uncounted"].between(rowName(count.table, count.row), {
        moved,
        from: serialDay(earlier.day),
        closings: between.length,
        first: serialDay(first),
      }),
      BEFORE,
      count.before,
    ),
  ];
}

/** The days on which each device was closed for a test of its times. */
function closingsIn({ tables }: Context): ReadonlyMap<string, readonly number[]> {
  const days = new Map<string, number[]>();
  for (const table of tables.filter(({ kind }) => isOperated(kind))) {
    const readings = table.kind.columns.filter(({ need }) => need === "reading");
    for (const [row, stored] of table.rows.entries()) {
      const day = dayOf(stored.date);
      if (day === undefined || stored[OPERATION] !== "closing" || table.aside.has(row)) continue;
      if (readings.every(({ id }) => isBlank(stored[id]))) continue;
      const device = deviceOf(stored);
      days.set(
        device,
        [...(days.get(device) ?? []), Math.floor(day)].sort((one, other) => one - other),
      );
    }
  }
  return days;
}

const finding = (
  { table, row }: Count,
  message: string,
  column: string,
  found: number,
): Finding => ({
  rule: "operations-uncounted",
  weight: "query",
  ...where(table, row, column),
  message,
  found,
});
