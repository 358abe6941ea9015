import type { Said } from "../messages/reasons";
import type { Told } from "../messages/told";
import { keyIds, rowKey } from "../records/kind";
import { isSameStored } from "../sheets/cells/cell";
import type { LastIntake } from "../sheets/kept/lastIntake";
import { withoutPlacedReadings, withPlacedReadings } from "../sheets/kept/placedReadings";
import type { Remembered } from "../sheets/kept/remembered";
import type { HistoryRow } from "../sheets/ours/historySheet";
import { historyPlace } from "./historyRows";
import type { PlacedCell } from "./place/placement";
import type { RecordRows } from "./rows/recordRows";

/** A table as far as taking back needs it: its name, and its rows by column id. */
export interface NamedRows extends RecordRows {
  readonly table: { readonly name: string };
}

/** What taking back the last intake comes to. */
export interface Undone<T extends NamedRows> {
  /** Cells to write, each with what it held before. */
  readonly cells: readonly PlacedCell<T>[];
  /** Cells that were changed since, whose record is gone, or whose table is; they stay as they are. */
  readonly refused: readonly {
    readonly cell: LastIntake["cells"][number];
    readonly reason: Said<Told>;
  }[];
  /** Entries of the history to take out with it; those of cells that stay remain. */
  readonly history: LastIntake["history"];
}

/** What an intake is remembered by. */
export const rememberIntake = <T extends NamedRows>(
  placed: readonly PlacedCell<T>[],
  history: LastIntake["history"],
  files: readonly string[],
  on: number,
): LastIntake => {
  const cells = new Map<string, LastIntake["cells"][number]>();
  for (const { table, row, column, old, value } of placed) {
    const place = JSON.stringify([table.table.name, row, column]);
    // Of two files that wrote the same cell, what it held before the first.
    const held = cells.get(place)?.old ?? old;
    const key = rowKey(table.rows[row] ?? {}, keyIds(table.kind));
    cells.set(place, { table: table.table.name, key, row, column, old: held, value });
  }
  return { on, files: [...files], cells: [...cells.values()], history: [...history] };
};

/**
 * What is remembered with one more intake; the last one is then the one before it. An intake that comes
 * to nothing is not remembered. Of a last one whose cells all hold again, or still, what they held before
 * it, only the entries in the history are left, and go with the new one.
 */
export const withIntake = (
  remembered: Remembered,
  intake: LastIntake,
  tables: readonly NamedRows[],
): Remembered => {
  if (intake.cells.length + intake.history.length === 0) return remembered;
  const { last } = remembered;
  const placed = withPlacedReadings(remembered.placed, intake.cells, tables);
  if (last && stands(undoIntake(last, tables)))
    return { ...remembered, placed, last: intake, before: last };
  const history = [...(last?.history ?? []), ...intake.history];
  return { ...remembered, placed, last: { ...intake, history } };
};

const stands = ({ cells, refused }: Undone<NamedRows>) => cells.length + refused.length > 0;

/** What is remembered when the last intake is taken back; the one before it is then the last. */
export const withoutIntake = ({ last, before, placed, ...others }: Remembered): Remembered => {
  const left = placed && withoutPlacedReadings(placed, last?.cells ?? []);
  return { ...others, ...(left && { placed: left }), ...(before && { last: before }) };
};

/**
 * The entries of the history but those of cells that stay.
 *
 * @param stay each cell as the history names it; its record alone where its table is gone
 */
export const historyWithout = (
  history: LastIntake["history"],
  stay: readonly HistoryPlace[],
): LastIntake["history"] => {
  const name = ({ sheet, row, column }: HistoryPlace) => JSON.stringify([sheet, row, column]);
  const kept = new Set(stay.map(name));
  return history.filter((entry) => !kept.has(name(entry)) && !kept.has(name({ row: entry.row })));
};

type HistoryPlace = Partial<HistoryRow> & Pick<HistoryRow, "row">;

/**
 * The last intake taken back: every cell that still holds what the intake wrote gets what it held
 * before; one that holds that already is left. A cell that was changed since is refused.
 */
export const undoIntake = <T extends NamedRows>(
  last: LastIntake,
  tables: readonly T[],
): Undone<T> => {
  const byName = new Map(
    tables.map((table) => [table.table.name, { table, rows: rowsByKey(table) }]),
  );
  const cells: PlacedCell<T>[] = [];
  const refused: Undone<T>["refused"][number][] = [];
  const stay: HistoryPlace[] = [];
  const refuse = (cell: LastIntake["cells"][number], place: HistoryPlace, reason: Said<Told>) => {
    stay.push(place);
    refused.push({ cell, reason });
  };
  for (const cell of last.cells) {
    const { table, rows } = byName.get(cell.table) ?? {};
    const row = rowNow(cell, rows?.get(cell.key) ?? []);
    if (!table || row === undefined) {
      refuse(cell, { row: cell.key }, ({ intake }) =>
        intake.undo.gone(cell.key, table !== undefined),
      );
      continue;
    }
    const now = table.rows[row]?.[cell.column] ?? null;
    const source = { file: last.files[0] ?? "", line: 0 };
    if (isSameStored(now, cell.value))
      cells.push({ table, row, column: cell.column, old: now, value: cell.old, source });
    else if (!isSameStored(now, cell.old)) {
      const place = historyPlace(table, row, cell.column);
      refuse(cell, place, ({ intake }) =>
        intake.undo.changed(
          cell.key,
          place.column ?? "",
          JSON.stringify(now),
          JSON.stringify(cell.value),
        ),
      );
    }
  }
  const own = ownEntries(last, tables);
  return { cells, refused, history: historyWithout(own, stay) };
};

/**
 * The entries of the history that go with an intake: those of cells that it wrote. It may have others with it,
 * of an intake that seemed to have come to nothing while it was still at work; such an entry goes where its
 * value stands on its record, else it would be nowhere.
 */
function ownEntries(
  { cells, history }: LastIntake,
  tables: readonly NamedRows[],
): LastIntake["history"] {
  const name = (sheet: string, row: string, column: string) => JSON.stringify([sheet, row, column]);
  const written = new Set(
    cells.flatMap(({ table, key, column }) => {
      const kind = tables.find((one) => one.table.name === table)?.kind;
      return kind ? [name(kind.sheet, key, headerOf(kind, column))] : [];
    }),
  );
  const lost = new Set(cells.map(({ key }) => key));
  return history.filter(({ sheet, row, column, value }) => {
    if (written.has(name(sheet, row, column))) return true;
    const of = tables.filter(({ kind }) => kind.sheet === sheet);
    if (of.length === 0) return lost.has(row);
    return of.some((table) =>
      (rowsByKey(table).get(row) ?? []).some((at) =>
        table.kind.columns.some(
          ({ id, header }) =>
            header === column && isSameStored(table.rows[at]?.[id] ?? null, value),
        ),
      ),
    );
  });
}

const headerOf = ({ columns }: RecordRows["kind"], id: string): string =>
  columns.find((column) => column.id === id)?.header ?? id;

/** The row that a record stands on now: the one where it stood, or the only one of its name. */
const rowNow = (
  { row }: LastIntake["cells"][number],
  ofName: readonly number[],
): number | undefined => (ofName.includes(row) ? row : ofName.length === 1 ? ofName[0] : undefined);

const rowsByKey = ({ kind, rows }: RecordRows): ReadonlyMap<string, number[]> => {
  const ids = keyIds(kind);
  const byKey = new Map<string, number[]>();
  rows.forEach((row, index) => {
    const key = rowKey(row, ids);
    const sofar = byKey.get(key);
    if (sofar) sofar.push(index);
    else byKey.set(key, [index]);
  });
  return byKey;
};
