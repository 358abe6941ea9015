import { anyOf, plain } from "../../quantities/remarks/words";
import { WORK_WORDS } from "../../quantities/remarks/workWords";
import { HISTORY_TABLE } from "../../sheets/ours/historySheet";
import { PUNCH_COLUMNS, punchTable } from "../../sheets/ours/punchSheet";
import { repairsOf } from "../../sheets/ours/repairSheet";
import { asRecordTable } from "../../sheets/recordTable";
import { type TableSnapshot, tablesOf } from "../../sheets/snapshot";
import { type Context, overRows, type Rule, rowName, where } from "../context";
import { remarksOf } from "./remarkContradicts";

/** An item of the punch list by its number: `punch list item 4`. */
const PUNCH_ITEM = new RegExp(
  `${anyOf(WORK_WORDS.flatMap(({ lists }) => lists.punch)).source}[^\\d,;]{0,12}(\\d{1,3})(?![\\d.])`,
  "u",
);
const REPAIRS = anyOf(WORK_WORDS.flatMap(({ lists }) => lists.repairs));
const HISTORY = anyOf(WORK_WORDS.flatMap(({ lists }) => lists.history));

type List = "punch list" | "repairs" | "history";

/** A remark that points to a list of the workbook in which nothing of it stands. */
export const pointsNowhere: Rule = {
  id: "points-nowhere",
  reads: "table",
  find: (table, context) => {
    const remarks = remarksOf(table, context);
    if (!remarks) return [];
    const says = context.text.rules["points-nowhere"];
    const pointed = emptyPoint(context);
    return overRows(
      table,
      (row) =>
        remarks.of(row).flatMap(({ address, column, text }) => {
          const list = pointed(plain(text));
          return list === undefined
            ? []
            : [
                {
                  rule: "points-nowhere",
                  weight: "query" as const,
                  ...where(table, row, "remarks"),
                  address,
                  column,
                  message: says.message(
                    rowName(table, row),
                    text.trim().slice(0, 160),
                    says.lists[list],
                  ),
                  found: text.trim().slice(0, 80),
                },
              ];
        }),
      remarks.rows,
    ).map(({ finding }) => finding);
  },
};

/** The list that a remark points to in vain. */
function emptyPoint({ snapshot }: Context): (remark: string) => List | undefined {
  const punch = punchTable(snapshot);
  const items = punch ? asRecordTable({ columns: PUNCH_COLUMNS }, punch).rows : [];
  const numbers = new Set(items.map(({ number }) => String(number ?? "").trim()));
  const history = tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);
  return (remark) => {
    const item = PUNCH_ITEM.exec(remark)?.[1];
    if (item !== undefined && punch && !numbers.has(String(Number(item)))) return "punch list";
    if (REPAIRS.test(remark) && repairsOf(snapshot).length === 0) return "repairs";
    return HISTORY.test(remark) && history && isEmpty(history) ? "history" : undefined;
  };
}

const isEmpty = ({ rowCount, headers, cell }: TableSnapshot): boolean =>
  Array.from({ length: rowCount }, (_, row) => row).every((row) =>
    headers.every((_header, column) => String(cell(row, column) ?? "").trim() === ""),
  );
