import type { Lineup } from "../../lineup/lineup";
import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { readUnit } from "../../quantities/reading/readUnit";
import type { Unit } from "../../quantities/units";
import type { CellValue, Column, RecordKind, Row } from "../../records/kind";
import type { Area } from "../../sheets/cells/area";
import type { Stated } from "../../sheets/snapshot";
import { inRowUnit } from "../cells/inRowUnit";
import { isSameReading } from "../cells/isSameReading";
import { byColumn, onlyOne, readCell } from "../cells/readCell";
import { withoutComment } from "../cells/splitComment";
import type { EachRow, ExportTable } from "../table/exportTable";
import type { Written } from "../table/written";
import { columnFor } from "../words/columnFor";
import { isStated, statedColumn, statedResult } from "../words/statedColumns";
import type { joinedTo } from "./sheetRows";

/** A record of a block: its keys, its values by column id, and where each stands. */
export interface LayoutRecord {
  readonly key: Row;
  readonly values: Map<string, CellValue>;
  readonly places: Map<string, LayoutPlace>;
  readonly stated: Map<string, Stated>;
  /** Sheet row that the record stands on, from 0. */
  readonly row: number;
  /** Cells that tell which record it is: its names, and the titles of its block. */
  readonly tellers: Area[];
}

/** A cell of the sheet, from 0, and its unit. */
export interface LayoutPlace {
  readonly row: number;
  readonly column: number;
  readonly unit?: Unit;
}

/** A line of a block, the record of the lineup that it is of, and what it is read by. */
export interface LineReading {
  readonly key: Row;
  readonly kind: RecordKind;
  readonly each: EachRow;
  readonly written: ReadonlyMap<string, Written>;
  readonly table: ExportTable;
  /** First column of the block, from 0. */
  readonly left: number;
  readonly joins: ReturnType<typeof joinedTo>;
  readonly lineup: Lineup;
  /** Cells that tell which record the line is. */
  readonly tellers: readonly Area[];
  readonly problem: (row: number, column: number, message: Said<Told>) => void;
}

/** Reads a line of a block as a record; what cannot be read stands as it is written. */
export const layoutRecord = (line: LineReading): LayoutRecord => {
  const { key, kind, each, written } = line;
  const record: LayoutRecord = {
    key,
    values: new Map(),
    places: placesIn(line),
    stated: statedOf(line),
    row: each.row.line - 1,
    tellers: [...line.tellers],
  };
  for (const [column, candidates] of byColumn({ kind, rows: [] }, written, columnFor))
    readInto(record, line, inRowUnit(column, key), candidates);
  tellUnits(line);
  return record;
};

const indexOf = ({ each: { row } }: LineReading, index: number) => row.from?.[index] ?? index;

/** The unit of a cell: that of its column, or that of its line. */
const unitOf = (
  line: LineReading,
  index: number,
  unit: Unit | undefined,
  expected: Unit | undefined,
): Unit | undefined => {
  const beside = readUnit(line.each.row.units?.get(indexOf(line, index)) ?? "", expected);
  return beside.ok ? beside.value : unit;
};

/** Where a cell of the line is written: in its own row, or in that of the cell it is joined to. */
const placeOf = (line: LineReading, index: number, unit: Unit | undefined): LayoutPlace => {
  const row = line.each.row.line - 1;
  const column = line.left + indexOf(line, index);
  return { row: line.joins.get(row)?.get(column) ?? row, column, unit };
};

/** Where the line has a cell for each column of the kind, blank ones too. */
const placesIn = (line: LineReading): Map<string, LayoutPlace> => {
  const { kind, each } = line;
  const places = new Map<string, LayoutPlace>();
  for (const { field, index, unit } of each.block.columns) {
    const column =
      field === undefined
        ? undefined
        : (columnFor(kind, field) ??
          kind.columns.find(({ id, role }) => id === field && role === "key"));
    if (column && indexOf(line, index) >= 0)
      places.set(column.id, placeOf(line, index, unitOf(line, index, unit, column.unit)));
  }
  return places;
};

/** Reads the cell for a column into the record, and tells what is to be known of it. */
const readInto = (
  { values, places }: LayoutRecord,
  line: LineReading,
  column: Column,
  candidates: readonly Written[],
): void => {
  const { table, left, lineup, problem } = line;
  const row = line.each.row.line;
  const given = onlyOne(column, candidates, lineup.instruments);
  if (!given.ok) {
    problem(row - 1, left, given.say);
    return;
  }
  const { index, unit, text } = given.value;
  if (index !== undefined)
    places.set(column.id, placeOf(line, index, unitOf(line, index, unit, column.unit)));
  const place = places.get(column.id);
  // A reading is of one record; joined over several rows it is that of the first.
  if (column.need === "reading" && place && place.row < row - 1) {
    places.delete(column.id);
    problem(place.row, place.column, ({ intake }) => intake.layout.joined(place.row + 1, row));
    return;
  }
  const { value, comment } = withoutComment(text, column, (number) =>
    readCell({ ...given.value, text: number }, column, table, table.dates, lineup.withstand.wave),
  );
  // What cannot be read stands as it is written, for the check to say so at its cell.
  values.set(column.id, value.ok ? value.value : text);
  if (comment)
    problem(row - 1, place?.column ?? left, ({ intake }) => intake.layout.comment(text, comment));
  if (!value.ok && column.need !== "reading" && column.accepts?.type === "date")
    problem(row - 1, place?.column ?? left, value.say);
};

/** Tells units in a column of their own that are none. */
const tellUnits = (line: LineReading): void => {
  const { kind, each, left, problem } = line;
  for (const { field, index } of each.block.columns) {
    const unit = field === "unit" ? (each.row.cells[index] ?? "") : "";
    const known = readUnit(unit, kind.columns.find(({ id }) => id === "reading")?.unit);
    if (unit !== "" && !known.ok)
      problem(each.row.line - 1, left + indexOf(line, index), known.say);
  }
};

/** What the layout states of a record itself, in the units of the kind's columns. */
const statedOf = (line: LineReading): Map<string, Stated> =>
  new Map(
    [...line.written.values()].flatMap((written): [string, Stated][] => {
      const column = isStated(written.field) ? statedColumn(line.kind, written.field) : undefined;
      if (column === undefined || written.index === undefined) return [];
      const value = statedValue(written, column, line.table);
      if (value === undefined) return [];
      const place = placeOf(line, written.index, written.unit);
      return [[column.id, { value, row: place.row, column: place.column }]];
    }),
  );

const statedValue = (
  written: Written,
  column: Column,
  table: ExportTable,
): Stated["value"] | undefined => {
  if (column.role === "result") return statedResult(written.text);
  const read = readCell(
    column.unit === undefined ? { ...written, unit: written.unit ?? "%" } : written,
    // An error goes both ways; nothing else that is stated is below zero.
    {
      ...column,
      unit: column.unit ?? "%",
      accepts: { type: written.field === "error" ? "number" : "reading" },
    },
    table,
    undefined,
    undefined,
  );
  return read.ok && typeof read.value === "number" ? read.value : undefined;
};

/** Whether two lines of a layout can be of one record: poles of one operation, say, on lines of their own. */
export const isSameRecord = (one: LayoutRecord, other: LayoutRecord, kind: RecordKind): boolean => {
  let adds = false;
  for (const [id, value] of other.values) {
    const held = one.values.get(id);
    if (held === undefined) adds = true;
    else if (!isSameReading(held, value, kind, id)) return false;
  }
  return adds;
};

/** Takes over what another line has of a record. */
export const mergeRecord = (record: LayoutRecord, other: LayoutRecord): void => {
  for (const [id, value] of other.values) record.values.set(id, value);
  for (const [id, place] of other.places)
    if (other.values.has(id) || !record.places.has(id)) record.places.set(id, place);
  record.tellers.push(...other.tellers);
  for (const [id, stated] of other.stated) record.stated.set(id, stated);
};
