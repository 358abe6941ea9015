import { isBlank } from "../records/kind";
import { type Arrival, type ArrivalOptions, arrivalsOf } from "./arrivals";
import { isSameCell } from "./isSameCell";
import type { PlacedCell, Placement, Unplaced } from "./placement";
import type { ExportTable } from "./readExport";
import type { RecordRows } from "./rowFinder";
import { type Settled, settle } from "./settle";

export interface PlaceOptions extends ArrivalOptions {
  /** Whether cells that hold something else may be written over. */
  readonly replace: boolean;
}

/**
 * Matches each line of an export with the row of a record table that it belongs to, and sorts its
 * cells into those to be placed, those there already, those that would overwrite, and those that
 * cannot be placed. Nothing is guessed.
 *
 * A line that would overwrite a cell is held back as a whole, so that no reading comes to stand
 * beside the conditions of another. Of two lines for one row that disagree, the later is taken where
 * both have date and time, else neither.
 *
 * @param tables the record tables as stored; those of a workbook's snapshot, or rows alone
 * @example placeReadings(exported, recordTables(snapshot), { replace: false }).placed
 */
export const placeReadings = <T extends RecordRows>(
  exported: ExportTable,
  tables: readonly T[],
  options: PlaceOptions,
): Placement<T> => {
  const placed: PlacedCell<T>[] = [];
  const same: PlacedCell<T>[] = [];
  const conflicts: PlacedCell<T>[] = [];
  const unplaced: Unplaced[] = [];
  const say = (line: number, reason: string) =>
    unplaced.push({ source: { file: exported.name, line }, reason });

  for (const group of byRow(arrivalsOf(exported, tables, options, say))) {
    const line = settle(group, say);
    if (line === undefined) continue;
    const cells = cellsOf(line, exported.name);
    const held = cells.filter(({ old }) => !isBlank(old));
    const alike = held.filter((cell) => isSame(cell));
    const against = held.filter((cell) => !isSame(cell));
    const fresh = cells.filter(({ old }) => isBlank(old));
    same.push(...alike);
    if (against.length > 0 && !options.replace) conflicts.push(...against);
    else if (fresh.length + against.length > 0)
      placed.push(...fresh, ...against, ...originCell(line, exported.name, against.length > 0));
  }
  unplaced.sort((one, other) => one.source.line - other.source.line);
  return { placed, same, conflicts, unplaced };
};

const byRow = <T extends RecordRows>(arrivals: readonly Arrival<T>[]): Iterable<Arrival<T>[]> => {
  const groups = new Map<T, Map<number, Arrival<T>[]>>();
  for (const arrival of arrivals) {
    const rows = groups.get(arrival.table) ?? new Map<number, Arrival<T>[]>();
    groups.set(arrival.table, rows);
    const sofar = rows.get(arrival.row);
    if (sofar) sofar.push(arrival);
    else rows.set(arrival.row, [arrival]);
  }
  return [...groups.values()].flatMap((rows) => [...rows.values()]);
};

const cellsOf = <T extends RecordRows>(
  { table, row, cells, line }: Settled<T>,
  file: string,
): PlacedCell<T>[] =>
  [...cells].map(([column, value]) => ({
    table,
    row,
    column,
    old: table.rows[row]?.[column] ?? null,
    value,
    source: { file, line },
  }));

const isSame = ({ old, value, table, column }: PlacedCell<RecordRows>) =>
  isSameCell(old, value, table.kind, column);

/** The origin column's new text. It keeps what it held, unless readings were written over. */
const originCell = <T extends RecordRows>(
  { table, row, line, lines }: Settled<T>,
  file: string,
  replaced: boolean,
): PlacedCell<T>[] => {
  const exists = table.at
    ? table.at.has("origin")
    : table.kind.columns.some(({ id }) => id === "origin");
  const old = table.rows[row]?.origin ?? null;
  const text = `${plainName(file)} line ${lines.join(", ")}`;
  if (!exists || (!isBlank(old) && String(old).split("; ").includes(text))) return [];
  const value = isBlank(old) || replaced ? text : `${old}; ${text}`;
  return [{ table, row, column: "origin", old, value, source: { file, line } }];
};

/** A file's name as a cell may hold it: one line that no spreadsheet takes for a formula. */
const plainName = (file: string): string =>
  file
    .replace(/[\p{Cc}\p{Cf}]+/gu, " ")
    .replace(/^[\s=+\-@|＝＋－＠]+/, "")
    .slice(0, 120) || "export";
