import { memoizeFor } from "../../quantities/memoizeFor";
import type { CellValue, Column, Row } from "../../records/kind";
import { amongRows, cameOtherwise, inRowOrder } from "../among/amongRows";
import { isStored, type JudgedTable, overColumns, type RowRule } from "../context";
import { isErrorValue } from "../errorValue";
import type { Finding } from "../findings/finding";
import { isSameResult } from "./isSameResult";

/** Looks for cells of some columns, limits or givens, that hold something else than the criterion or the lineup gives. */
export function differences(
  table: JudgedTable,
  isAsked: (column: Column) => boolean,
  finding: (
    row: number,
    column: Column,
    stored: CellValue,
    wanted: CellValue,
    judged: Row,
  ) => Finding,
): RowRule {
  const ours = askedOf(table, isAsked);
  return (row, stored, judged) => {
    const planned = table.given.get(table.keys[row] ?? "") ?? stored;
    return overColumns(ours, (column) => {
      const { id, value, formula } = column;
      if (formula && !isStored(table, row, id)) return undefined;
      const held = stored[id] ?? null;
      const wanted = (value ? judged : planned)[id] ?? null;
      return isSameResult(held, wanted) || isErrorValue(held)
        ? undefined
        : finding(row, column, held, wanted, judged);
    });
  };
}

/** The rows in which some columns hold something else than what is wanted. */
export function amongDifferences(
  table: JudgedTable,
  isAsked: (column: Column) => boolean,
): readonly number[] {
  const asked = askedOf(table, isAsked);
  const computed = cameOtherwise(
    table,
    asked.filter(({ value }) => value),
  );
  const given = asked.filter(({ value }) => !value);
  const planned = given.length > 0 ? plannedIn(table) : [];
  return inRowOrder([
    ...amongRows(table, computed, (stored, judged) => !isSameResult(stored, judged)),
    ...amongRows(
      table,
      given,
      (stored, _judged, row, { id }) => !isSameResult(stored, planned[row]?.[id]),
    ),
  ]);
}

const askedOf = ({ kind, at }: JudgedTable, isAsked: (column: Column) => boolean) =>
  kind.columns.filter((column) => isAsked(column) && at.has(column.id));

/** The rows as the lineup gives them; one that it does not need, as it is stored. */
const plannedIn = memoizeFor(({ rows, keys, given }: JudgedTable): readonly Row[] =>
  rows.map((stored, row) => given.get(keys[row] ?? "") ?? stored),
);
