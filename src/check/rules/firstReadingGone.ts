import { bare } from "../../lineup/lineup";
import { plain } from "../../quantities/doubtIn";
import { isBlank, verdictOf } from "../../records/kind";
import { HISTORY_COLUMNS, HISTORY_TABLE } from "../../sheets/ours/historySheet";
import { repairsOf } from "../../sheets/ours/repairSheet";
import { asRecordTable } from "../../sheets/recordTable";
import { tablesOf } from "../../sheets/snapshot";
import {
  type Context,
  everyKind,
  type JudgedTable,
  overRows,
  type Rule,
  rowName,
  where,
} from "../context";
import type { Finding } from "../findings/finding";

/** That a reading is not the first one (common practice, no source). */
const AGAIN =
  /\b(?:repeated|re-?measured|measured again|second (?:try|attempt|reading)|re-?test(?:ed)?|first reading|wiederholt|erneut gemessen|zweite messung|repetee?s?|mesuree? (?:de|a) nouveau|repetid[oa]s?|medid[oa] de nuevo|medid[oa] novamente)\b/;
/** What is repeated without a bad reading before it, or is still to be. */
const PLAIN =
  /\b(?:same|as before|on request|requested|routine|each|times|to be|not|no|never|nicht|pas|sin|nao)\b/;

/** A remark that tells of a repeat, of which the first reading is kept nowhere. */
export const firstReadingGone: Rule = {
  id: "first-reading-gone",
  reads: "book",
  of: everyKind,
  find: (context) => {
    const isKept = keptIn(context);
    const says = context.text.rules["first-reading-gone"];
    return context.tables
      .filter(({ kind }) => kind.columns.some(({ need }) => need === "reading"))
      .flatMap((table) =>
        overRows(table, (row, stored, judged): Finding | undefined => {
          const remark = String(stored.remarks ?? "");
          if (!isRepeat(remark)) return undefined;
          if (verdictOf(judged) !== "Pass" || isKept(table, row)) return undefined;
          return {
            rule: "first-reading-gone",
            weight: "query",
            ...where(table, row, "remarks"),
            message: says.message(rowName(table, row), remark.trim().slice(0, 160)),
            found: remark.trim().slice(0, 80),
          };
        }).map(({ finding }) => finding),
      );
  },
};

/** A repeat that says after what it was made, and names no first reading, explains itself. */
const EXPLAINED =
  /\b(?:repeated after|wiederholt nach|nach \w+ wiederholt|repetee?s? apres|repetid[oa]s? (?:tras|despues|apos|depois))\b/;
const FIRST =
  /\bfirst (?:reading|value)\b|\berst(?:er|e) (?:wert|messung)\b|\bpremiere (?:valeur|mesure)\b|\bprimera? (?:lectura|valor)\b/;

function isRepeat(remark: string): boolean {
  const text = plain(remark);
  if (EXPLAINED.test(text) && !FIRST.test(text)) return false;
  return AGAIN.test(text) && !PLAIN.test(text);
}

/** Whether the reading history has a record, or the sheet Repairs it or its panel. */
function keptIn({ snapshot }: Context): (table: JudgedTable, row: number) => boolean {
  const history = tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);
  const read = new Set(
    history
      ? asRecordTable({ columns: HISTORY_COLUMNS }, history).rows.map(({ sheet, row }) =>
          JSON.stringify([sheet, row]),
        )
      : [],
  );
  const repaired = new Set(
    repairsOf(snapshot).flatMap(({ row }) =>
      [row.panel, String(row.row ?? "").split(" · ")[0]].flatMap((name) =>
        isBlank(name) ? [] : [bare(String(name))],
      ),
    ),
  );
  return (table, row) =>
    read.has(JSON.stringify([table.kind.sheet, rowName(table, row)])) ||
    repaired.has(bare(String(table.rows[row]?.object ?? "")));
}
