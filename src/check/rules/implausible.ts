import type { Accepts, CellValue } from "../../records/kind";
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

/** An entry outside what its column can hold: a slip of the pen, of the unit, or of the decimal mark. */
export const implausible: Rule = {
  id: "implausible",
  reads: "row",
  among: (table) =>
    amongRows(table, boundedIn(table), (cell, _judged, _row, { accepts }) =>
      accepts?.type === "date"
        ? typeof cell === "number" && dayOf(cell) === undefined
        : isBeyond(cell, accepts),
    ),
  rows: (table, context) => {
    const text = context.text.rules.implausible;
    const bounded = boundedIn(table);
    return (row, stored) =>
      overColumns(bounded, ({ id, header, accepts, unit }) => {
        const cell = stored[id];
        if (typeof cell !== "number") return undefined;
        if (accepts?.type === "date" && dayOf(cell) === undefined)
          return {
            rule: "implausible",
            weight: "query",
            ...where(table, row, id),
            message: text.noDate(rowName(table, row), header, said(cell)),
            found: said(cell),
          };
        if (accepts?.type !== "number") return undefined;
        if (!isBeyond(cell, accepts)) return undefined;
        const { least, most } = boundsOf(accepts);
        const expected = text.range(least, most);
        return {
          rule: "implausible",
          weight: "query",
          ...where(table, row, id),
          message: text.message(rowName(table, row), header, inUnit(cell, unit), expected),
          found: said(cell),
          expected,
        };
      });
  },
};

const boundedIn = ({ kind }: JudgedTable) =>
  kind.columns.filter(
    ({ role, accepts }) =>
      role === "entry" && (accepts?.type === "number" || accepts?.type === "date"),
  );

type OfNumbers = Extract<Accepts, { type: "number" }>;

const boundsOf = ({
  least = Number.NEGATIVE_INFINITY,
  most = Number.POSITIVE_INFINITY,
}: OfNumbers) => ({ least, most });

/** Whether a number lies outside what its column can hold. */
const isBeyond = (cell: CellValue, accepts: Accepts | undefined): boolean => {
  if (typeof cell !== "number" || accepts?.type !== "number") return false;
  const { least, most } = boundsOf(accepts);
  return !(cell >= least && cell <= most);
};
