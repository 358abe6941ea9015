import { NO_ANSWERS, type TakenExport, takeIn } from "../intake/takeIn";
import { serialDay } from "../quantities/dates";
import { type CellValue, isBlank, keyIds, rowKey } from "../records/kind";
import { cellAddress } from "../sheets/cells/address";
import { historyOf } from "../sheets/ours/historySheet";
import type { RecordBook } from "../sheets/recordBook";
import type { RecordTable } from "../sheets/recordTable";
import type { Content } from "./content";
import { exportLines } from "./exportsOf";

/** A reading that a record holds otherwise than the export that it was brought in from. */
export interface Unlike {
  readonly name: string;
  /** Line of the export, from 1. */
  readonly line: number;
  readonly sheet: string;
  /** The cell of the record; that of its present reading, where an earlier one is meant. */
  readonly address: string;
  readonly row: string;
  /** Header of the column. */
  readonly column: string;
  readonly said: string;
  readonly held: string;
  /** True where the reading history has it, another reading having taken its place since. */
  readonly isEarlier: boolean;
}

export interface ComparedExport {
  readonly unlike: readonly Unlike[];
  /** Rows that name this export and that nothing was read for; all of them where it cannot be read. */
  readonly notRead: number;
}

type Taken = TakenExport["placement"];
type Told = Pick<Taken["placed"][number], "table" | "row" | "column"> & {
  readonly said: CellValue;
  readonly line: number;
};

/**
 * Reads an export again, as the workbook remembers to read it, and compares each reading with the records
 * that name it as their origin, and with the readings of it that the history keeps.
 *
 * @param today serial day
 */
export function compareExport(
  book: RecordBook,
  name: string,
  content: Uint8Array,
  today: number,
): ComparedExport {
  const named = book.tables.map((table) => ({ table, rows: rowsFrom(table, name) }));
  const all = named.reduce((sum, { rows }) => sum + rows.size, 0);
  const intake = takeIn(book, [{ name, content }], NO_ANSWERS, today);
  const [taken] = intake.ok ? intake.taken : [];
  if (!taken) return { unlike: [], notRead: all };
  const { placed, same, conflicts, kept } = taken.placement;
  const isOfExport = ({ table, row }: Told) =>
    named.some((one) => one.table === table && one.rows.has(row));
  const read = [...placed, ...same, ...conflicts]
    .filter(({ table, column }) => roleOf(table, column) === "entry")
    .map((cell): Told => ({ ...cell, said: cell.value, line: cell.source.line }));
  const compared = new Set(
    read.filter(isOfExport).map(({ table, row }) => `${table.table.name} ${row}`),
  );
  const alike = new Set(same.map(placeOf));
  const other = read.filter((cell) => isOfExport(cell) && !alike.has(placeOf(cell)));
  const earlier = kept.map(
    (cell): Told => ({
      ...cell,
      said: cell.value,
      line: exportLines(cell.source)?.[0]?.lines[0] ?? 0,
    }),
  );
  return {
    unlike: [
      ...other.map((cell) => unlike(name, cell, cell.table.rows[cell.row]?.[cell.column] ?? null)),
      ...inHistory(book, name, [...read, ...earlier]),
    ],
    notRead: all - compared.size,
  };
}

/** Whether a hand-over tells of such a difference itself. */
export const isKnown = (
  { findings }: Pick<Content, "findings">,
  { sheet, address, isEarlier }: Unlike,
): boolean =>
  !isEarlier &&
  findings.some(
    (one) => one.rule === "changed-since-intake" && one.sheet === sheet && one.address === address,
  );

/** Rows of a table that say they were brought in from an export. */
const rowsFrom = ({ rows }: RecordTable, name: string): ReadonlySet<number> =>
  new Set(
    rows.flatMap(({ origin }, at) =>
      (exportLines(String(origin ?? "")) ?? []).some((one) => one.name === name) ? [at] : [],
    ),
  );

const columnOf = ({ kind }: RecordTable, id: string) =>
  kind.columns.find((column) => column.id === id);
const roleOf = (table: RecordTable, id: string) => columnOf(table, id)?.role;

const placeOf = ({ table, row, column }: Pick<Told, "table" | "row" | "column">): string =>
  JSON.stringify([table.table.name, row, column]);

/** Readings of an export that the history keeps otherwise than the export has them. */
function inHistory(book: RecordBook, name: string, told: readonly Told[]): Unlike[] {
  const byPlace = new Map(told.map((cell) => [historyKey(cell), cell]));
  return historyOf(book.snapshot).flatMap(({ sheet, row, column, value = null, source }) =>
    (exportLines(String(source ?? "")) ?? [])
      .filter((one) => one.name === name)
      .flatMap(({ lines }) => lines)
      .flatMap((line) => {
        const cell = byPlace.get(JSON.stringify([sheet, row, column, line]));
        return !cell || String(cell.said) === String(value)
          ? []
          : [{ ...unlike(name, cell, value), isEarlier: true }];
      }),
  );
}

const historyKey = ({ table, row, column, line }: Told): string =>
  JSON.stringify([
    table.kind.sheet,
    rowKey(table.rows[row] ?? {}, keyIds(table.kind)),
    columnOf(table, column)?.header ?? column,
    line,
  ]);

function unlike(name: string, { table, row, column, said, line }: Told, held: CellValue): Unlike {
  const known = columnOf(table, column);
  const shown = (value: CellValue) =>
    known?.accepts?.type === "date" && typeof value === "number"
      ? serialDay(Math.floor(value))
      : isBlank(value)
        ? ""
        : String(value);
  return {
    name,
    line,
    sheet: table.table.sheet,
    address: cellAddress(table.table, row, table.at.get(column) ?? 0),
    row: rowKey(table.rows[row] ?? {}, keyIds(table.kind)),
    column: known?.header ?? column,
    said: shown(said),
    held: shown(held),
    isEarlier: false,
  };
}
