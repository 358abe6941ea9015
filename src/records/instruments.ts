import type { Instrument, Lineup } from "../lineup/lineup";
import { isNamedIn, isWithin } from "../quantities/measuringRange";
import { gear, quoted } from "./columns/common";
import type { CellValue, Column, Reference, Row } from "./kind";
import { exactly } from "./quantity";

/**
 * The instruments that a cell names: one, or several with commas or semicolons between them, as where a
 * thermometer and a barometer stand beside the meter.
 *
 * @example namedInstruments("IR-1; TH-2") // ["IR-1", "TH-2"]
 */
export const namedInstruments = (cell: CellValue | undefined): string[] =>
  String(cell ?? "")
    .split(/[;,]/)
    .map((name) => name.trim())
    .filter((name) => name !== "");

/** Those of a lineup's instruments that a row names. */
export const instrumentsOfRow = ({ instrument }: Row, { instruments }: Lineup): Instrument[] =>
  typeof instrument === "string" ? instruments.filter(({ id }) => isNamedIn(instrument, id)) : [];

type Measured = Column & { readonly unit: NonNullable<Column["unit"]> };

/** Entries that an instrument measured and that the row is judged by. */
const measuredColumns = (columns: readonly Column[]): Measured[] =>
  columns.filter(
    (column): column is Measured =>
      column.role === "entry" &&
      column.unit !== undefined &&
      (column.need === "reading" || column.need === "condition"),
  );

const hasRanges = ({ instruments }: Lineup) => instruments.some(({ ranges }) => ranges);

/**
 * The readings and conditions of a row that lie outside what its instruments measure of their quantity. A
 * quantity of which none of them has a range says nothing, and neither does a bound.
 */
export const outsideRange = (columns: readonly Column[], row: Row, lineup: Lineup): Column[] => {
  if (!hasRanges(lineup)) return [];
  const ranges = instrumentsOfRow(row, lineup).flatMap(({ ranges = [] }) => ranges);
  return ranges.length === 0
    ? []
    : measuredColumns(columns).filter(({ id, unit }) => {
        const value = exactly(row[id], unit);
        return value !== undefined && isWithin(value, unit, ranges) === false;
      });
};

/** Title of the ranges on the sheet of instruments. */
export const RANGES = "Ranges";

/** The same as tests of a formula; none where no instrument has a range. The row's cells from the first such entry to the last go into one call, each with its unit. */
export const outsideRangeBy = (
  columns: readonly Column[],
  ref: Reference,
  lineup: Lineup,
): string[] => {
  const measured = measuredColumns(columns);
  const [first, last] = [measured[0], measured.at(-1)];
  const hasInstrument = columns.some(({ id }) => id === "instrument");
  if (!first || !last || !hasInstrument || !hasRanges(lineup)) return [];
  const units = columns
    .slice(columns.indexOf(first), columns.indexOf(last) + 1)
    .map((column) => quoted(measured.find((one) => one === column)?.unit ?? ""));
  const answers = gear(
    "INRANGE",
    first === last ? ref(first.id) : ref.span(first.id, last.id),
    `{${units.join(",")}}`,
    ref("instrument"),
    "GearInstruments[Id]",
    `GearInstruments[${RANGES}]`,
  );
  return [`SUMPRODUCT(1*(${answers}="No"))>0`];
};
