import { serialDay } from "../../quantities/dates";
import { isBlank, type Row, verdictOf } from "../../records/kind";
import { type Context, dayOf, overKind, type Rule, rowName, where, whereTable } from "../context";
import type { Finding } from "../finding";

const circuit = (row: Row) => `${row.object}\u0000${row.part}`;

/** Insulation rows of one stage, by circuit. */
function insulationOf(context: Context, stage: "before" | "after"): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const { kind, judged } of context.tables)
    if (kind.id === "insulation")
      for (const row of judged)
        if (row.stage === stage) {
          const group = groups.get(circuit(row));
          if (group) group.push(row);
          else groups.set(circuit(row), [row]);
        }
  return groups;
}

/** Where a project keeps its insulation records elsewhere, somebody has to look there, once. */
const notHere = ({ tables }: Context, reason: string): Finding[] =>
  tables
    .filter(
      ({ kind, rows }) => kind.id === "withstand" && rows.some(({ applied }) => !isBlank(applied)),
    )
    .slice(0, 1)
    .map((table) => ({
      rule: "withstand-before-insulation",
      weight: "query",
      ...whereTable(table),
      message: `Insulation is left out of this workbook (${reason}), so that it does not show whether the insulation had passed before the withstand test; look it up where it is kept, or take it in.`,
    }));

/** A withstand test on a circuit whose insulation had not passed before it. */
export const withstandBeforeInsulation: Rule = {
  id: "withstand-before-insulation",
  title: "Withstand before insulation",
  finds:
    "a withstand test on a circuit whose insulation had not passed before it; once, as a query, where the project leaves insulation out",
  why: "A withstand test on wet or dirty insulation destroys what drying would have saved.",
  satisfies: "the insulation measured and passed on the day of the withstand test or before",
  quiet: "for withstand rows without a reading",
  reads: "book",
  of: ["insulation", "withstand"],
  find: (context) => {
    const before = insulationOf(context, "before");
    const leftOut = context.lineup.leaveOut.find(({ kind }) => kind === "insulation");
    if (leftOut && before.size === 0) return notHere(context, leftOut.reason);
    return overKind(context, "withstand", (table) => (row, stored): Finding | undefined => {
      if (isBlank(stored.applied)) return undefined;
      const rows = before.get(circuit(stored)) ?? [];
      const at = {
        rule: "withstand-before-insulation",
        weight: "stop" as const,
        ...where(table, row, "applied"),
      };
      const open = rows.filter((one) => verdictOf(one) !== "Pass");
      if (rows.length === 0 || open.length > 0)
        return {
          ...at,
          message: `${rowName(table, row)}: tested, though its insulation before the test had not passed (${
            open.map((one) => `${one.combination}: ${verdictOf(one)}`).join(", ") ||
            "no insulation row for this circuit"
          }).`,
        };
      const day = dayOf(stored.date);
      const late = rows.map(({ date }) => dayOf(date)).find((one) => Number(one) > Number(day));
      return late !== undefined && day !== undefined
        ? {
            ...at,
            message: `${rowName(table, row)}: tested on ${serialDay(day)}, before its insulation "before" was measured on ${serialDay(late)}.`,
          }
        : undefined;
    });
  },
};
