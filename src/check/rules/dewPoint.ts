import { dewLimit } from "../../standards/dewLimit";
import { type Rule, rowName, said, where } from "../context";

const PRACTICE = dewLimit.value;

/** A test on a surface at or below the dew point, or close to it. */
export const dewPoint: Rule = {
  id: "dew-point",
  title: "A surface near the dew point",
  finds:
    "a test on a surface at or below the dew point (stop), or less than the usual margin above it (note)",
  why: "Water on insulation makes readings that say nothing about the insulation, and a withstand test can destroy what only had to dry.",
  satisfies: "the surface dried and warmed, and the test made again",
  quiet:
    "where air temperature, humidity or surface temperature is not recorded: another rule reports that",
  reads: "row",
  rows: (table) => (row, stored, judged) => {
    const margin = judged.dewMargin;
    if (typeof margin !== "number" || margin >= PRACTICE) return undefined;
    const wet = margin <= 0;
    return {
      rule: "dew-point",
      weight: wet ? "stop" : "note",
      ...where(table, row, "surface"),
      message: wet
        ? `${rowName(table, row)}: the surface at ${said(stored.surface)} °C is at or below the dew point; dry and warm it, then test again.`
        : `${rowName(table, row)}: the surface is ${said(margin)} K above the dew point; ${PRACTICE} K is common practice.`,
      found: said(margin),
      expected: wet ? "more than 0" : `at least ${PRACTICE}`,
    };
  },
};
