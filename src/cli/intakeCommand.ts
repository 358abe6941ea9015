import { basename } from "node:path";
import * as z from "zod";
import { placeReadings } from "../intake/place";
import type { PlacedCell, Placement } from "../intake/placement";
import { type ExportTable, readExport } from "../intake/readExport";
import { serialDay } from "../quantities/dates";
import type { CellValue } from "../records/kind";
import { instrumentsOf } from "../sheets/instrumentSheet";
import { lineupOfSheets } from "../sheets/lineupOfSheets";
import { type RecordTable, recordTables } from "../sheets/recordTable";
import { filled, refill } from "../sheets/refill";
import { readBook, writeCells } from "../workbook/file";
import { named, readBytes, readText, UsageError, writeWhole } from "./files";

type Placed = Placement<RecordTable>;

/** One export with what became of it. */
export interface Taken {
  readonly file: string;
  readonly table: ExportTable;
  readonly placement: Placed;
}

const MARKS = { point: ".", comma: "," } as const;

export interface IntakeOptions {
  readonly replace: boolean;
  readonly decimal?: keyof typeof MARKS;
  /** A JSON file: an object of column title and field. */
  readonly columns?: string;
}

/** What columns mean, from a JSON file. */
function readMapping(file: string): Record<string, string> {
  try {
    return z.record(z.string(), z.string()).parse(JSON.parse(readText(file)));
  } catch (error) {
    if (error instanceof UsageError) throw error;
    throw new UsageError(
      `${file}: is not an object of column title and field, such as {"R1": "reading"}`,
    );
  }
}

/** Places the readings of exports into a workbook and writes it anew; the input stays as it is. */
export async function takeIn(
  book: string,
  exports: readonly string[],
  out: string,
  { replace, decimal, columns }: IntakeOptions,
): Promise<Taken[]> {
  const mapping = columns === undefined ? undefined : readMapping(columns);
  const bytes = readBytes(book);
  const snapshot = await named(book, () => readBook(bytes));
  const lineup = snapshot.lineup ?? lineupOfSheets(snapshot);
  const originals = recordTables(snapshot);
  if (originals.length === 0 || !lineup)
    throw new UsageError(
      `${book}: has no record tables to place readings in; build them first (gearproof lineup LINEUP.json -o ${book})`,
    );
  const instruments = [...(instrumentsOf(snapshot)?.values() ?? [])];
  let tables = originals;
  const cells: PlacedCell<RecordTable>[] = [];
  const taken = exports.map((file): Taken => {
    const read = readExport(readText(file), {
      name: basename(file),
      mapping,
      decimal: decimal && MARKS[decimal],
    });
    if (!read.ok) throw new UsageError(`${file}: ${read.reason}`);
    const placement = placeReadings(read.value, tables, {
      replace,
      instruments,
      wave: lineup.withstand.wave,
    });
    cells.push(...placement.placed);
    tables = tables.map((table) => ({
      ...table,
      rows: filled(
        table.rows,
        placement.placed.filter((cell) => cell.table.table === table.table),
      ),
    }));
    return { file, table: read.value, placement };
  });
  const changes = originals.map((table) => ({
    table: table.table,
    writes: refill(
      table,
      cells.filter((cell) => cell.table.table === table.table),
      lineup,
    ),
  }));
  if (taken.every(({ placement }) => placement.placed.length + placement.same.length === 0))
    throw new UsageError(
      `${taken.map(takenWords).join("\n")}\nNothing could be placed, so ${out} was not written.`,
    );
  writeWhole(out, await named(book, () => writeCells(bytes, changes)));
  return taken;
}

/** What became of an export, in lines for people. */
export function takenWords({ file, table, placement }: Taken): string {
  const { placed, same, conflicts, unplaced } = placement;
  const rows = new Set(placed.map((cell) => `${cell.table.table.name}:${cell.row}`)).size;
  const list = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : [`  ${title}:`, ...lines.map((line) => `    ${line}`)];
  return [
    `${file}: ${table.rows.length} lines; ${placed.length} cells placed on ${rows} rows, ${same.length} already there, ${conflicts.length} would overwrite, ${unplaced.length} not placed.`,
    `  Decimal mark: ${table.decimal.evidence}`,
    ...list(
      "Columns not recognised and left out (say what they mean with --columns)",
      table.columns.filter(({ field }) => field === undefined).map(({ title }) => `"${title}"`),
    ),
    ...list(
      "Would overwrite, held back (take them with --replace)",
      conflicts.map(
        (cell) =>
          `line ${cell.source.line}: ${cell.table.kind.sheet} ${header(cell)}: ${shown(cell, cell.old)} in the workbook, ${shown(cell, cell.value)} in the export`,
      ),
    ),
    ...list(
      "Not placed",
      unplaced.map(({ source, reason }) => `line ${source.line}: ${reason}`),
    ),
  ].join("\n");
}

/** A cell as people write it: a day where the column holds days. */
const shown = ({ table, column }: PlacedCell<RecordTable>, value: CellValue) =>
  typeof value === "number" &&
  table.kind.columns.find(({ id }) => id === column)?.accepts?.type === "date"
    ? serialDay(value)
    : String(value);

const header = ({ table, row, column }: PlacedCell<RecordTable>) => {
  const keys = table.kind.columns.filter(({ role }) => role === "key");
  const name = keys.map(({ id }) => table.rows[row]?.[id] ?? "").join(" · ");
  return `${name}, "${table.kind.columns.find(({ id }) => id === column)?.header ?? column}"`;
};
