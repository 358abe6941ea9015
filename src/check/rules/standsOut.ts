import type { CellValue } from "../../records/kind";
import { contactSpread } from "../../standards/contactSpread";
import { sourceText } from "../../standards/criterion";
import { type Rule, rowName, said, where } from "../context";

/** From so many times the lowest on, no contact is that much worse: a reading is in another unit (our own margin). */
const ABSURD = 100;

/** A pole or joint whose resistance stands out from its neighbours'. It is not by itself a failure. */
export const standsOut: Rule = {
  id: "stands-out",
  reads: "row",
  rows: (table, context) => (row, _stored, judged) => {
    const { spread, corrected } = judged;
    if (typeof spread !== "number" || spread <= contactSpread.value) return undefined;
    const text = context.text.rules["stands-out"];
    const [name, reading] = [rowName(table, row), said(corrected)];
    return {
      rule: "stands-out",
      weight: "query",
      ...where(table, row, "spread"),
      message:
        spread + 1 < ABSURD
          ? text.above(name, reading, Math.round(spread * 100), contactSpread.value * 100)
          : text.absurd(name, reading, Math.round(spread + 1), lowest(corrected, spread)),
      found: said(spread),
      expected: text.expected(contactSpread.value),
      source: sourceText(contactSpread.source),
    };
  },
};

/** The lowest of the three, from one of them and how far it is above that; undefined where that one is no number. */
const lowest = (corrected: CellValue | undefined, spread: number): string | undefined =>
  typeof corrected === "number"
    ? said(Number((corrected / (spread + 1)).toPrecision(3)))
    : undefined;
