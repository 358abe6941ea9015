import type { CellValue } from "../../records/kind";
import { contactSpread } from "../../standards/contactSpread";
import { sourceText } from "../../standards/criterion";
import { type Rule, rowName, said, where } from "../context";

/** From so many times the lowest on, no contact is that much worse: a reading is in another unit (our own margin). */
const ABSURD = 100;

const above = (corrected: CellValue | undefined, spread: number): string =>
  spread + 1 < ABSURD
    ? `${Math.round(spread * 100)} % above the lowest of its three; more than ${contactSpread.value * 100} % asks for investigation.`
    : `${Math.round(spread + 1)} times the lowest of its three${typeof corrected === "number" ? `, ${said(Number((corrected / (spread + 1)).toPrecision(3)))} µΩ` : ""}: one of the three is written in another unit, or is no reading; put that right first.`;

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
          message: `${rowName(table, row)}: ${said(judged.corrected)} µΩ is ${above(judged.corrected, judged.spread)}`,
          found: said(judged.spread),
          expected: `at most ${contactSpread.value}`,
          source: sourceText(contactSpread.source),
        }
      : undefined,
};
