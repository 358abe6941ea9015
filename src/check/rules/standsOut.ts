import { contactSpread } from "../../criteria/contactSpread";
import { sourceText } from "../../criteria/criterion";
import { type Rule, rowName, said, where } from "../context";

/** A pole or joint whose resistance stands out from its neighbours'. It is not by itself a failure. */
export const standsOut: Rule = {
  id: "stands-out",
  title: "A pole that stands out",
  finds:
    "a pole or joint whose resistance is above the lowest of its three by more than the accepted share",
  why: "Poles of one breaker are made alike: the odd one has worn, dirty or loose contacts.",
  satisfies: "an investigation and its outcome",
  quiet: "where fewer than two poles have readings; it is no failure by itself",
  reads: "row",
  rows: (table) => (row, _stored, judged) =>
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
};
