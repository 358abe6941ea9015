import { serialDay } from "../../quantities/dates";
import { isBlank, type Row, verdictOf } from "../../records/kind";
import { type Context, dayOf, overRows, type Rule, rowName, where } from "../context";
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

/** A withstand test on a circuit whose insulation had not passed before it. */
export const withstandBeforeInsulation: Rule = {
  id: "withstand-before-insulation",
  find: (context) => {
    const before = insulationOf(context, "before");
    return overRows(
      context,
      (table) =>
        (row, stored): Finding | undefined => {
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
          const late = rows.find(
            (one) =>
              typeof one.date === "number" &&
              typeof stored.date === "number" &&
              one.date > stored.date,
          );
          return late && typeof late.date === "number" && typeof stored.date === "number"
            ? {
                ...at,
                message: `${rowName(table, row)}: tested on ${serialDay(stored.date)}, before its insulation "before" was measured on ${serialDay(late.date)}.`,
              }
            : undefined;
        },
      "withstand",
    );
  },
};

/** Insulation "after" that is dated before the withstand test it should follow. */
export const afterBeforeWithstand: Rule = {
  id: "after-before-withstand",
  find: (context) => {
    const tested = new Map<string, number>();
    for (const { kind, judged } of context.tables)
      if (kind.id === "withstand")
        for (const row of judged) {
          const day = dayOf(row.date);
          if (day !== undefined)
            tested.set(circuit(row), Math.max(day, tested.get(circuit(row)) ?? 0));
        }
    return overRows(
      context,
      (table) => (row, stored) => {
        const day = tested.get(circuit(stored));
        const measured = dayOf(stored.date);
        return stored.stage === "after" &&
          measured !== undefined &&
          day !== undefined &&
          measured < day
          ? {
              rule: "after-before-withstand",
              weight: "query",
              ...where(table, row, "date"),
              message: `${rowName(table, row)}: dated ${serialDay(measured)}, before the withstand test of ${serialDay(day)} that it should follow.`,
            }
          : undefined;
      },
      "insulation",
    );
  },
};
