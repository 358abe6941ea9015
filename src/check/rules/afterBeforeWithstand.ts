import { serialDay } from "../../quantities/dates";
import type { Row } from "../../records/kind";
import {
  type Context,
  dayOf,
  type OfKinds,
  overKinds,
  type Rule,
  rowName,
  where,
  withRole,
} from "../context";

const isInsulation = withRole("insulation");
const isWithstand = withRole("withstand");

const circuit = (row: Row) => `${row.object}\u0000${row.part}`;

const connection = (row: Row) => `${circuit(row)}\u0000${row.combination}`;

/** The dated rows of some kinds. */
const datedRows = ({ tables }: Context, of: OfKinds): (readonly [row: Row, day: number])[] =>
  tables
    .filter(({ kind }) => of(kind))
    .flatMap(({ judged }) => judged)
    .flatMap((row) => {
      const day = dayOf(row.date);
      return day === undefined ? [] : [[row, day] as const];
    });

/** The last day of withstand tests, by circuit and by panel: open poles are not tested by themselves, so that their panel's test counts. */
function testDays(context: Context): ReadonlyMap<string, number> {
  const days = new Map<string, number>();
  for (const [row, day] of datedRows(context, isWithstand))
    for (const name of [circuit(row), String(row.object)])
      days.set(name, Math.max(day, days.get(name) ?? 0));
  return days;
}

/** Insulation "after" that is dated before the withstand test it should follow. */
export const afterBeforeWithstand: Rule = {
  id: "after-before-withstand",
  reach: "panel",
  reads: "book",
  of: withRole("insulation", "withstand"),
  find: (context) => {
    const text = context.text.rules["after-before-withstand"];
    const tests = testDays(context);
    const before = new Map(
      datedRows(context, isInsulation)
        .filter(([{ stage }]) => stage === "before")
        .map(([row, day]) => [connection(row), day]),
    );
    return overKinds(context, isInsulation, (table) => (row, stored) => {
      const measured = dayOf(stored.date);
      if (stored.stage !== "after" || measured === undefined) return undefined;
      const tested = tests.get(circuit(stored)) ?? tests.get(String(stored.object));
      const earlier = before.get(connection(stored));
      const [name, day] = [rowName(table, row), serialDay(measured)];
      const at = {
        rule: "after-before-withstand",
        weight: "query" as const,
        ...where(table, row, "date"),
      };
      if (tested !== undefined && measured < tested)
        return { ...at, message: text.beforeTest(name, day, serialDay(tested)) };
      return earlier !== undefined && measured < earlier
        ? { ...at, message: text.beforeFirst(name, day, serialDay(earlier)) }
        : undefined;
    });
  },
};
