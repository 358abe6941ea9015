import type { Unit } from "../../quantities/units";
import type { Accepts, CellValue, Column } from "../../records/kind";
import { quantity } from "../../records/quantity";
import { amongRows } from "../among/amongRows";
import {
  dayOf,
  inUnit,
  type JudgedTable,
  overColumns,
  type Rule,
  rowName,
  said,
  where,
} from "../context";

/**
 * The most that a reading in a unit can be: insulation testers, those of 10 kV too, end between 10 TΩ and
 * 100 TΩ (common practice).
 */
const MOST_SHOWN: Readonly<Partial<Record<Unit, number>>> = { MΩ: 1e8 };

/** An entry outside what its column can hold: a slip of the pen, of the unit, or of the decimal mark. */
export const implausible: Rule = {
  id: "implausible",
  reads: "row",
  among: (table) =>
    amongRows(table, boundedIn(table), (cell, _judged, _row, column) =>
      column.accepts?.type === "date" ? isNoDate(cell) : beyond(cell, column) !== undefined,
    ),
  rows: (table, context) => {
    const text = context.text.rules.implausible;
    const bounded = boundedIn(table);
    return (row, stored) =>
      overColumns(bounded, (column) => {
        const { id, header, accepts, unit } = column;
        const cell = stored[id] ?? null;
        const at = { rule: "implausible", weight: "query", ...where(table, row, id) } as const;
        if (accepts?.type === "date")
          return isNoDate(cell)
            ? {
                ...at,
                message: text.noDate(rowName(table, row), header, said(cell)),
                found: said(cell),
              }
            : undefined;
        const value = beyond(cell, column);
        if (value === undefined) return undefined;
        const { least, most } = boundsOf(column);
        const expected = text.range(least, most);
        return {
          ...at,
          message: text.message(rowName(table, row), header, inUnit(value, unit), expected),
          found: said(cell),
          expected,
        };
      });
  },
};

const boundedIn = ({ kind }: JudgedTable): readonly Column[] =>
  kind.columns.filter(
    (column) =>
      column.role === "entry" && (column.accepts?.type === "date" || isBounded(boundsOf(column))),
  );

interface Bounds {
  readonly least: number;
  readonly most: number;
}

const boundsOf = ({ accepts, unit }: Column): Bounds => {
  const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = limitsOf(
    accepts,
    unit,
  );
  return { least, most };
};

const limitsOf = (accepts: Accepts | undefined, unit: Unit | undefined): Partial<Bounds> => {
  if (accepts?.type === "number") return accepts;
  return accepts?.type === "reading" && unit !== undefined ? { most: MOST_SHOWN[unit] } : {};
};

const isBounded = ({ least, most }: Bounds): boolean =>
  Number.isFinite(least) || Number.isFinite(most);

const isNoDate = (cell: CellValue): cell is number =>
  typeof cell === "number" && dayOf(cell) === undefined;

/** A number that lies outside what its column can hold. Of text only readings are read here: of other text another rule tells. */
function beyond(cell: CellValue, column: Column): number | undefined {
  const { accepts, unit } = column;
  const value =
    accepts?.type === "reading" && unit !== undefined ? quantity(cell, unit)?.value : cell;
  if (typeof value !== "number") return undefined;
  const { least, most } = boundsOf(column);
  return value >= least && value <= most ? undefined : value;
}
