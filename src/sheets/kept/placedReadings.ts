import * as z from "zod/mini";
import { type CellValue, keyIds, type RecordKind, type Row, rowKey } from "../../records/kind";
import type { LastIntake } from "./lastIntake";

/** What exports said, by table, by the record's key cells, by column id: the entries as they were brought in. */
export const placedReadings = z.record(
  z.string(),
  z.record(
    z.string(),
    z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()])),
  ),
);
export type PlacedReadings = z.infer<typeof placedReadings>;
type PlacedRow = PlacedReadings[string][string];

type Tables = readonly {
  readonly kind: RecordKind;
  readonly table: { readonly name: string };
}[];

/** What exports have said, with what one more said; notes such as the origin are no reading. */
export const withPlacedReadings = (
  before: PlacedReadings = {},
  cells: LastIntake["cells"],
  tables: Tables,
): PlacedReadings => {
  const placed = new Map(
    Object.entries(before).map(([table, rows]) => [table, new Map(Object.entries(rows))]),
  );
  const kinds = new Map(tables.map(({ kind, table }) => [table.name, kind]));
  for (const { table, key, column, value } of cells) {
    const role = kinds.get(table)?.columns.find(({ id }) => id === column)?.role;
    if (role !== "entry") continue;
    const rows = placed.get(table) ?? new Map<string, PlacedRow>();
    placed.set(table, rows.set(key, { ...rows.get(key), [column]: value }));
  }
  return Object.fromEntries([...placed].map(([table, rows]) => [table, Object.fromEntries(rows)]));
};

/** What exports have said but for some cells, of which an intake was taken back. */
export const withoutPlacedReadings = (
  placed: PlacedReadings,
  cells: LastIntake["cells"],
): PlacedReadings | undefined => {
  const gone = new Set(cells.map(({ table, key, column }) => JSON.stringify([table, key, column])));
  return kept(placed, (rows, table) =>
    kept(rows, (row, key) =>
      kept(row, (cell, column) =>
        gone.has(JSON.stringify([table, key, column])) ? undefined : cell,
      ),
    ),
  );
};

/** The entries of an object that something is left of; undefined where none is. */
function kept<T>(
  from: Readonly<Record<string, T>>,
  left: (value: T, key: string) => T | undefined,
): Record<string, T> | undefined {
  const entries = Object.entries(from).flatMap(([key, value]): [string, T][] => {
    const rest = left(value, key);
    return rest === undefined ? [] : [[key, rest]];
  });
  return entries.length === 0 ? undefined : Object.fromEntries(entries);
}

/** What an export said of a row, by column id; undefined where none did. */
export const placedOn = (
  placed: PlacedReadings | undefined,
  { kind, table }: Tables[number],
  row: Row,
): Readonly<Record<string, CellValue>> | undefined => {
  const rows = placed && Object.hasOwn(placed, table.name) ? placed[table.name] : undefined;
  const key = rowKey(row, keyIds(kind));
  return rows && Object.hasOwn(rows, key) ? rows[key] : undefined;
};
