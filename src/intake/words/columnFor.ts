import { unitSize } from "../../quantities/units";
import type { Column, RecordKind } from "../../records/kind";
import { FIELDS } from "./fields";

/** Fields that say the same as another: an instrument by its serial number, the air for what stands in it. */
const SAME: Readonly<Record<string, string>> = { serial: "instrument", air: "temperature" };

const quantityOf = ({ unit }: Column) => unit && unitSize(unit).quantity;

/**
 * The column of a record kind that takes a field of an export: the kind's reading for a reading, or
 * for a resistance where that is what it reads; its one voltage or current for a test voltage or
 * current; else the entry column of that name. Key, limit and computed columns take nothing.
 *
 * @example columnFor(contact, "current")?.id // "testCurrent"
 */
export const columnFor = ({ columns }: RecordKind, field: string): Column | undefined => {
  const entries = columns.filter(
    ({ role, id }) => role === "entry" || (role === "note" && id === "remarks"),
  );
  const named =
    entries.find(({ id }) => id === field) ?? entries.find(({ id }) => id === SAME[field]);
  if (named) return named;
  const readings = entries.filter(({ need }) => need === "reading");
  const reading =
    readings.find(({ id }) => id === "reading") ??
    single(readings.filter(({ unit }) => unit !== undefined));
  if (field === "reading") return reading;
  const quantity = FIELDS[field]?.quantity;
  if (field === "resistance")
    return reading && quantityOf(reading) === quantity ? reading : undefined;
  return field === "voltage" || field === "current"
    ? entries.find(
        (column) =>
          quantityOf(column) === quantity && (column.need !== "reading" || column === reading),
      )
    : undefined;
};

/** Of several readings none is the one that a mere value speaks of. */
const single = (readings: readonly Column[]) => (readings.length === 1 ? readings[0] : undefined);
