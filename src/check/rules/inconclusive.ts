import { isBlank, type Row, verdictOf } from "../../records/kind";
import { blanks, headerOf, inUnit, overRows, type Rule, rowName, said, where } from "../context";

/** A reading that proves nothing either way, though its conditions are recorded. */
export const inconclusive: Rule = {
  id: "inconclusive",
  find: (context) =>
    overRows(context, (table) => {
      const conditions = table.kind.columns.filter(({ need }) => need === "condition");
      const { value, limit, unit } = table.kind.plot;
      return (row, stored, judged) => {
        if (verdictOf(judged) !== "Inconclusive") return undefined;
        if (blanks(conditions, stored, context.lineup)) return undefined;
        const why = isBlank(judged[limit])
          ? `there is no "${headerOf(table, limit)}" to judge by`
          : `"${headerOf(table, value)}" is ${inUnit(judged[value], unit)} against ${inUnit(judged[limit], unit)}${shortfall(judged)}`;
        return {
          rule: "inconclusive",
          weight: "query",
          ...where(table, row, value),
          message: `${rowName(table, row)}: cannot be judged: ${why}.`,
          found: said(judged[value]),
          expected: said(judged[limit]),
        };
      };
    }),
};

/** A test made with less than was required, in words. */
function shortfall(row: Row): string {
  const less = (found: unknown, least: unknown) =>
    typeof found === "number" && typeof least === "number" && found < least;
  if (less(row.testVoltage, row.testVoltageLeast))
    return `, measured with ${said(row.testVoltage)} V where at least ${said(row.testVoltageLeast)} V is asked for`;
  if (less(row.testCurrent, row.testCurrentLeast))
    return `, measured with ${said(row.testCurrent)} A where at least ${said(row.testCurrentLeast)} A is asked for`;
  if (less(row.duration, row.durationLeast))
    return `, held for ${said(row.duration)} s where ${said(row.durationLeast)} s is asked for`;
  if (row.corrected === "not corrected")
    return ": the reading, or a condition that it is corrected by, lies outside what the correction holds for";
  if (row.discharge !== undefined && !/^(yes|no)$/i.test(String(row.discharge)))
    return `, and "Discharge" says neither Yes nor No`;
  if (typeof row.dewMargin === "number" && row.dewMargin <= 0)
    return ", on a surface at or below the dew point";
  if (less(row.applied, row.required)) return ", which is more than the tolerance below it";
  return "";
}
