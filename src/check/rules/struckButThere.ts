import { bare } from "../../lineup/lineup";
import { groupedBy } from "../../quantities/groupedBy";
import { memoizeFor } from "../../quantities/memoizeFor";
import { type Row, type ShownBy, verdictOf } from "../../records/kind";
import { exempting } from "../../records/verdict";
import { amongVerdicts } from "../among/amongRows";
import { type Context, type JudgedTable, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

/** An item struck out as not applicable, of a thing that another record tested, or that the lineup has. */
export const struckButThere: Rule = {
  id: "struck-but-there",
  reads: "book",
  of: ({ shownBy, step }) => shownBy !== undefined || step !== undefined,
  find: (context) =>
    context.tables.flatMap((table) => (table.kind.shownBy ? struckIn(table, context) : [])),
};

const struckIn = (table: JudgedTable, context: Context): Finding[] =>
  overRows(
    table,
    (row, _stored, judged): Finding | undefined => {
      const [word] = exempting(table.kind.columns, judged);
      const shown = word && shownOf(table, judged, context);
      if (!word || !shown) return undefined;
      const says = context.text.rules["struck-but-there"];
      return {
        rule: "struck-but-there",
        weight: "query",
        ...where(table, row, word.id),
        message:
          shown === "lineup"
            ? says.lineup(rowName(table, row), String(word.exempt))
            : says.record(rowName(table, row), String(word.exempt), shown),
        found: String(word.exempt),
      };
    },
    amongVerdicts(table, "Not required"),
  ).map(({ finding }) => finding);

/** What shows that the thing of a struck row is there: the lineup, or the first record of it by its sheet and name. */
function shownOf({ kind }: JudgedTable, judged: Row, { tables }: Context): string | undefined {
  for (const by of kind.shownBy?.(judged) ?? []) {
    if (by === "lineup") return by;
    const found = recordOf(by, bare(String(judged.object)), tables);
    if (found !== undefined) return found;
  }
  return undefined;
}

function recordOf(
  { kind, of }: ShownBy,
  object: string,
  tables: readonly JudgedTable[],
): string | undefined {
  for (const table of tables.filter((one) => one.kind.id === kind))
    for (const row of rowsBy(table).get(object) ?? []) {
      const judged = table.judged[row] ?? {};
      if (isRecorded(judged) && (of?.(judged) ?? true))
        return `${table.kind.sheet}, ${rowName(table, row)}`;
    }
  return undefined;
}

const rowsBy = memoizeFor(({ judged, aside }: JudgedTable) =>
  groupedBy(
    [...judged.keys()].filter((row) => !aside.has(row)),
    (row) => bare(String(judged[row]?.object)),
  ),
);

/** A row that is struck out or blank itself shows nothing. */
const isRecorded = (judged: Row): boolean =>
  verdictOf(judged) !== "Missing" && verdictOf(judged) !== "Not required";
