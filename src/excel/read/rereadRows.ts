import type { SheetRows, TableRows } from "../../sheets/editedRows";
import type { Snapshot } from "../../sheets/snapshot";
import type { Block, TableBlock } from "../write/outlineBlocks";
import { inWords } from "./errorWords";
import { isWhereItWas } from "./readRows";
import { blockBehind, sheetCells, tableSnapshot } from "./snapshotOf";

/**
 * The snapshot with some rows of its tables, and of its sheets in somebody's own layout, read again: one
 * round trip. Undefined where a table or what is used of a sheet is not where or as long as it was, so
 * that the whole workbook has to be read.
 */
export const rereadRows = (
  context: Excel.RequestContext,
  snapshot: Snapshot,
  changed: readonly (TableRows | SheetRows)[],
): Promise<Snapshot | undefined> =>
  inWords(
    (work) => work.reread,
    async () => {
      const known = changed.map((one) => knownOf(snapshot, one));
      if (!known.every((one) => one !== undefined)) return undefined;
      if (snapshot.isManual) context.application.calculate("Recalculate");
      const asked = known.map((one) => {
        const { first, columnCount } = one.block;
        const body = one.range(context).untrack();
        body.load("rowIndex,columnIndex,rowCount,columnCount");
        const pieces = runs(one.rows).map(({ from, count }) => {
          const piece = body
            .getCell(from - first, 0)
            .untrack()
            .getResizedRange(count - 1, columnCount - 1)
            .untrack();
          piece.load("values,formulas");
          return { from: from - first, piece };
        });
        return { ...one, body, pieces };
      });
      await context.sync();
      const fresh = new Map<object, Block>();
      for (const { of, block, body, pieces } of asked) {
        if (!isWhereItWas(block, body)) return undefined;
        const [values, formulas] = [[...block.values], [...block.formulas]];
        for (const { from, piece } of pieces) {
          values.splice(from, piece.values.length, ...piece.values);
          formulas.splice(from, piece.formulas.length, ...piece.formulas);
        }
        fresh.set(of, { ...block, values, formulas });
      }
      return {
        ...snapshot,
        sheets: snapshot.sheets.map((sheet) => {
          const used = sheet.cells && fresh.get(sheet.cells);
          return {
            ...sheet,
            tables: sheet.tables.map((table) => {
              const block = fresh.get(table);
              return block ? tableSnapshot(block as TableBlock) : table;
            }),
            ...(used ? { cells: sheetCells(used, sheet.cells) } : {}),
          };
        }),
      };
    },
  );

/** What is known of rows that are to be read again; undefined where they are not of this snapshot. */
function knownOf(snapshot: Snapshot, one: TableRows | SheetRows) {
  const of = "table" in one ? one.table : one.cells;
  const block = blockBehind.get(of);
  const sheet = snapshot.sheets.find(({ cells }) => cells === of)?.name;
  if (!block) return undefined;
  const rows = "table" in one ? one.rows.map((row) => block.first + row) : one.rows;
  if (rows.some((row) => row < block.first || row >= block.first + block.rowCount))
    return undefined;
  const range = ({ workbook }: Excel.RequestContext): Excel.Range =>
    "table" in one
      ? workbook.tables.getItem(one.table.name).getDataBodyRange()
      : workbook.worksheets.getItem(sheet ?? "").getUsedRange(true);
  return { of, block, rows, range };
}

/** Numbers in a row put together: 3, 4, 5, 9 are a run of three from 3 and a run of one from 9. */
function runs(rows: readonly number[]): { from: number; count: number }[] {
  const found: { from: number; count: number }[] = [];
  for (const row of [...new Set(rows)].sort((one, other) => one - other)) {
    const last = found.at(-1);
    if (last && last.from + last.count === row) last.count++;
    else found.push({ from: row, count: 1 });
  }
  return found;
}
