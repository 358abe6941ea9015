import { readUnit } from "../../quantities/reading/readUnit";
import { splitReading } from "../../quantities/reading/splitReading";
import { type UnitSize, unitSize } from "../../quantities/units";
import { KINDS } from "../../records/kinds";
import { besideNumber } from "../cells/splitComment";
import type { TextRow } from "../text/delimited";
import { FIELDS } from "../words/fields";
import { isStated } from "../words/statedColumns";
import { bracketless, type ExportColumn } from "../words/titles";

/** A line with, by cell, the text of the unit that a column of units has for it. */
export type RowWithUnits = TextRow & { readonly units?: ReadonlyMap<number, string> };

/**
 * Makes the reader of lines whose units stand in a column of their own: `52.5` beside `GΩ` becomes
 * `52.5 GΩ`. A column of units is for those with a quantity to its left, back to the column of units
 * before it; where there are none, for those to its right. Undefined where no column holds units.
 *
 * @example unitsBeside(columns)?.({ line: 2, cells: ["=H01", "52.5", "GΩ"] }).cells // ["=H01", "52.5 GΩ", "GΩ"]
 */
export const unitsBeside = (
  columns: readonly ExportColumn[],
): ((row: TextRow) => RowWithUnits) | undefined => {
  const groups = groupsOf(columns);
  return groups.length === 0
    ? undefined
    : (row) => {
        const cells = [...row.cells];
        const units = new Map<number, string>();
        for (const { from, to } of groups) {
          const written = bracketless(row.cells[from.index] ?? "");
          if (written === "") continue;
          for (const { index } of takers(to, written)) {
            units.set(index, written);
            cells[index] = withUnit(row.cells[index] ?? "", written);
          }
        }
        return { ...row, cells, units };
      };
};

/** Each column of units, and the columns with a quantity that it may be for, the nearest first. */
const groupsOf = (columns: readonly ExportColumn[]) => {
  const isUnits = ({ field }: ExportColumn) => field === "unit";
  return columns.flatMap((from, position) => {
    if (!isUnits(from)) return [];
    const start = columns.slice(0, position).findLastIndex(isUnits) + 1;
    const end = columns.findIndex((column, index) => index > position && isUnits(column));
    const left = columns.slice(start, position).filter(isMeasured).reverse();
    const right = columns.slice(position + 1, end < 0 ? undefined : end).filter(isMeasured);
    return [{ from, to: left.length > 0 ? left : right }];
  });
};

/** The columns that a unit is for, by its quantity; the nearest without a unit of its own where it is for none. */
const takers = (to: readonly ExportColumn[], written: string): readonly ExportColumn[] => {
  const unit = readUnit(written);
  const quantity = unit.ok && unitSize(unit.value).quantity;
  const open = to.filter((column) => column.unit === undefined);
  const fitting = to.filter((column) => {
    const own = column.unit ? unitSize(column.unit).quantity : quantityOf(column.field ?? "");
    return quantity !== false && (own === undefined || own === quantity);
  });
  return fitting.length > 0 ? fitting : open.slice(0, 1);
};

/** A number with its unit, before the comment beside it; what has a unit of its own keeps it. */
const withUnit = (text: string, unit: string): string => {
  const { number, comment } = besideNumber(text) ?? { number: text };
  const parts = splitReading(number);
  if (parts?.unit !== "" || parts.number === "") return text;
  return comment === undefined ? `${number} ${unit}` : `${number} ${unit} (${comment})`;
};

/** Quantities of the record columns that a title may name; a name of several kinds may have several. */
const BY_COLUMN: ReadonlyMap<string, ReadonlySet<UnitSize["quantity"]>> = (() => {
  const found = new Map<string, Set<UnitSize["quantity"]>>();
  for (const { id, role, unit } of KINDS.flatMap(({ columns }) => columns))
    if (role === "entry" && unit)
      found.set(id, (found.get(id) ?? new Set()).add(unitSize(unit).quantity));
  return found;
})();

/** None for what may be of several, such as a reading. */
const quantityOf = (field: string): UnitSize["quantity"] | undefined => {
  const [only, ...others] = BY_COLUMN.get(field) ?? [];
  if (isAny(field)) return undefined;
  return FIELDS[field]?.quantity ?? (others.length === 0 ? only : undefined);
};

const isAny = (field: string) => field === "reading" || isStated(field);

const isMeasured = ({ field = "" }: ExportColumn): boolean =>
  isAny(field) || FIELDS[field]?.quantity !== undefined || BY_COLUMN.has(field);
