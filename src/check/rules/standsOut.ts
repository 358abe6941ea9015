import type { CellValue } from "../../records/kind";
import { sourceText } from "../../standards/criterion";
import { contactSpread } from "../../standards/practice";
import { amongRows, columnsNamed } from "../among/amongRows";
import { inUnit, type Rule, rowName, said, where } from "../context";

/** From so many times the lowest on, no contact is that much worse: a reading is in another unit (our own margin). */
const ABSURD = 100;

/** A pole or joint whose resistance stands out from its neighbours'. It is not by itself a failure. */
export const standsOut: Rule = {
  id: "stands-out",
  reads: "row",
  among: (table) =>
    amongRows(
      table,
      columnsNamed(table, "spread"),
      (_stored, spread) => typeof spread === "number" && spread > contactSpread.value,
    ),
  rows: (table, context) => (row, _stored, judged) => {
    const { spread } = judged;
    // What is spread is what the kind accepts a row by first: a resistance, corrected or not.
    const [compared] = table.kind.accepted;
    if (!compared || typeof spread !== "number" || spread <= contactSpread.value) return undefined;
    const { value, unit } = compared;
    const text = context.text.rules["stands-out"];
    const [name, reading] = [rowName(table, row), inUnit(judged[value], unit)];
    const lowest = lowestOf(judged[value], spread);
    return {
      rule: "stands-out",
      weight: "query",
      ...where(table, row, "spread"),
      message:
        spread + 1 < ABSURD
          ? text.above(name, reading, Math.round(spread * 100), contactSpread.value * 100)
          : text.absurd(
              name,
              reading,
              Math.round(spread + 1),
              lowest === undefined ? lowest : inUnit(lowest, unit),
            ),
      found: said(spread),
      expected: text.expected(contactSpread.value),
      source: sourceText(contactSpread.source),
    };
  },
};

/** The lowest of the group, from one of them and how far it is above that; undefined where that one is no number. */
const lowestOf = (reading: CellValue | undefined, spread: number): number | undefined =>
  typeof reading === "number" ? Number((reading / (spread + 1)).toPrecision(3)) : undefined;
