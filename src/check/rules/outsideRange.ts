import { writeRanges } from "../../quantities/measuringRange";
import { rowsAlike } from "../../records/cellsOf";
import { instrumentsOfRow, outsideRange as outsideOf } from "../../records/instruments";
import { headerOf, inUnit, type Rule, rowName, where } from "../context";

/** A reading outside what the instruments of its row can measure: what they showed there proves nothing. */
export const outsideRange: Rule = {
  id: "outside-range",
  reads: "row",
  among: ({ rows }, { lineup }) =>
    rowsAlike(rows, ["instrument"], (row) =>
      instrumentsOfRow(row, lineup).some(({ ranges }) => ranges),
    ),
  rows:
    (table, { lineup, text }) =>
    (row, stored) =>
      outsideOf(table.kind.columns, stored, lineup).map(({ id, unit }) => {
        const ranges = instrumentsOfRow(stored, lineup).flatMap(({ id: name, ranges = [] }) =>
          ranges.length > 0 ? `${name}: ${writeRanges(ranges)}` : [],
        );
        const reading = inUnit(stored[id], unit);
        return {
          rule: "outside-range",
          weight: "query",
          ...where(table, row, id),
          message: text.rules["outside-range"].message(
            rowName(table, row),
            headerOf(table, id),
            reading,
            ranges,
          ),
          found: reading,
          expected: ranges.join("; "),
        };
      }),
};
