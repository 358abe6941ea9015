import { dewLimit } from "../../criteria/dewLimit";
import { overRows, type Rule, rowName, said, where } from "../context";

const PRACTICE = dewLimit.value;

/** A test on a surface at or below the dew point, or close to it. */
export const dewPoint: Rule = {
  id: "dew-point",
  find: (context) =>
    overRows(context, (table) => (row, stored, judged) => {
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
    }),
};
