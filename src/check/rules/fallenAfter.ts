import type { Row } from "../../records/kind";
import { farAboveMinimum } from "../../standards/practice";
import { overKinds, type Rule, rowName, said, where, withRole } from "../context";

/** Below this share of the reading before, one after the withstand test is asked about: common practice, no source. */
const MATERIAL = 0.5;

const isInsulation = withRole("insulation");

const place = (row: Row) => `${row.object}\u0000${row.part}\u0000${row.combination}`;

/** Insulation after the withstand test that is materially below the one before. */
export const fallenAfter: Rule = {
  id: "fallen-after",
  reads: "book",
  of: isInsulation,
  find: (context) => {
    const text = context.text.rules["fallen-after"];
    const before = new Map<string, number>();
    for (const { kind, judged } of context.tables)
      if (isInsulation(kind))
        for (const row of judged)
          if (row.stage === "before" && typeof row.corrected === "number")
            before.set(place(row), row.corrected);
    return overKinds(context, isInsulation, (table) => (row, _stored, judged) => {
      const was = before.get(place(judged));
      return judged.stage === "after" &&
        typeof judged.corrected === "number" &&
        was !== undefined &&
        judged.corrected < MATERIAL * was &&
        !(
          typeof judged.minimum === "number" &&
          judged.corrected >= farAboveMinimum.value * judged.minimum
        )
        ? {
            rule: "fallen-after",
            weight: "query",
            ...where(table, row, "corrected"),
            message: text.message(rowName(table, row), said(judged.corrected), said(was)),
            found: said(judged.corrected),
            expected: text.expected(said(MATERIAL * was)),
          }
        : undefined;
    });
  },
};
