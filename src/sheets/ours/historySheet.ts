import type { CellValue, Column, Row } from "../../records/kind";
import type { CellWrite } from "../cells/cell";
import { isSameStored } from "../cells/cell";
import { appended } from "../plan/appended";
import type { PlannedSheet } from "../plan/plannedSheet";
import { asRecordTable } from "../recordTable";
import { type Snapshot, type TableSnapshot, tablesOf } from "../snapshot";

export const HISTORY_TABLE = "GearHistory";

export const HISTORY_COLUMNS: readonly Column[] = [
  { id: "sheet", header: "Sheet", role: "note", width: 16 },
  { id: "row", header: "Row", role: "note", width: 34 },
  { id: "column", header: "Column", role: "note", width: 18 },
  { id: "value", header: "Value", role: "note", width: 14 },
  { id: "date", header: "Date", role: "note", width: 12, format: "yyyy-mm-dd" },
  { id: "source", header: "Source", role: "note", width: 34 },
  { id: "replacedOn", header: "Replaced on", role: "note", width: 12, format: "yyyy-mm-dd" },
];

/** A value that stood on a record, or that a later reading of the same export came before. */
export type HistoryRow = {
  readonly sheet: string;
  /** The record's key cells in order. */
  readonly row: string;
  readonly column: string;
  readonly value: CellValue;
  /** Day and time of the test, where they are known. */
  readonly date: number | null;
  readonly source: string;
  readonly replacedOn: number;
};

/** Readings that others have taken the place of. Nothing is planned into it: it fills as work goes on. */
export const historySheet = (): PlannedSheet => ({
  // Excel keeps the name History for itself.
  sheet: "Reading history",
  table: HISTORY_TABLE,
  title: "History of readings",
  purpose:
    "Readings that later ones have taken the place of: repeats and retests of one export, and what was on a record before it was replaced.",
  cautions: [],
  columns: HISTORY_COLUMNS,
  rows: [],
});

const IDS = HISTORY_COLUMNS.map(({ id }) => id) as (keyof HistoryRow)[];
/** By these two entries are the same, whatever day they were replaced on. */
const TELLING = IDS.filter((id) => id !== "replacedOn" && id !== "date");

/** What writing to the history comes to: cells, and rows to add at the foot of its table. */
export interface HistoryWrites {
  readonly added: number;
  readonly writes: readonly CellWrite[];
  /** The entries that are new. */
  readonly rows: readonly HistoryRow[];
}

/**
 * Puts entries under those that the history holds; one that it holds already is not put there again.
 *
 * @param table the history as it stands; a new one where not given
 */
export function historyWrites(
  entries: readonly HistoryRow[],
  table: TableSnapshot | undefined,
): HistoryWrites {
  const stored = table ? rowsOf(table) : [];
  const seen = new Set(stored.map(textOf));
  const rows = entries.filter((entry) => {
    const text = textOf(entry);
    if (seen.has(text)) return false;
    seen.add(text);
    return true;
  });
  return { rows, ...appended(HISTORY_COLUMNS, rows, table) };
}

/** A new history sheet with its first entries. */
export const newHistory = ({ rows, writes }: HistoryWrites) => ({
  planned: { ...historySheet(), rows },
  writes,
});

/** The cells to blank so that these entries are taken out of the history again; each once. */
export function historyUnwrites(
  entries: readonly HistoryRow[],
  table: TableSnapshot,
): readonly CellWrite[] {
  const stored = rowsOf(table);
  const { at } = asRecordTable({ columns: HISTORY_COLUMNS }, table);
  const gone = new Set<number>();
  for (const entry of entries) {
    const row = stored.findLastIndex(
      (one, index) =>
        !gone.has(index) && IDS.every((id) => isSameStored(one[id] ?? null, entry[id])),
    );
    if (row >= 0) gone.add(row);
  }
  const left = stored.filter((row, index) => !gone.has(index) && !isEmpty(row));
  // What is left moves up, so that no gap stays.
  return stored.flatMap((before, row) =>
    IDS.flatMap((id): CellWrite[] => {
      const column = at.get(id);
      const value = left[row]?.[id] ?? null;
      return column === undefined || isSameStored(before[id] ?? null, value)
        ? []
        : [{ row, column, value }];
    }),
  );
}

type Stored = Readonly<Record<string, CellValue>>;

/** What the history of a workbook holds, in its order; nothing where there is none. */
export const historyOf = (snapshot: Snapshot): readonly Row[] =>
  tablesOf(snapshot)
    .filter(({ name }) => name === HISTORY_TABLE)
    .flatMap(rowsOf)
    .filter((row) => !isEmpty(row));

const rowsOf = (table: TableSnapshot): readonly Stored[] =>
  asRecordTable({ columns: HISTORY_COLUMNS }, table).rows;
const textOf = (row: Stored | HistoryRow) =>
  JSON.stringify(TELLING.map((id) => String(row[id] ?? "")));
const isEmpty = (row: Stored | undefined) => IDS.every((id) => (row?.[id] ?? "") === "");
