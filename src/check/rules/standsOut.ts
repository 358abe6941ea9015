import { overRows, type Rule, rowName, said, where } from "../context";

/** More than this above the lowest of its neighbours asks for investigation (a breaker maker's bulletin, read). */
const ASK_ABOVE = 0.5;

/** A pole or joint whose resistance stands out from its neighbours'. It is not by itself a failure. */
export const standsOut: Rule = {
  id: "stands-out",
  find: (context) =>
    overRows(context, (table, row, _stored, judged) =>
      typeof judged.spread === "number" && judged.spread > ASK_ABOVE
        ? {
            rule: "stands-out",
            weight: "query",
            ...where(table, row, "spread"),
            message: `${rowName(table, row)}: ${said(judged.corrected)} µΩ is ${Math.round(judged.spread * 100)} % above the lowest of its three; more than 50 % asks for investigation.`,
            found: said(judged.spread),
            expected: `at most ${ASK_ABOVE}`,
            source: "a breaker maker's bulletin (read)",
          }
        : undefined,
    ),
};
