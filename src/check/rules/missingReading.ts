import { isBlank, isNeeded, type Row, verdictOf } from "../../records/kind";
import { isLeftOut } from "../../records/rowsOf";
import { readingsOf } from "../../records/verdict";
import { type Rule, rowName, where } from "../context";

/** A row without its reading. */
export const missingReading: Rule = {
  id: "missing-reading",
  title: "A reading missing",
  finds: "a row that the lineup needs without its reading",
  why: "The test was not made, or not written down.",
  satisfies: "the reading",
  quiet:
    "for record kinds that the project leaves out, and rows that do not apply; what no line of a user's own layout has a cell for is reported once for its block",
  reads: "row",
  rows: (table, context) => {
    if (isLeftOut(context.lineup, table.kind)) return () => undefined;
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
          ? `${rowName(table, row)}, and every other line of the block: the sheet has no cell for ${blank.map(({ header }) => `"${header}"`).join(", ")}; add a column, or leave these records out of the lineup with the project's reason.`
          : `${rowName(table, row)}: ${column?.header} not recorded.`,
      };
    };
  },
};
