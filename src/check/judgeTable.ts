import { bare, type Lineup } from "../lineup/lineup";
import { memoizeFor } from "../quantities/memoizeFor";
import { cellsOf, rowsAlike } from "../records/cellsOf";
import { LINEUP } from "../records/columns/common";
import { evaluate } from "../records/evaluate";
import { type Column, isBlank, keyIds, type Row, rowKey } from "../records/kind";
import { rowsOf } from "../records/rowsOf";
import { formulaRuns } from "../sheets/cells/formulaRuns";
import type { RecordTable } from "../sheets/recordTable";
import type { TableSnapshot } from "../sheets/snapshot";
import type { JudgedTable } from "./context";
import { openIn } from "./progress/openRows";

/** What an edit may have changed of a table: nothing, some rows, or all of it. */
export type Edit = "nothing" | "everything" | ReadonlySet<number>;

/** A result is always a word, so where every formula of one stands with nothing beside it, nothing was calculated. */
function isCalculated({ table, at, rows }: RecordTable): boolean {
  const column = at.get("result");
  if (column === undefined) return true;
  const runs = formulaRuns(table, column).filter(({ formula }) => formula !== undefined);
  const results = cellsOf(rows, "result");
  return (
    runs.length === 0 ||
    runs.some(({ from, to }) => results.slice(from, to).some((result) => !isBlank(result)))
  );
}

/** Computes every row of a table again. */
export function judgeTable(table: RecordTable, lineup: Lineup): JudgedTable {
  const ids = keyIds(table.kind);
  const needed = rowsOf(table.kind, lineup);
  const names = needed.map((row) => rowKey(row, ids));
  const given = new Map(needed.map((row, at) => [names[at] ?? "", row]));
  const aside = asideOf(table, given, lineup);
  return {
    ...table,
    judged: evaluate(table.kind, table.rows, lineup),
    keys: table.rows.map((row, at) => {
      // As a rule rows stand as they were built.
      const built = needed[at];
      const isSame = built && ids.every((id) => row[id] === built[id]);
      return (isSame && names[at]) || rowKey(row, ids);
    }),
    given,
    aside,
    open: openIn({ ...table, aside }),
    calculated: isCalculated(table),
  };
}

/** Rows that say nothing, and rows of panels and sections that the lineup does not have. */
function asideOf(
  { kind, rows }: Pick<RecordTable, "kind" | "rows">,
  given: JudgedTable["given"],
  lineup: Lineup,
): ReadonlySet<number> {
  const named = namesOf(lineup);
  const others = new Set<string>();
  for (const { object } of given.values())
    if (!named.has(String(object))) others.add(String(object ?? ""));
  const known = new Set([...named.values(), ...[...others].map(bare)]);
  const typed = kind.columns.filter(({ role }) => role === "key" || role === "entry");
  const isNamed = ({ object }: Row) => !isBlank(object) && known.has(bare(String(object)));
  return new Set(
    rowsAlike(rows, ["object"], (row) => !isNamed(row)).filter((at) => {
      const row = rows[at] ?? {};
      return !isBlank(row.object) || typed.every(({ id }) => isBlank(row[id]));
    }),
  );
}

/** The names of panels and sections, and of the lineup itself, as they are written, with what is compared of each. */
const namesOf = memoizeFor(({ panels }: Lineup): ReadonlyMap<string, string> => {
  const names = [LINEUP, ...panels.flatMap(({ designation, section }) => [designation, section])];
  return new Map([...new Set(names)].map((name) => [name, bare(name)]));
});

/** A table after an edit, computed again as far as the edit reaches. */
export function rejudge(
  before: JudgedTable,
  table: RecordTable,
  lineup: Lineup,
): { readonly table: JudgedTable; readonly edit: Edit } {
  const edited = editedRows(before, table);
  if (edited === "everything") return { table: judgeTable(table, lineup), edit: edited };
  const ids = keyIds(table.kind);
  const calculated = isCalculated(table);
  const surveys = table.kind.columns.some(({ survey }) => survey);
  const keys = [...before.keys];
  for (const row of edited) keys[row] = rowKey(table.rows[row] ?? {}, ids);
  const judged = surveys
    ? evaluate(table.kind, table.rows, lineup)
    : judgedAgain(before, table, edited, lineup);
  const reached = surveys
    ? new Set([...edited, ...changed(table.kind.columns, before.judged, judged)])
    : edited;
  const aside = asideOf(table, before.given, lineup);
  return {
    table: {
      ...table,
      judged,
      keys,
      given: before.given,
      aside,
      open: openIn({ ...table, aside }),
      calculated,
    },
    edit: calculated === before.calculated ? reached : "everything",
  };
}

function judgedAgain(
  before: JudgedTable,
  table: RecordTable,
  edited: ReadonlySet<number>,
  lineup: Lineup,
): Row[] {
  const judged = [...before.judged];
  const rows = [...edited];
  const again = evaluate(
    table.kind,
    rows.map((row) => table.rows[row] ?? {}),
    lineup,
  );
  rows.forEach((row, at) => {
    judged[row] = again[at] ?? {};
  });
  return judged;
}

/** Rows of which a cell or formula differs; everything where the table has other columns or rows. */
function editedRows(
  before: JudgedTable,
  { kind, table, at, rows }: RecordTable,
): Exclude<Edit, "nothing"> {
  if (
    rows.length !== before.rows.length ||
    table.headers.length !== before.table.headers.length ||
    table.headers.some((header, index) => header !== before.table.headers[index]) ||
    table.top !== before.table.top ||
    table.left !== before.table.left ||
    table.sheet !== before.table.sheet
  )
    return "everything";
  const edited = new Set<number>();
  const columns = [...at];
  for (const [index, row] of rows.entries()) {
    const was = before.rows[index] ?? {};
    if (
      columns.some(
        ([id, column]) =>
          row[id] !== was[id] ||
          table.formula(index, column) !== before.table.formula(index, column) ||
          (table.ownLayout !== undefined && isElsewhere(before.table, table, index, column)),
      ) ||
      // A map may say of every row what no cell of it does.
      (table.ownLayout && kind.columns.some(({ id }) => row[id] !== was[id]))
    )
      edited.add(index);
  }
  return edited;
}

/** Whether a cell of somebody's own layout is another one than before. */
const isElsewhere = (
  before: TableSnapshot,
  table: TableSnapshot,
  row: number,
  column: number,
): boolean => {
  const [was, is] = [before, table].map(({ ownLayout }) => ownLayout?.place(row, column));
  return was?.row !== is?.row || was?.column !== is?.column;
};

/** Rows of which a computed cell came to something else. */
export function changed(
  columns: readonly Column[],
  before: readonly Row[],
  after: readonly Row[],
): number[] {
  const ids = columns.filter(({ value }) => value).map(({ id }) => id);
  return after.flatMap((row, index) =>
    ids.some((id) => row[id] !== before[index]?.[id]) ? [index] : [],
  );
}
