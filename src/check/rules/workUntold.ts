import { bare } from "../../lineup/lineup";
import { serialDay } from "../../quantities/dates";
import { DOUBT_WORDS } from "../../quantities/remarks/doubtWords";
import { anyOf, plain } from "../../quantities/remarks/words";
import { WORK_WORDS } from "../../quantities/remarks/workWords";
import { isBlank, type Row, verdictOf } from "../../records/kind";
import { kindWords } from "../../records/kindWords";
import { repairsOf } from "../../sheets/ours/repairSheet";
import {
  type Context,
  dayOf,
  everyKind,
  type JudgedTable,
  overRows,
  type Rule,
  rowName,
  where,
} from "../context";
import type { Finding } from "../findings/finding";
import { panelsOf } from "../panelsOf";

const DONE = anyOf(WORK_WORDS.flatMap(({ remade }) => remade.done));
const IDLE = anyOf([
  ...WORK_WORDS.flatMap(({ remade }) => remade.idle),
  ...DOUBT_WORDS.flatMap(({ negations }) => negations),
]);

/** A remark that tells of work on a panel after its tests, of which the sheet Repairs says nothing. */
export const workUntold: Rule = {
  id: "work-untold",
  reads: "book",
  of: everyKind,
  find: (context) => {
    const repaired = repairedPanels(context);
    return context.tables.flatMap((table) =>
      overRows(table, (row, stored, judged): Finding | undefined => {
        const remark = String(stored.remarks ?? "");
        if (!isWork(remark) || verdictOf(judged) === "Missing") return undefined;
        return untold(table, row, remark, repaired, context);
      }).map(({ finding }) => finding),
    );
  },
};

function isWork(remark: string): boolean {
  const text = plain(remark);
  return DONE.test(text) && !IDLE.test(text);
}

function untold(
  table: JudgedTable,
  row: number,
  remark: string,
  repaired: ReadonlySet<string>,
  context: Context,
): Finding | undefined {
  const stored = table.rows[row] ?? {};
  const day = dayOf(stored.date);
  const panels = panelsOf(context.lineup, String(stored.object));
  if (day === undefined || panels.some((panel) => repaired.has(panel))) return undefined;
  const earlier = testedBefore(context, new Set(panels), Math.floor(day));
  return earlier === undefined
    ? undefined
    : {
        rule: "work-untold",
        weight: "query",
        ...where(table, row, "remarks"),
        message: context.text.rules["work-untold"].message(
          rowName(table, row),
          remark.trim().slice(0, 160),
          kindWords(context.text, earlier.kind).title,
          serialDay(earlier.day),
        ),
        found: remark.trim().slice(0, 80),
      };
}

/** The panels that the sheet Repairs names, by themselves or by their sections. */
const repairedPanels = ({ snapshot, lineup }: Context): ReadonlySet<string> =>
  new Set(
    repairsOf(snapshot).flatMap(({ row }) =>
      [row.panel, String(row.row ?? "").split(" · ")[0]].flatMap((name) =>
        isBlank(name) ? [] : panelsOf(lineup, bare(String(name))),
      ),
    ),
  );

/** The last test of some panels before a day, of the kinds that work can make void. */
function testedBefore({ tables, lineup }: Context, panels: ReadonlySet<string>, before: number) {
  let last: { readonly kind: string; readonly day: number } | undefined;
  const isOfThese = ({ object }: Row) =>
    panelsOf(lineup, String(object)).some((panel) => panels.has(panel));
  for (const { kind, rows, at } of tables)
    if (kind.voidBy && at.has("instrument"))
      for (const row of rows) {
        const day = Math.floor(dayOf(row.date) ?? Number.NaN);
        if (day < before && day > (last?.day ?? 0) && isOfThese(row)) last = { kind: kind.id, day };
      }
  return last;
}
