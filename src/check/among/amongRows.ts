import { cellsOf, rowsAlike } from "../../records/cellsOf";
import { type CellValue, type Column, isBlank, verdictOf } from "../../records/kind";
import type { Verdict } from "../../standards/judge";
import type { JudgedTable } from "../context";

/** Looks at a cell of one row, as it is stored and as it was computed. */
export type CellTest = (
  stored: CellValue,
  judged: CellValue,
  row: number,
  column: Column,
) => boolean;

/** The rows of which one cell or more of some columns meets a test, in order: looked for column by column. */
export function amongRows(
  { rows, judged }: Pick<JudgedTable, "rows" | "judged">,
  columns: readonly Column[],
  test: CellTest,
): readonly number[] {
  const found = new Set<number>();
  for (const column of columns) {
    const [stored, computed] = [cellsOf(rows, column.id), cellsOf(judged, column.id)];
    for (let row = 0; row < stored.length; row++)
      if (test(stored[row] ?? null, computed[row] ?? null, row, column)) found.add(row);
  }
  return inRowOrder(found);
}

/** The columns of which a cell came to something else than is stored. */
export const cameOtherwise = (
  { rows, judged }: Pick<JudgedTable, "rows" | "judged">,
  columns: readonly Column[],
): readonly Column[] => columns.filter(({ id }) => cellsOf(rows, id) !== cellsOf(judged, id));

/** The rows that came to one of some verdicts. */
export const amongVerdicts = (
  { judged }: Pick<JudgedTable, "judged">,
  ...verdicts: readonly Verdict[]
): readonly number[] => rowsAlike(judged, ["result"], (row) => verdicts.includes(verdictOf(row)));

/** The columns of a table's kind by their ids. */
export const columnsNamed = (
  { kind }: Pick<JudgedTable, "kind">,
  ...ids: readonly string[]
): readonly Column[] => kind.columns.filter(({ id }) => ids.includes(id));

/** The rows of which one or more of some entries is blank. */
export const amongBlank = (
  table: Pick<JudgedTable, "rows" | "judged">,
  columns: readonly Column[],
): readonly number[] => amongRows(table, columns, isBlank);

/** The rows of which an entry of some columns meets a test, asked once for each different entry. */
export const amongEntries = (
  { rows }: Pick<JudgedTable, "rows">,
  columns: readonly Column[],
  test: (cell: CellValue, column: Column) => boolean,
): readonly number[] =>
  inRowOrder(
    columns.flatMap((column) =>
      rowsAlike(rows, [column.id], (row) => test(row[column.id] ?? null, column)),
    ),
  );

/** Rows in their order, each once. */
export const inRowOrder = (rows: Iterable<number>): readonly number[] =>
  [...new Set(rows)].sort((one, other) => one - other);
