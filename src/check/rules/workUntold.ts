import { bare } from "../../lineup/lineup";
import { serialDay } from "../../quantities/dates";
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

/** Words for work on the gear itself that makes earlier tests void (common practice, no source). */
const WORK =
  /\b(?:remade|re-made|reassembled|dismantled|disassembled|re-?terminated|rewired|replaced|exchanged|ausgetauscht|ersetzt|zerlegt|remplac[ée]e?s?|d[ée]mont[ée]e?s?|reemplazad[oa]s?|sustituid[oa]s?|desmontad[oa]s?|substitu[íi]d[oa]s?)\b/i;
/** What is replaced without touching the gear, and what was not done or is to come. */
const IDLE =
  /\b(?:not|no|never|nothing|to be|will be|nicht|kein\w*|noch|pas|non|sin|n[ãa]o|instruments?|meters?|leads?|probes?|batter\w+|label\w*|lamps?)\b/i;

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
        if (!WORK.test(remark) || IDLE.test(remark) || verdictOf(judged) === "Missing")
          return undefined;
        return untold(table, row, remark, repaired, context);
      }).map(({ finding }) => finding),
    );
  },
};

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
