import { serialDay } from "../../quantities/dates";
import type { Row } from "../../records/kind";
import { dayOf, overKind, type Rule, rowName, where } from "../context";

const circuit = (row: Row) => `${row.object}\u0000${row.part}`;

const connection = (row: Row) => `${circuit(row)}\u0000${row.combination}`;

/** Insulation "after" that is dated before the withstand test it should follow. */
export const afterBeforeWithstand: Rule = {
  id: "after-before-withstand",
  title: '"After" dated before',
  finds:
    'insulation "after" the withstand test that is dated before it, or before the measurement "before" of the same connection',
  why: "It is then not the insulation after the test.",
  satisfies: "the day on which it was measured, or the measurement made",
  quiet: "where one of the two has no date",
  reads: "book",
  of: ["insulation", "withstand"],
  find: (context) => {
    const tested = new Map<string, number>();
    for (const { kind, judged } of context.tables)
      if (kind.id === "withstand")
        for (const row of judged) {
          const day = dayOf(row.date);
          if (day === undefined) continue;
          // Open poles are not tested by themselves: their panel's test counts.
          for (const name of [circuit(row), String(row.object)])
            tested.set(name, Math.max(day, tested.get(name) ?? 0));
        }
    const before = new Map<string, number>();
    for (const { kind, judged } of context.tables)
      if (kind.id === "insulation")
        for (const row of judged) {
          const day = dayOf(row.date);
          if (row.stage === "before" && day !== undefined) before.set(connection(row), day);
        }
    return overKind(context, "insulation", (table) => (row, stored) => {
      const earlier = before.get(connection(stored));
      const day = tested.get(circuit(stored)) ?? tested.get(String(stored.object));
      const measured = dayOf(stored.date);
      if (stored.stage !== "after" || measured === undefined) return undefined;
      const follows =
        day !== undefined && measured < day
          ? `the withstand test of ${serialDay(day)}`
          : earlier !== undefined && measured < earlier
            ? `the measurement "before" of ${serialDay(earlier)}`
            : undefined;
      return follows === undefined
        ? undefined
        : {
            rule: "after-before-withstand",
            weight: "query" as const,
            ...where(table, row, "date"),
            message: `${rowName(table, row)}: dated ${serialDay(measured)}, before ${follows} that it should follow.`,
          };
    });
  },
};
