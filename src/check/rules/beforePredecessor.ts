import { serialDay } from "../../quantities/dates";
import type { Before, RecordKind, Row } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { type Context, dayOf, overKinds, type Rule, rowName, where } from "../context";

/** Insulation and withstand test have rules of their own, circuit by circuit. */
const hasOwnRule = (kind: RecordKind, { kind: before }: Before): boolean =>
  [kind, KINDS.find(({ id }) => id === before)].every(
    (one) => one?.role === "insulation" || one?.role === "withstand",
  );

/** A record dated before one that must come before it. */
export const beforePredecessor: Rule = {
  id: "before-predecessor",
  reads: "book",
  of: ({ id, after }) =>
    after !== undefined || KINDS.some((other) => other.after?.some(({ kind }) => kind === id)),
  find: (context) =>
    KINDS.flatMap((kind) =>
      (kind.after ?? [])
        .filter((before) => !hasOwnRule(kind, before))
        .flatMap((before) => {
          const text = context.text.rules["before-predecessor"];
          const latest = latestOf(context, before.kind, before.of);
          return overKinds(
            context,
            ({ id }) => id === kind.id,
            (table) => (row, stored) => {
              if (before.stage !== undefined && stored.stage !== before.stage) return undefined;
              const day = dayOf(stored.date);
              const first = latest.get(String(stored.object));
              return day !== undefined && first !== undefined && day < first
                ? {
                    rule: "before-predecessor",
                    weight: "query",
                    ...where(table, row, "date"),
                    message: text.message(
                      rowName(table, row),
                      serialDay(day),
                      titleOf(before.kind),
                      serialDay(first),
                    ),
                    found: serialDay(day),
                    expected: text.expected(serialDay(first)),
                  }
                : undefined;
            },
          );
        }),
    ),
};

const titleOf = (id: string): string =>
  KINDS.find((kind: RecordKind) => kind.id === id)?.title ?? id;

/** The latest day of a kind's records, by panel or section. */
function latestOf({ tables }: Context, kind: string, stage?: string): ReadonlyMap<string, number> {
  const latest = new Map<string, number>();
  for (const table of tables)
    if (table.kind.id === kind)
      for (const row of table.rows as readonly Row[]) {
        const day = dayOf(row.date);
        const object = String(row.object);
        if (day !== undefined && (stage === undefined || row.stage === stage))
          latest.set(object, Math.max(day, latest.get(object) ?? day));
      }
  return latest;
}
