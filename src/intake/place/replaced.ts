import type { Told } from "../../messages/told";
import { type CellValue, type Column, isBlank } from "../../records/kind";
import { isSameReading } from "../cells/isSameReading";
import type { RecordRows } from "../rows/recordRows";
import type { Say } from "./arrival";
import { isReading, plainName, shownIn } from "./lineCells";
import type { Kept, PlacedCell } from "./placement";
import type { Repeated, Settled } from "./resolveRepeats";
import { staleCells } from "./staleCells";

/** What the history keeps of a cell. */
export const keptOf = <T extends RecordRows>(
  { table, row, column, source }: PlacedCell<T>,
  value: CellValue,
  when: number | undefined,
): Kept<T> => ({
  table,
  row,
  column,
  value,
  when,
  source: `${plainName(source.file)} line ${source.line}`,
});

/** What stood on the record before. */
export const replacedBy = <T extends RecordRows>(cell: PlacedCell<T>): Kept<T> => {
  const stored = cell.table.rows[cell.row];
  const day = stored?.date;
  return {
    ...keptOf(cell, cell.old, typeof day === "number" ? day : undefined),
    source: isBlank(stored?.origin) ? "typed" : String(stored?.origin),
  };
};

/** What an earlier line of the same export says otherwise than the one that is taken. */
export const repeats = <T extends RecordRows>(
  earlier: Repeated<T>,
  taken: Settled<T>,
  file: string,
): Kept<T>[] => {
  const now = new Map(taken.cells);
  return earlier.cells.flatMap(([column, value]) =>
    column === "date" || isSameReading(value, now.get(column) ?? null, taken.table.kind, column)
      ? []
      : [
          {
            table: earlier.table,
            row: earlier.row,
            column,
            value,
            when: earlier.when,
            source: `${plainName(file)} line ${earlier.line}`,
          },
        ],
  );
};

/** Where a reading is replaced, the cells to blank that are of the test before; and what is to be known of it. */
export const staleOf = <T extends RecordRows>(
  line: Settled<T>,
  against: readonly PlacedCell<T>[],
  file: string,
  say: Say,
): PlacedCell<T>[] => {
  const { table, row } = line;
  if (!against.some(isReading)) return [];
  const given = new Set(line.cells.map(([column]) => column));
  const { gone, left } = staleCells(table, row, given, line.day);
  const stored = table.rows[row] ?? {};
  const named = (some: readonly Column[], { intake }: Told) =>
    some.map(({ header, id, accepts }) =>
      intake.place.valueOf(header, shownIn(stored[id], accepts)),
    );
  if (gone.length > 0) say(line.line, (text) => text.intake.place.gone(named(gone, text)));
  for (const why of ["same day", "other rows"] as const) {
    const stays = left.flatMap((one) => (one.why === why ? one.column : []));
    if (stays.length > 0)
      say(line.line, (text) => text.intake.place.stays(named(stays, text), why));
  }
  return gone.map(({ id }) => ({
    table,
    row,
    column: id,
    old: stored[id] ?? null,
    value: null,
    source: { file, line: line.line },
  }));
};
