import { groupedBy } from "../../quantities/groupedBy";
import { isBlank, type Row, verdictOf } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { inOrder, median } from "../among/similar";
import {
  type Context,
  type JudgedTable,
  type Rule,
  rowName,
  said,
  where,
  withRole,
} from "../context";
import type { Finding } from "../findings/finding";

/** So many times the reading before the withstand test no insulation rises by itself (common practice, no source). */
const FAR = 15;
/** A weather that dries lets the others rise as well: of these it is so many times apart. */
const ALIKE = 5;

const isInsulation = withRole("insulation");

interface Risen {
  readonly table: JudgedTable;
  readonly row: number;
  readonly times: number;
  readonly was: number;
  readonly now: number;
}

/** Insulation after the withstand test that is far above the one before, where the others did not rise so. */
export const risenAfter: Rule = {
  id: "risen-after",
  reads: "book",
  of: isInsulation,
  find: (context) => {
    const before = beforeIn(context);
    const pairs = context.tables
      .filter(({ kind }) => isInsulation(kind))
      .flatMap((table) => table.judged.flatMap((row, at) => pairOf(table, at, row, before) ?? []));
    const sorts = groupedBy(pairs, ({ table, row }) => String(table.judged[row]?.part));
    return [...sorts.values()].flatMap((sort) =>
      sort.filter((one) => standsApart(one, sort)).map((one) => finding(one, context)),
    );
  },
};

const place = (row: Row) => JSON.stringify([row.object, row.part, row.combination]);

/** A resistance as it was read and as it is corrected: what a temperature alone makes of it is none of this. */
interface Resistance {
  readonly read: number;
  readonly corrected: number;
}

const resistanceOf = ({ reading, corrected }: Row): Resistance | undefined => {
  const read = exactly(reading, "MΩ");
  return read !== undefined && read > 0 && typeof corrected === "number" && corrected > 0
    ? { read, corrected }
    : undefined;
};

const beforeIn = ({ tables }: Context): ReadonlyMap<string, Resistance> =>
  new Map(
    tables
      .filter(({ kind }) => isInsulation(kind))
      .flatMap(({ judged }) => judged)
      .flatMap((row): [string, Resistance][] => {
        const is = row.stage === "before" && verdictOf(row) === "Pass" && resistanceOf(row);
        return is ? [[place(row), is]] : [];
      }),
  );

function pairOf(
  table: JudgedTable,
  at: number,
  row: Row,
  before: ReadonlyMap<string, Resistance>,
): Risen | undefined {
  const was = before.get(place(row));
  const now = row.stage === "after" && !table.aside.has(at) ? resistanceOf(row) : undefined;
  if (!was || !now) return undefined;
  const times = Math.min(now.read / was.read, now.corrected / was.corrected);
  return { table, row: at, times, was: was.corrected, now: now.corrected };
}

/** Whether one rose far, and far more than the others of its sort. */
function standsApart(one: Risen, sort: readonly Risen[]): boolean {
  if (one.times < FAR || !isBlank(one.table.rows[one.row]?.remarks)) return false;
  const others = sort.filter((other) => other !== one).map(({ times }) => times);
  return others.length >= 2 && one.times >= ALIKE * Math.max(1, median(inOrder(others)));
}

const finding = ({ table, row, times, was, now }: Risen, { text }: Context): Finding => ({
  rule: "risen-after",
  weight: "query",
  ...where(table, row, "corrected"),
  message: text.rules["risen-after"].message(
    rowName(table, row),
    said(now),
    said(was),
    Math.round(times),
  ),
  found: said(now),
});
