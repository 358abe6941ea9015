import type { FindingsText } from "../../messages/messages";
import { serialDay } from "../../quantities/dates";
import { isBlank, type Row, verdictOf } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import {
  type Context,
  dayOf,
  overKinds,
  type Rule,
  rowName,
  where,
  whereTable,
  withRole,
} from "../context";
import type { Finding } from "../findings/finding";

const isInsulation = withRole("insulation");
const isWithstand = withRole("withstand");

const circuit = (row: Row) => `${row.object}\u0000${row.part}`;

/** Insulation rows "before", by circuit. */
function insulationBefore({ tables }: Context): ReadonlyMap<string, readonly Row[]> {
  const groups = new Map<string, Row[]>();
  const rows = tables
    .filter(({ kind }) => isInsulation(kind))
    .flatMap(({ judged }) => judged)
    .filter(({ stage }) => stage === "before");
  for (const row of rows) {
    const group = groups.get(circuit(row)) ?? [];
    groups.set(circuit(row), group);
    group.push(row);
  }
  return groups;
}

/** Where a project keeps its insulation records elsewhere, somebody has to look there, once. */
const notHere = ({ tables, text }: Context, reason: string): Finding[] =>
  tables
    .filter(({ kind, rows }) => isWithstand(kind) && rows.some(({ applied }) => !isBlank(applied)))
    .slice(0, 1)
    .map((table) => ({
      rule: "withstand-before-insulation",
      weight: "query",
      ...whereTable(table),
      message: text.rules["withstand-before-insulation"].leftOut(reason),
    }));

/** A withstand test on a circuit whose insulation had not passed before it. */
export const withstandBeforeInsulation: Rule = {
  id: "withstand-before-insulation",
  reach: "panel",
  reads: "book",
  of: withRole("insulation", "withstand"),
  find: (context) => {
    const before = insulationBefore(context);
    const leftOut = context.lineup.leaveOut.find(({ kind }) =>
      KINDS.some((one) => one.id === kind && isInsulation(one)),
    );
    if (leftOut && before.size === 0) return notHere(context, leftOut.reason);
    return overKinds(context, isWithstand, (table) => (row, stored): Finding | undefined => {
      if (isBlank(stored.applied)) return undefined;
      const rows = before.get(circuit(stored)) ?? [];
      const message = tooEarly(rows, dayOf(stored.date), rowName(table, row), context.text);
      return message === undefined
        ? undefined
        : {
            rule: "withstand-before-insulation",
            weight: "stop",
            ...where(table, row, "applied"),
            message,
          };
    });
  },
};

/** Why a withstand test came too early for the insulation of its circuit; undefined where it did not. */
function tooEarly(
  rows: readonly Row[],
  day: number | undefined,
  name: string,
  { rules }: FindingsText,
): string | undefined {
  const text = rules["withstand-before-insulation"];
  if (rows.length === 0) return text.noRow(name);
  const isOpen = (row: Row) => verdictOf(row) !== "Pass";
  const isLate = ({ date }: Row) => Number(dayOf(date)) > Number(day);
  if (rows.some(isOpen))
    return text.notPassed(
      name,
      rows.flatMap((row) =>
        isOpen(row)
          ? [`${row.combination}: ${verdictOf(row)}`]
          : isLate(row)
            ? [`${row.combination}: ${serialDay(Number(dayOf(row.date)))}`]
            : [],
      ),
    );
  const late = rows.find(isLate);
  return late && day !== undefined
    ? text.measuredLater(name, serialDay(day), serialDay(Number(dayOf(late.date))))
    : undefined;
}
