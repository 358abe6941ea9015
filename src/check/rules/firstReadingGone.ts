import { bare } from "../../lineup/lineup";
import { DOUBT_WORDS } from "../../quantities/remarks/doubtWords";
import { anyOf, plain } from "../../quantities/remarks/words";
import { WORK_WORDS } from "../../quantities/remarks/workWords";
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

const AGAIN = anyOf(WORK_WORDS.flatMap(({ repeated }) => repeated.again));
const PLAIN = anyOf([
  ...WORK_WORDS.flatMap(({ repeated }) => repeated.plain),
  ...DOUBT_WORDS.flatMap(({ negations }) => negations),
]);
const EXPLAINED = anyOf(WORK_WORDS.flatMap(({ repeated }) => repeated.explained));
const FIRST = anyOf(WORK_WORDS.flatMap(({ repeated }) => repeated.first));

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
