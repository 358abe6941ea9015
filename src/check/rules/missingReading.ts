import { isBlank, isNeeded, type Row, verdictOf } from "../../records/kind";
import { isLeftOut } from "../../records/rowsOf";
import { readingsOf } from "../../records/verdict";
import { amongVerdicts } from "../among/amongRows";
import {
  type Context,
  type JudgedTable,
  overRows,
  type RowRule,
  type Rule,
  rowName,
  where,
} from "../context";
import { isYetToCome } from "../progress/openRows";

/** A row of a test that was begun, or of a workbook that is all but done, without its reading. */
export const missingReading: Rule = {
  id: "missing-reading",
  reach: "panel",
  // A reading in one phase makes a test begun, and so asks for those of the others.
  reads: "table",
  find: (table, context) =>
    isLeftOut(context.lineup, table.kind)
      ? []
      : overRows(table, lacking(table, context), amongVerdicts(table, "Missing")).map(
          ({ finding }) => finding,
        ),
};

const lacking = (table: JudgedTable, context: Context): RowRule => {
  const text = context.text.rules["missing-reading"];
  const readings = readingsOf(table.kind.columns);
  const { ownLayout } = table.table;
  const blankIn = (row: Row) =>
    readings.filter((column) => isBlank(row[column.id]) && isNeeded(column, row, context.lineup));
  /** What a layout of somebody's own has no place for at all is said once, at its first line. */
  const absent = (row: Row) => ownLayout && blankIn(row).every(({ id }) => !table.at.has(id));
  const first = ownLayout
    ? table.judged.findIndex(
        (judged, at) =>
          verdictOf(judged) === "Missing" && !table.aside.has(at) && absent(table.rows[at] ?? {}),
      )
    : -1;
  return (row, stored, judged) => {
    if (verdictOf(judged) !== "Missing") return undefined;
    if (isYetToCome(table, row, context.openRows)) return undefined;
    const blank = blankIn(stored);
    const isAbsent = absent(stored) && blank.length > 0;
    if (isAbsent && row !== first) return undefined;
    const column =
      blank.find(({ id }) => !ownLayout || table.at.has(id)) ?? blank[0] ?? readings[0];
    return {
      rule: "missing-reading",
      weight: "stop",
      ...where(table, row, column?.id ?? "reading"),
      message: isAbsent
        ? text.noCell(
            rowName(table, row),
            blank.map(({ header }) => header),
          )
        : text.message(rowName(table, row), column?.header ?? ""),
    };
  };
};
