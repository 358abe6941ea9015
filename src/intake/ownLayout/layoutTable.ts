import { convert } from "../../quantities/convert";
import { writeReading } from "../../quantities/reading/writeReading";
import type { Unit } from "../../quantities/units";
import type { CellValue, RecordKind, Row } from "../../records/kind";
import { type Area, areaAddress } from "../../sheets/cells/area";
import { takesCell } from "../../sheets/cells/takesCell";
import type { LayoutMap } from "../../sheets/kept/layoutMap";
import type { RecordTable } from "../../sheets/recordTable";
import type { OwnLayout, SheetCells, TableSnapshot } from "../../sheets/snapshot";
import type { LayoutRecord } from "./layoutRecord";
import { valuesIn } from "./tellers";

/** The records of a block as a record table whose cells lie where the layout has them. */
export const layoutTable = (
  map: LayoutMap,
  kind: RecordKind,
  records: readonly LayoutRecord[],
  cells: SheetCells,
): RecordTable => {
  const left = (map.left ?? 1) - 1;
  const ids = kind.columns
    .filter(({ id, role }) => role === "key" || records.some(({ places }) => places.has(id)))
    .map(({ id }) => id);
  const headers = ids.map((id) => kind.columns.find((column) => column.id === id)?.header ?? id);
  const rows = records.map(({ key, values }): Row => ({ ...key, ...Object.fromEntries(values) }));
  const hidden = cells.hidden;
  const placeOf = (row: number, column: number) => records[row]?.places.get(ids[column] ?? "");
  const table: TableSnapshot = {
    name: `${map.sheet} row ${map.titles} column ${left + 1}`,
    sheet: map.sheet,
    top: map.titles - 1,
    left,
    headers,
    rowCount: rows.length,
    hidden:
      hidden && new Set(records.flatMap(({ row }, index) => (hidden.has(row) ? [index] : []))),
    cell: (row, column) => rows[row]?.[ids[column] ?? ""] ?? null,
    formula: (row, column) => {
      const place = placeOf(row, column);
      return place && cells.formula(place.row, place.column);
    },
    ownLayout: ownLayoutOf(kind, ids, records, cells),
  };
  return { kind, table, at: new Map(ids.map((id, index) => [id, index])), rows };
};

/** Where the records' cells lie, by the ids of the table's columns. */
const ownLayoutOf = (
  kind: RecordKind,
  ids: readonly string[],
  records: readonly LayoutRecord[],
  cells: SheetCells,
): OwnLayout => {
  const place = (row: number, column: number) => records[row]?.places.get(ids[column] ?? "");
  return {
    place: (row, column) => {
      const named = place(row, column) ?? standIn(kind, records[row]);
      return named && { row: named.row, column: named.column };
    },
    holds: (row, column) => {
      const own = place(row, column);
      return own && { row: own.row, column: own.column, value: cells.cell(own.row, own.column) };
    },
    stated: (row) =>
      new Map(
        [...(records[row]?.stated ?? [])].map(([id, stated]) => [
          id,
          { ...stated, formula: cells.formula(stated.row, stated.column) },
        ]),
      ),
    takenBy: (row, column) => {
      const own = place(row, column);
      return own ? formulasTaking(own, cells) : [];
    },
    toldBy: (row) =>
      distinct(records[row]?.tellers ?? []).map((area) => ({
        area,
        values: valuesIn(area, cells),
      })),
    written: (row, column, value) =>
      asThere(
        value,
        kind.columns.find(({ id }) => id === ids[column])?.unit,
        place(row, column)?.unit,
      ),
  };
};

/** Areas once each. */
const distinct = (areas: readonly Area[]): Area[] => [
  ...new Map(areas.map((area) => [areaAddress(area), area])).values(),
];

/** What has no cell of its own, such as a result, is named by the reading that it comes from. */
const standIn = ({ columns }: RecordKind, record: LayoutRecord | undefined) => {
  const places = record?.places;
  const reading = columns.find(({ id, need }) => need === "reading" && places?.has(id));
  return places?.get(reading?.id ?? "") ?? [...(places?.values() ?? [])][0];
};

/** The layout's own formulas in the row of a cell that take it. */
const formulasTaking = (
  { row, column }: { readonly row: number; readonly column: number },
  cells: SheetCells,
) =>
  Array.from({ length: cells.columnCount }, (_, other) => other).flatMap((other) => {
    const formula = cells.formula(row, other);
    return formula !== undefined && takesCell(formula, row, column)
      ? [{ row, column: other, formula }]
      : [];
  });

/** A value in the unit of the layout's column, or with its own unit where that names none. */
const asThere = (value: CellValue, unit: Unit | undefined, there: Unit | undefined): CellValue => {
  if (typeof value !== "number" || unit === undefined || unit === there) return value;
  if (there === undefined) return writeReading({ value, unit, bound: "exact", text: "" });
  const converted = convert(value, unit, there);
  return converted.ok ? converted.value : value;
};
