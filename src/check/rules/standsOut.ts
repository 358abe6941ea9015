import { contactSpread } from "../../criteria/contactSpread";
import { sourceText } from "../../criteria/criterion";
import { overRows, type Rule, rowName, said, where } from "../context";

/** A pole or joint whose resistance stands out from its neighbours'. It is not by itself a failure. */
export const standsOut: Rule = {
  id: "stands-out",
  find: (context) =>
    overRows(
      context,
      (table) => (row, _stored, judged) =>
        typeof judged.spread === "number" && judged.spread > contactSpread.value
          ? {
              rule: "stands-out",
              weight: "query",
              ...where(table, row, "spread"),
              message: `${rowName(table, row)}: ${said(judged.corrected)} µΩ is ${Math.round(judged.spread * 100)} % above the lowest of its three; more than ${contactSpread.value * 100} % asks for investigation.`,
              found: said(judged.spread),
              expected: `at most ${contactSpread.value}`,
              source: sourceText(contactSpread.source),
            }
          : undefined,
    ),
};
