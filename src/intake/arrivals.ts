import { quoted } from "../quantities/quoted";
import { readUnit } from "../quantities/readUnit";
import { answer, type Result, refuse } from "../quantities/result";
import { splitReading } from "../quantities/splitReading";
import { unitSize } from "../quantities/units";
import type { CellValue, Column, RecordKind } from "../records/kind";
import { cellValue } from "./cellValue";
import { columnFor } from "./columnFor";
import { kindOfTest } from "./kindOfTest";
import { type DateOrder, readDate, readTime } from "./readDate";
import type { ExportBlock, ExportRow, ExportTable } from "./readExport";
import { type FoundRow, type RecordRows, rowFinder } from "./rowFinder";
import { type Written, writtenBy } from "./written";

/** A line that has found its row, with the cells that it has for it. */
export interface Arrival<T extends RecordRows> extends FoundRow<T> {
  readonly line: number;
  readonly cells: ReadonlyMap<string, CellValue>;
  /** Date and time of day as a serial number, where the line has both. */
  readonly when?: number;
}

export interface ArrivalOptions {
  readonly instruments?: readonly { readonly id: string; readonly serial: string }[];
  readonly wave?: "AC" | "DC";
}

/**
 * Finds for each line of an export its record table, its row and its cells.
 *
 * @param say is told of each line or cell that cannot be placed, and why
 */
export const arrivalsOf = <T extends RecordRows>(
  table: ExportTable,
  tables: readonly T[],
  { instruments = [], wave }: ArrivalOptions,
  say: (line: number, reason: string) => void,
): Arrival<T>[] => {
  const readers = new Map(table.blocks.map((block) => [block, writtenBy(block)]));
  const lines = Array.from(table.each(), ({ block, row }) => ({
    row,
    block,
    written: (readers.get(block) as ReturnType<typeof writtenBy>)(row),
  }));
  const positions = lines.flatMap(({ written }) => written.get("position")?.text ?? []);
  const find = rowFinder(tables, positions);
  const { dates } = table;

  return lines.flatMap(({ row, block, written }): Arrival<T>[] => {
    const text = (field: string) => written.get(field)?.text ?? "";
    const among = isTorn(row, block) ?? tablesFor(tables, written, block);
    if (!among.ok) {
      say(row.line, among.reason);
      return [];
    }
    const place = {
      object: text("object") || text("circuit") || text("section"),
      part: text("part"),
      position: text("position"),
      stage: text("stage"),
    };
    const found = find(place, among.value);
    if (!found.ok) {
      say(row.line, found.reason);
      return [];
    }

    const cells = new Map<string, CellValue>();
    for (const [column, candidates] of byColumn(found.value.table, written)) {
      const one = onlyOne(column, candidates, instruments);
      const value = one.ok ? read(one.value, column, table, dates, wave) : one;
      if (value.ok) cells.set(column.id, value.value);
      else {
        say(
          row.line,
          `${value.reason}${column.need === "reading" ? "" : ` (${column.header} only; the rest of the line stands)`}`,
        );
        if (column.need === "reading") return [];
      }
    }
    const day = readDate(text("date"), dates);
    const time = readTime(text("time")) ?? readTime(text("date"));
    const when = day.ok && time !== undefined ? day.value + time : undefined;
    return [{ ...found.value, line: row.line, cells, when }];
  });
};

/** A line with more cells than titles has been parted in the wrong places. */
const isTorn = ({ cells }: ExportRow, { columns }: ExportBlock): Result<never> | undefined =>
  cells.slice(columns.length).some((cell) => cell !== "")
    ? refuse(
        "wrong",
        `has ${cells.length} cells under ${columns.length} titles; where a comma is decimal, the line needs another delimiter or quotation marks around the number.`,
      )
    : undefined;

/** The record tables that a line can belong to, by the test it names and by what it has read. */
const tablesFor = <T extends RecordRows>(
  tables: readonly T[],
  written: ReadonlyMap<string, Written>,
  exported: ExportBlock,
): Result<readonly T[]> => {
  const test = written.get("test");
  const ids = tables.map(({ kind }) => kind.id);
  const named = test && kindOfTest(test.text, ids);
  if (test && named === undefined)
    return refuse(
      "none",
      `test ${quoted(test.text)} is none of the record tables here, which are ${tables.map(({ kind }) => kind.sheet).join(", ")}.`,
    );
  const ofTest = named === undefined ? tables : tables.filter(({ kind }) => kind.id === named);
  const among = ofTest.filter(({ kind }) => hasReading(kind, written));
  return among.length > 0 ? answer(among) : noReading(ofTest, written, exported);
};

/** Why a line has no reading for any of these tables. */
const noReading = (
  tables: readonly RecordRows[],
  written: ReadonlyMap<string, Written>,
  { columns }: ExportBlock,
): Result<never> => {
  const readings = tables.flatMap(({ kind }) =>
    kind.columns.flatMap(({ need, header }) => (need === "reading" ? header : [])),
  );
  const wanted = [...new Set(readings)].join(", ");
  const sources = columns.filter(({ field }) =>
    tables.some(({ kind }) => field && columnFor(kind, field)?.need === "reading"),
  );
  if (sources.length === 0)
    return refuse(
      "none",
      `there is no column with a reading; right would be one for ${wanted}, with its unit.`,
    );
  const given = sources.flatMap(({ field }) => written.get(field ?? "") ?? [])[0];
  return given === undefined
    ? refuse(
        "none",
        `has no reading: blank under ${sources.map(({ title }) => quoted(title)).join(" and ")}.`,
      )
    : refuse(
        "wrong",
        `${quoted(given.text)} under ${quoted(given.title)} is of another quantity than ${wanted}.`,
      );
};

/** Whether a line has a reading of the kind's quantity, and no resistance that the kind cannot take. */
const hasReading = (kind: RecordKind, written: ReadonlyMap<string, Written>): boolean =>
  (!written.has("resistance") || columnFor(kind, "resistance") !== undefined) &&
  [...written.values()].some((one) => {
    const column = columnFor(kind, one.field);
    return column?.need === "reading" && isOfQuantity(one, column);
  });

const isOfQuantity = ({ text, unit }: Written, column: Column): boolean => {
  const own = readUnit(splitReading(text)?.unit ?? "", unit ?? column.unit);
  const known = own.ok ? own.value : unit;
  return (
    known === undefined ||
    column.unit === undefined ||
    unitSize(known).quantity === unitSize(column.unit).quantity
  );
};

/** What a line has for each column of the record table. */
const byColumn = (
  { kind, at }: RecordRows,
  written: ReadonlyMap<string, Written>,
): ReadonlyMap<Column, Written[]> => {
  const found = new Map<Column, Written[]>();
  for (const one of written.values()) {
    const column = columnFor(kind, one.field);
    if (column === undefined || (at && !at.has(column.id))) continue;
    const sofar = found.get(column);
    if (sofar) sofar.push(one);
    else found.set(column, [one]);
  }
  return found;
};

/** The one text for a column. An instrument may be named by its Id and its serial number at once. */
const onlyOne = (
  column: Column,
  candidates: readonly Written[],
  instruments: NonNullable<ArrivalOptions["instruments"]>,
): Result<Written> => {
  const [first, ...others] = candidates;
  if (first === undefined) return refuse("none", `nothing is given for ${column.header}.`);
  if (column.id === "instrument") {
    const same = (one: string, other: string) =>
      one.trim().toLowerCase() === other.trim().toLowerCase();
    const known = candidates.flatMap(({ text }) =>
      instruments.filter(({ id, serial }) => same(text, id) || same(text, serial)),
    )[0];
    const named = candidates.find(({ field }) => field === "instrument") ?? first;
    return answer(known ? { ...named, text: known.id } : named);
  }
  const air = column.header.startsWith("Air") ? "air" : "temperature";
  const nearer = candidates.find(({ field }) => field === air);
  if (column.id === "temperature" && nearer) return answer(nearer);
  const other = others.find(({ text }) => text !== first.text);
  return other === undefined
    ? answer(first)
    : refuse(
        "wrong",
        `${quoted(first.title)} and ${quoted(other.title)} both give ${column.header}, ${quoted(first.text)} and ${quoted(other.text)}; right would be one of them.`,
      );
};

const read = (
  { text, title, unit }: Written,
  column: Column,
  { decimal }: ExportTable,
  dates: DateOrder | undefined,
  wave: ArrivalOptions["wave"],
): Result<CellValue> => {
  const said = /\b(?:V|kV)?\s*(AC|DC)\b/i.exec(title)?.[1]?.toUpperCase();
  if (wave && said && said !== wave && column.need === "reading" && column.unit === "kV")
    return refuse(
      "wrong",
      `${quoted(title)} is of ${said}; the withstand test of this lineup is ${wave}.`,
    );
  const value = cellValue(text, column, { unit, decimal: decimal.mark, dates });
  return value.ok || decimal.mark !== undefined || !/[.,]/.test(text) || column.unit === undefined
    ? value
    : refuse(value.kind, `${value.reason} (The file: ${decimal.evidence}.)`);
};
