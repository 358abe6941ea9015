import type { Lineup } from "../../lineup/lineup";
import { convert } from "../../quantities/convert";
import { quoted } from "../../quantities/quoted";
import { readUnit } from "../../quantities/readUnit";
import type { Result } from "../../quantities/result";
import type { Unit } from "../../quantities/units";
import { writeReading } from "../../quantities/writeReading";
import { type CellValue, keyIds, type RecordKind, type Row, rowKey } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { rowsOf } from "../../records/rowsOf";
import { a1 } from "../../sheets/address";
import type { LayoutMap } from "../../sheets/layoutMap";
import type { LayoutProblem } from "../../sheets/recordBook";
import type { RecordTable } from "../../sheets/recordTable";
import type { SheetCells, Snapshot, Stated, TableSnapshot } from "../../sheets/snapshot";
import { takesCell } from "../../sheets/takesCell";
import type { ArrivalOptions } from "../place/arrival";
import { inRowUnit } from "../place/inRowUnit";
import { isSameCell } from "../place/isSameCell";
import { meaning } from "../place/meaning";
import { byColumn, onlyOne, readCell } from "../place/readCell";
import { type Lost, rowFinder } from "../place/rowFinder";
import { asAnswered } from "../table/evidence";
import type { ExportBlock, ExportTable } from "../table/exportTable";
import { readRows } from "../table/readRows";
import { withoutComment } from "../table/splitComment";
import type { ExportRow } from "../table/unpivot";
import { type Written, writtenBy } from "../table/writtenFacts";
import { columnFor } from "../words/columnFor";
import { partNamed } from "../words/partNamed";
import { isStated, statedColumn, statedResult } from "../words/statedColumns";
import { joinedTo, sheetRows } from "./sheetRows";

/** The record tables that maps make of a workbook's sheets, and what of them is not understood. */
export interface Mapped {
  readonly tables: readonly RecordTable[];
  readonly problems: readonly LayoutProblem[];
}

export const NOTHING_MAPPED: Mapped = { tables: [], problems: [] };

/**
 * Blocks in somebody's own layout as record tables: each line, or each phase of a line, is a record of
 * the lineup, found as a line of an export is; its cells are read in their own units and words. Where
 * each value stands is kept, so that findings name its cell and readings are written there.
 *
 * @param maps those of the workbook where not given
 */
export const mappedTables = (
  snapshot: Snapshot,
  lineup: Lineup,
  maps: readonly LayoutMap[] = snapshot.maps ?? [],
): Mapped => {
  const all = maps.map((map) => mapped(map, snapshot, lineup));
  return {
    tables: all.flatMap(({ tables }) => tables),
    problems: all.flatMap(({ problems }) => problems),
  };
};

interface Entry {
  readonly key: Row;
  readonly values: Map<string, CellValue>;
  readonly places: Map<string, Place>;
  readonly stated: Map<string, Stated>;
  /** Sheet row that the record stands on, from 0. */
  readonly row: number;
}

interface Place {
  readonly row: number;
  readonly column: number;
  readonly unit?: Unit;
}

/** A block as its map says; where names held for the cells below would double a record, none is held. */
const mapped = (map: LayoutMap, snapshot: Snapshot, lineup: Lineup): Mapped => {
  const held = recordsOf(map, snapshot, lineup);
  const second = map.down && secondOf(held);
  if (!map.down || !second) return held;
  const { down: _down, ...each } = map;
  const plain = recordsOf(each, snapshot, lineup);
  if (secondOf(plain)) return held;
  const { row, column, name } = second;
  return {
    tables: plain.tables,
    problems: [
      {
        sheet: map.sheet,
        row,
        column,
        message: `Were the names under ${map.down.map((title) => quoted(title)).join(", ")} held for the blank cells below them, row ${row + 1} would be a second line of ${name}; so none is held. Write them on each line.`,
      },
      ...plain.problems,
    ],
  };
};

/** The first line of a record that has another line already. */
const secondOf = ({ tables }: Mapped) => {
  for (const { kind, rows, table } of tables) {
    const names = rows.map((row) => rowKey(row, keyIds(kind)));
    const sofar = new Set<string>();
    const at = names.findIndex((name) => sofar.size === sofar.add(name).size);
    const place = table.ownLayout?.place(at, -1);
    if (place) return { ...place, name: names[at] };
  }
  return undefined;
};

const recordsOf = (map: LayoutMap, snapshot: Snapshot, lineup: Lineup): Mapped => {
  const problems: LayoutProblem[] = [];
  const left = (map.left ?? 1) - 1;
  const problem = (row: number, column: number, message: string) =>
    problems.push({ sheet: map.sheet, row, column, message });
  const kind = KINDS.find(({ id }) => id === map.kind);
  const cells = snapshot.sheets.find(({ name }) => name === map.sheet)?.cells;
  if (!kind || !cells) {
    problem(
      0,
      0,
      kind
        ? `The map names a sheet "${map.sheet}", which this workbook does not have.`
        : `The map names an unknown record kind "${map.kind}"; use one of ${KINDS.map(({ id }) => id).join(", ")}.`,
    );
    return { tables: [], problems };
  }
  const read = readBlock(map, cells);
  if (!read.ok) {
    problem(map.titles - 1, left, read.reason);
    return { tables: [], problems };
  }
  const needed = { kind, rows: rowsOf(kind, lineup) };
  const find = rowFinder([needed], read.value.positions);
  const meant = meaning({ panels: lineup.panels, means: map.means as ArrivalOptions["means"] });
  const entries: Entry[] = [];
  const byKey = new Map<string, Entry[]>();
  const joins = joinedTo(cells);
  const ids = keyIds(kind);
  for (const { block, row } of read.value.each()) {
    const written = new Map([...factsOf(map, block), ...writtenBy(block)(row)]);
    const text = (field: Parameters<typeof meant>[0]) => meant(field, written.get(field)?.text);
    const found = find(
      {
        object: text("object") || text("circuit") || meant("object", written.get("section")?.text),
        part: partNamed(text("part"), written.get("operation")?.text ?? ""),
        position: text("position"),
        stage: text("stage"),
      },
      [needed],
    );
    if (!found.ok) {
      problem(
        row.line - 1,
        left,
        `Row ${row.line} is taken for no record of ${kind.sheet}: ${found.reason}${meanable(found.asked)}`,
      );
      continue;
    }
    const key = needed.rows[found.value.row] ?? {};
    const one = entryOf(key, kind, block, row, written, read.value, left, joins, lineup, problem);
    const alike = byKey.get(rowKey(key, ids)) ?? [];
    byKey.set(rowKey(key, ids), alike);
    const same = alike.find((other) => agree(other, one, kind));
    if (same) {
      for (const [id, value] of one.values) same.values.set(id, value);
      for (const [id, place] of one.places)
        if (one.values.has(id) || !same.places.has(id)) same.places.set(id, place);
      for (const [id, stated] of one.stated) same.stated.set(id, stated);
    } else {
      alike.push(one);
      entries.push(one);
    }
  }
  for (const { row, column, message } of besideReadings(kind, entries, cells))
    problem(row, column, message);
  return {
    tables: entries.length > 0 ? [tableOf(map, kind, entries, cells, left)] : [],
    problems,
  };
};

/** How the map says what a name means that no row has. */
const meanable = (asked: Lost["asked"]): string =>
  asked === undefined
    ? ""
    : ` What it means can be said in the map: "means": ${JSON.stringify({ [asked.field]: { [asked.written]: "…" } })}.`;

/** Notes on cells with a reading, and once for the block that readings of it are formulas. */
const besideReadings = (
  { columns }: RecordKind,
  entries: readonly Entry[],
  cells: SheetCells,
): Omit<LayoutProblem, "sheet">[] => {
  const readings = columns.filter(({ role, need }) => role === "entry" && need === "reading");
  const places = entries.flatMap(({ places, values }) =>
    readings.flatMap(({ id }) => (values.has(id) ? (places.get(id) ?? []) : [])),
  );
  const formulas = places.filter(({ row, column }) => cells.formula(row, column) !== undefined);
  const [first] = formulas;
  const named = formulas.slice(0, FORMULAS_NAMED).map(({ row, column }) => a1(row, column));
  const notes = places.flatMap(({ row, column }) => {
    const note = cells.note?.(row, column);
    return note
      ? [{ row, column, message: `The reading has a note on its cell: ${quoted(note, 200)}.` }]
      : [];
  });
  return first === undefined
    ? notes
    : [
        ...notes,
        {
          row: first.row,
          column: first.column,
          message: `${formulas.length === 1 ? "A reading" : `${formulas.length} readings`} of this block ${formulas.length === 1 ? "is a formula" : "are formulas"} (${named.join(", ")}${formulas.length > named.length ? " …" : ""}); what ${formulas.length === 1 ? "it" : "each"} was last computed to is taken for the reading.`,
        },
      ];
};

const FORMULAS_NAMED = 6;

/** A map's block, read as an export is. */
export const readBlock = (map: LayoutMap, cells: SheetCells): Result<ExportTable> => {
  const region = {
    top: map.titles - 1,
    bottom: (map.last ?? cells.rowCount) - 1,
    left: (map.left ?? 1) - 1,
    right: (map.right ?? cells.columnCount) - 1,
  };
  const unit = map.unit === undefined ? undefined : readUnit(map.unit);
  if (unit && !unit.ok) return unit;
  return readRows(() => sheetRows(cells, region), asAnswered("", "the cells of a sheet"), {
    name: map.sheet,
    heading: unit && { unit: unit.value, kind: KINDS.find(({ id }) => id === map.kind) },
    titles: map.titles,
    titleLines: map.titleLines,
    units: map.units,
    shape: map.shape,
    decimal: map.decimal,
    dateOrder: map.dateOrder,
    mapping: map.columns,
    down: map.down,
    blanks: true,
  });
};

const factsOf = ({ facts = {} }: LayoutMap, block: ExportBlock) =>
  writtenBy({ ...block, header: facts, columns: [] })({ line: 0, cells: [] });

const entryOf = (
  key: Row,
  kind: RecordKind,
  block: ExportBlock,
  row: ExportRow,
  written: ReadonlyMap<string, Written>,
  table: ExportTable,
  left: number,
  joins: ReturnType<typeof joinedTo>,
  { instruments, withstand: { wave } }: Lineup,
  problem: (row: number, column: number, message: string) => void,
): Entry => {
  const values = new Map<string, CellValue>();
  const places = new Map<string, Place>();
  const indexOf = (index: number) => row.from?.[index] ?? index;
  const columnOf = (index: number) => left + indexOf(index);
  /** The unit of a cell: that of its column, or that of its line. */
  const unitOf = (index: number, unit: Unit | undefined, expected: Unit | undefined) => {
    const beside = readUnit(row.units?.get(indexOf(index)) ?? "", expected);
    return beside.ok ? beside.value : unit;
  };
  /** Where a cell of the line is written: in its own row, or in that of the cell it is joined to. */
  const placeOf = (index: number, unit: Unit | undefined): Place => {
    const column = columnOf(index);
    return { row: joins.get(row.line - 1)?.get(column) ?? row.line - 1, column, unit };
  };
  for (const { field, index, unit } of block.columns) {
    const column =
      field === undefined
        ? undefined
        : (columnFor(kind, field) ??
          kind.columns.find(({ id, role }) => id === field && role === "key"));
    if (column && indexOf(index) >= 0)
      places.set(column.id, placeOf(index, unitOf(index, unit, column.unit)));
  }
  for (const [named, candidates] of byColumn({ kind, rows: [] }, written, columnFor)) {
    const column = inRowUnit(named, key);
    const one = onlyOne(column, candidates, instruments);
    if (!one.ok) {
      problem(row.line - 1, left, one.reason);
      continue;
    }
    if (one.value.index !== undefined)
      places.set(
        column.id,
        placeOf(one.value.index, unitOf(one.value.index, one.value.unit, column.unit)),
      );
    const place = places.get(column.id);
    // A reading is of one record; joined over several rows it is that of the first.
    if (column.need === "reading" && place && place.row < row.line - 1) {
      places.delete(column.id);
      problem(
        place.row,
        place.column,
        `The reading is one cell over several rows, and is taken for row ${place.row + 1} alone; row ${row.line} needs its own.`,
      );
      continue;
    }
    const { value, comment } = withoutComment(one.value.text, column, (text) =>
      readCell({ ...one.value, text }, column, table, table.dates, wave),
    );
    // What cannot be read stands as it is written, for the check to say so at its cell.
    values.set(column.id, value.ok ? value.value : one.value.text);
    if (comment)
      problem(
        row.line - 1,
        place?.column ?? left,
        `"${one.value.text}" has a comment beside its number: "${comment}". The number counts; the comment belongs into the remarks.`,
      );
    if (!value.ok && column.need !== "reading" && column.accepts?.type === "date")
      problem(row.line - 1, place?.column ?? left, value.reason);
  }
  for (const { field, index } of block.columns) {
    const unit = field === "unit" ? (row.cells[index] ?? "") : "";
    const known = readUnit(unit, kind.columns.find(({ id }) => id === "reading")?.unit);
    if (unit !== "" && !known.ok) problem(row.line - 1, columnOf(index), known.reason);
  }
  return {
    key,
    values,
    places,
    stated: statedOf(kind, written, table, placeOf),
    row: row.line - 1,
  };
};

/** What the layout states of a record itself, in the units of the kind's columns. */
const statedOf = (
  kind: RecordKind,
  written: ReadonlyMap<string, Written>,
  table: ExportTable,
  placeOf: (index: number, unit: Unit | undefined) => Place,
): Map<string, Stated> =>
  new Map(
    [...written.values()].flatMap((one): [string, Stated][] => {
      const column = isStated(one.field) ? statedColumn(kind, one.field) : undefined;
      if (column === undefined || one.index === undefined) return [];
      const read =
        column.role === "result"
          ? statedResult(one.text)
          : readCell(
              column.unit === undefined ? { ...one, unit: one.unit ?? "%" } : one,
              // An error goes both ways; nothing else that is stated is below zero.
              {
                ...column,
                unit: column.unit ?? "%",
                accepts: { type: one.field === "error" ? "number" : "reading" },
              },
              table,
              undefined,
              undefined,
            );
      const value = typeof read === "object" ? read.ok && read.value : read;
      if (typeof value !== "number" && value !== "Pass" && value !== "Fail") return [];
      const { row, column: at } = placeOf(one.index, one.unit);
      return [[column.id, { value, row, column: at }]];
    }),
  );

/** Whether two lines of a layout can be of one record: poles of one operation, say, on lines of their own. */
const agree = (one: Entry, other: Entry, kind: RecordKind): boolean => {
  let adds = false;
  for (const [id, value] of other.values) {
    const before = one.values.get(id);
    if (before === undefined) adds = true;
    else if (!isSameCell(before, value, kind, id)) return false;
  }
  return adds;
};

const tableOf = (
  map: LayoutMap,
  kind: RecordKind,
  entries: readonly Entry[],
  cells: SheetCells,
  left: number,
): RecordTable => {
  const ids = kind.columns
    .filter(({ id, role }) => role === "key" || entries.some(({ places }) => places.has(id)))
    .map(({ id }) => id);
  const headers = ids.map((id) => kind.columns.find((column) => column.id === id)?.header ?? id);
  const rows = entries.map(({ key, values }): Row => ({ ...key, ...Object.fromEntries(values) }));
  const place = (row: number, column: number) => entries[row]?.places.get(ids[column] ?? "");
  const table: TableSnapshot = {
    name: `${map.sheet} row ${map.titles} column ${left + 1}`,
    sheet: map.sheet,
    top: map.titles - 1,
    left,
    headers,
    rowCount: rows.length,
    hidden:
      cells.hidden &&
      new Set(entries.flatMap(({ row }, at) => (cells.hidden?.has(row) ? [at] : []))),
    cell: (row, column) => rows[row]?.[ids[column] ?? ""] ?? null,
    formula: (row, column) => {
      const at = place(row, column);
      return at && cells.formula(at.row, at.column);
    },
    ownLayout: {
      place: (row, column) => {
        // What has no cell of its own, such as a result, is named by the reading that it comes from.
        const places = entries[row]?.places;
        const reading = kind.columns.find(({ id, need }) => need === "reading" && places?.has(id));
        const at =
          place(row, column) ?? places?.get(reading?.id ?? "") ?? [...(places?.values() ?? [])][0];
        return at && { row: at.row, column: at.column };
      },
      holds: (row, column) => {
        const at = place(row, column);
        return at && { row: at.row, column: at.column, value: cells.cell(at.row, at.column) };
      },
      stated: (row) =>
        new Map(
          [...(entries[row]?.stated ?? [])].map(([id, stated]) => [
            id,
            { ...stated, formula: cells.formula(stated.row, stated.column) },
          ]),
        ),
      takenBy: (row, column) => {
        const at = place(row, column);
        return Array.from({ length: at ? cells.columnCount : 0 }, (_, other) => other).flatMap(
          (other) => {
            const formula = at && cells.formula(at.row, other);
            return at && formula !== undefined && takesCell(formula, at.row, at.column)
              ? [{ row: at.row, column: other, formula }]
              : [];
          },
        );
      },
      written: (row, column, value) =>
        asThere(
          value,
          kind.columns.find(({ id }) => id === ids[column])?.unit,
          place(row, column)?.unit,
        ),
    },
  };
  return { kind, table, at: new Map(ids.map((id, index) => [id, index])), rows };
};

/** A value in the unit of the layout's column, or with its own unit where that names none. */
const asThere = (value: CellValue, unit: Unit | undefined, there: Unit | undefined): CellValue => {
  if (typeof value !== "number" || unit === undefined || unit === there) return value;
  if (there === undefined) return writeReading({ value, unit, bound: "exact", text: "" });
  const converted = convert(value, unit, there);
  return converted.ok ? converted.value : value;
};
