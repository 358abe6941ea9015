import { readUnit } from "../../quantities/reading/readUnit";
import { splitReading } from "../../quantities/reading/splitReading";
import { unitSize } from "../../quantities/units";
import type { Block } from "../table/facts";
import type { Head, LayoutOptions } from "../table/head";
import type { TextRow } from "../text/delimited";
import { namesPosition } from "../words/readPosition";
import { readStage } from "../words/readStage";
import { titleKey } from "../words/titleKeys";
import type { ExportColumn } from "../words/titles";
import type { HeadingUnit } from "./headingUnit";
import { unitsBeside } from "./unitsBeside";

/**
 * Columns titled L1, L2, L3 without a unit: times of a breaker's poles, or what was read of a phase.
 * What stands in their cells tells, or else a heading over the table.
 */
export const asPoles = (
  columns: readonly ExportColumn[],
  { head }: Block,
  rows: readonly TextRow[],
  heading: HeadingUnit | undefined,
): readonly ExportColumn[] => {
  const open = columns.filter(
    ({ field, unit, says }) => /^l[123]$/.test(field ?? "") && unit === undefined && !says,
  );
  const beside = unitsBeside(columns) ?? ((row: TextRow) => row);
  const from = rows.findIndex(({ line }) => line > head.line);
  const inCells = (from < 0 ? [] : rows.slice(from, from + 30)).map(beside).flatMap(({ cells }) =>
    open.flatMap(({ index }) => {
      const unit = readUnit(splitReading(cells[index] ?? "")?.unit ?? "");
      return unit.ok ? unit.value : [];
    }),
  );
  const units = inCells.length === 0 && heading ? [heading.unit] : inCells;
  const quantities = new Set(units.map((unit) => unitSize(unit).quantity));
  return quantities.size === 0 || quantities.has("time")
    ? columns
    : columns.map((column) =>
        open.includes(column)
          ? { ...column, field: "reading", says: { position: (column.field ?? "").toUpperCase() } }
          : column,
      );
};

/** A column titled as the test of which every cell begins with before or after says the stage. */
export const asStage = (
  columns: readonly ExportColumn[],
  { head }: Block,
  rows: readonly TextRow[],
): readonly ExportColumn[] => {
  const test = columns.find(({ field }) => field === "test");
  if (!test || columns.some(({ field, says }) => field === "stage" || says?.stage)) return columns;
  const written = linesBelow(rows, head).flatMap(({ cells }) => cells[test.index] || []);
  const isStage = (text: string) => readStage(text.split(/\s/, 1)[0] ?? "") !== undefined;
  return written.length > 1 && written.slice(1).every(isStage)
    ? columns.map((column) => (column === test ? { ...column, field: "stage" } : column))
    : columns;
};

/** A column titled as the phase or pole that names none, in a table whose titles name them, is the part. */
export const asPart = (
  columns: readonly ExportColumn[],
  { head }: Block,
  rows: readonly TextRow[],
  given: LayoutOptions["given"],
): readonly ExportColumn[] => {
  const over = columns.find(({ field, says }) => field === "position" && !says);
  const across = columns.filter(({ says }) => says?.position);
  if (
    !over ||
    across.length < 2 ||
    given.has(titleKey(over.title)) ||
    columns.some(({ field }) => field === "part")
  )
    return columns;
  const written = linesBelow(rows, head).flatMap(({ cells }) => cells[over.index] || []);
  const isPart = (text: string) => /\p{L}/u.test(text) && text.length > 1 && !namesPosition(text);
  return written.length > 0 && written.every(isPart)
    ? columns.map((column) => (column === over ? { ...column, field: "part" } : column))
    : columns;
};

/** The first lines below the titles, up to a blank line or a heading. */
const linesBelow = (rows: readonly TextRow[], { line }: Head): readonly TextRow[] => {
  const from = rows.findIndex((row) => row.line > line);
  const below = from < 0 ? [] : rows.slice(from, from + 30);
  const end = below.findIndex(({ cells }) => cells.filter((cell) => cell !== "").length < 2);
  return end < 0 ? below : below.slice(0, end);
};
