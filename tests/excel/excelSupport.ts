import { inExcel as finished } from "../../src/excel/inExcel";
import { applyPlan } from "../../src/excel/workbook";
import type { PlacedCell } from "../../src/intake/place/placement";
import type { CellValue } from "../../src/records/kind";
import type { Plan } from "../../src/sheets/plan/plan";
import { type RecordTable, recordTables } from "../../src/sheets/recordTable";
import { type Snapshot, tablesOf } from "../../src/sheets/snapshot";
import { addSheet, newBook, type StandInBook } from "../../src/standin/book";
import { bookOfPlan } from "../../src/standin/bookOfPlan";
import { calculateRecords } from "../../src/standin/calculate";
import { type StandInHost, standIn } from "../../src/standin/host";
import { loadClient } from "../../src/standin/loadClientInNode";

const client = loadClient();

/** Runs work through the genuine client. */
export const inExcel = <T>(
  host: StandInHost,
  work: (context: Excel.RequestContext) => Promise<T>,
) => finished((all) => client.run(host, all), work);

/** Excel with a new workbook: one blank sheet. */
export function newExcel(): StandInHost {
  const book = newBook();
  addSheet(book, "Sheet1");
  return standIn(book, calculateRecords);
}

/** Excel with the workbook of a plan, built through the adapter. */
export async function builtExcel(plan: Plan): Promise<StandInHost> {
  const host = newExcel();
  await inExcel(host, (context) => applyPlan(context, plan));
  host.reset();
  return host;
}

/** Excel with a big workbook made directly. */
export const bigExcel = (plan: Plan): StandInHost => standIn(bookOfPlan(plan), calculateRecords);

/** Excel with a copy of a workbook. */
export const copied = ({ book }: StandInHost): StandInHost =>
  standIn(structuredClone(book), calculateRecords);

/** What the tables of a snapshot hold, blank text and no value alike. */
export const contents = (snapshot: Snapshot) =>
  tablesOf(snapshot).map(({ name, sheet, top, left, headers, rowCount, cell, formula }) => ({
    name,
    sheet,
    top,
    left,
    headers,
    cells: Array.from({ length: rowCount }, (_, row) =>
      headers.map((_, column) => [
        cell(row, column) === "" ? null : cell(row, column),
        formula(row, column),
      ]),
    ),
  }));

/** Every entry of the record tables, by table. */
export const entries = (snapshot: Snapshot) =>
  Object.fromEntries(
    recordTables(snapshot).map(({ kind, table, rows }) => [
      table.name,
      rows.map((row) =>
        kind.columns.filter(({ role }) => role === "entry").map(({ id }) => row[id] ?? null),
      ),
    ]),
  );

/** Everything that a workbook of the stand-in holds, without ids, to be compared. */
export const state = (book: StandInBook) => {
  const { sheets, parts, properties } = book;
  return {
    properties: structuredClone(properties),
    parts: parts.map(({ xml }) => xml).sort(),
    // Cells and looks are most of it, and copied as they are listed.
    sheets: sheets
      .map(({ cells, looks, ...others }) => ({ cells, looks, ...structuredClone(others) }))
      .map((sheet) => ({
        name: sheet.name,
        cells: sheet.cells.map((row) =>
          row
            .slice(0, row.findLastIndex((box) => box !== undefined) + 1)
            .map((box) => box && [box.value === "" ? null : box.value, box.formula]),
        ),
        looks: Object.fromEntries(
          sheet.looks
            .map(({ area, property, value }): [string, unknown] => [
              `${property} ${JSON.stringify(area)}`,
              value,
            ])
            .sort(([one], [other]) => one.localeCompare(other)),
        ),
        names: sheet.names,
        tables: sheet.tables.map(({ id: _, ...table }) => table),
        formats: sheet.formats.map(({ id: _, ...format }) => format),
        validations: sheet.validations.map((validation) => JSON.stringify(validation)).sort(),
        merges: sheet.merges.map((area) => JSON.stringify(area)).sort(),
        hiddenRows: [...sheet.hiddenRows],
        hiddenColumns: [...sheet.hiddenColumns],
        filter: sheet.filter,
        frozen: sheet.frozen,
        properties: sheet.properties,
      })),
  };
};

/** Cells of one record table to be filled: row, column id, value. */
export function placed(
  snapshot: Snapshot,
  table: string,
  cells: readonly (readonly [row: number, column: string, value: CellValue])[],
): PlacedCell<RecordTable>[] {
  const found = recordTables(snapshot).find((one) => one.table.name === table);
  if (!found) throw new Error(`no record table ${table}`);
  return cells.map(([row, column, value]) => ({
    table: found,
    row,
    column,
    value,
    old: found.rows[row]?.[column] ?? null,
    source: { file: "invented.csv", line: row + 1 },
  }));
}
