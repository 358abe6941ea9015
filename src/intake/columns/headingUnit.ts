import { readUnit } from "../../quantities/reading/readUnit";
import { type Unit, unitSize } from "../../quantities/units";
import type { RecordKind } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { columnFor } from "../words/columnFor";
import { FIELDS } from "../words/fields";
import { kindOfTest } from "../words/kindOfTest";
import { readTitle } from "../words/readTitle";
import { isStated, statedColumn } from "../words/statedColumns";
import type { ExportColumn } from "../words/titles";

/** The unit of a heading's brackets, and the record kind that it speaks of. */
export interface HeadingUnit {
  readonly unit: Unit;
  readonly kind?: RecordKind;
}

const quantityOf = (unit: Unit | undefined) => unit && unitSize(unit).quantity;

/**
 * The one unit that a heading over a table has in brackets, where it fits what the heading names.
 *
 * @example headingUnit("1. Insulation resistance (MΩ), 5 kV DC")?.unit // "MΩ"
 */
export const headingUnit = (heading = ""): HeadingUnit | undefined => {
  const units = [...heading.slice(0, 200).matchAll(/[([]\s*([^()[\]]{1,12}?)\s*[)\]]/g)].flatMap(
    ({ 1: written = "", index }) => {
      const unit = readUnit(written);
      return unit.ok ? [{ unit: unit.value, index }] : [];
    },
  );
  const [first, ...others] = units;
  if (first === undefined || others.some(({ unit }) => unit !== first.unit)) return undefined;
  const { unit, index } = first;
  const quantity = quantityOf(unit);
  const kind = kindOfTest(heading, KINDS);
  const name = heading.slice(0, index).replace(/^\s*[\d.]+[.)]?\s*/, "");
  const field = readTitle(name).field ?? "";
  return quantityOf(kind && columnFor(kind, "reading")?.unit) === quantity
    ? { unit, kind }
    : FIELDS[field]?.quantity === quantity
      ? { unit }
      : undefined;
};

/**
 * The columns with a heading's unit, where those that it fits tell none themselves and no column of units
 * stands beside them; else as they are.
 */
export const withHeadingUnit = (
  columns: readonly ExportColumn[],
  heading: HeadingUnit | undefined,
): readonly ExportColumn[] => {
  if (heading === undefined || columns.some(({ field }) => field === "unit")) return columns;
  const fitting = columns.filter((column) => isFor(column, heading));
  return fitting.some(({ unit }) => unit !== undefined)
    ? columns
    : columns.map((column) =>
        fitting.includes(column) ? { ...column, unit: heading.unit } : column,
      );
};

/** Whether a column is of the quantity of the heading's unit. */
const isFor = ({ field = "" }: ExportColumn, { unit, kind }: HeadingUnit): boolean => {
  const column = kind && (isStated(field) ? statedColumn(kind, field) : columnFor(kind, field));
  return (
    (field === "reading" && kind === undefined) ||
    (FIELDS[field]?.quantity ?? quantityOf(column?.unit)) === quantityOf(unit)
  );
};
