import { groupedBy } from "../../quantities/groupedBy";
import { isBlank, type Row, verdictOf } from "../../records/kind";
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

const beforeIn = ({ tables }: Context): ReadonlyMap<string, number> =>
  new Map(
    tables
      .filter(({ kind }) => isInsulation(kind))
      .flatMap(({ judged }) => judged)
      .flatMap((row): [string, number][] =>
        row.stage === "before" && typeof row.corrected === "number" && verdictOf(row) === "Pass"
          ? [[place(row), row.corrected]]
          : [],
      ),
  );

function pairOf(
  table: JudgedTable,
  at: number,
  row: Row,
  before: ReadonlyMap<string, number>,
): Risen | undefined {
  const was = before.get(place(row));
  const now = row.corrected;
  if (row.stage !== "after" || typeof now !== "number" || was === undefined || table.aside.has(at))
    return undefined;
  return { table, row: at, times: now / was, was, now };
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
