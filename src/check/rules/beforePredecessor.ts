import { serialDay } from "../../quantities/dates";
import { groupedBy } from "../../quantities/groupedBy";
import { type Before, isBlank, type RecordKind, type Row } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { kindWords } from "../../records/kindWords";
import { type Context, dayOf, overKinds, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { oncePerEntry } from "../findings/oncePerEntry";

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
    KINDS.flatMap((kind) => {
      const told = new Set<string>();
      const found = (kind.after ?? [])
        .filter((before) => !hasOwnRule(kind, before))
        .flatMap((before) => earlierThan(kind, before, context))
        // Dated before two of them it is one question.
        .filter(({ sheet, address }) => {
          const place = `${sheet} ${address}`;
          return told.has(place) ? false : told.add(place);
        });
      // So it is of a panel, however many rows it has.
      return [
        ...groupedBy(
          found,
          ({ sheet, panel, expected }) => `${sheet}\u0000${panel}\u0000${expected}`,
        ).values(),
      ].flatMap((some) => oncePerEntry(some, context.text));
    }),
};

/** The rows of a kind that are dated before what must come before them. */
function earlierThan(kind: RecordKind, before: Before, context: Context): Finding[] {
  const text = context.text.rules["before-predecessor"];
  const latest = latestOf(context, before);
  const own = before.own ?? objectOf;
  return overKinds(
    context,
    ({ id }) => id === kind.id,
    (table) => (row, stored) => {
      if (before.stage !== undefined && stored.stage !== before.stage) return undefined;
      if (before.orRemark && !isBlank(stored.remarks)) return undefined;
      const day = dayOf(stored.date);
      const first = latest.get(own(stored) ?? "");
      if (day === undefined || first === undefined || !isBefore(day, first)) return undefined;
      return {
        rule: "before-predecessor",
        weight: "query",
        ...where(table, row, "date"),
        message: text.message(
          rowName(table, row),
          serialDay(day),
          kindWords(context.text, before.kind).title,
          serialDay(first),
        ),
        found: serialDay(day),
        expected: text.expected(serialDay(first)),
      };
    },
  );
}

const objectOf = ({ object }: Row): string => String(object);

/** A day without an hour is before another day alone. */
const isBefore = (day: number, first: number): boolean =>
  Number.isInteger(day) ? day < Math.floor(first) : day < first;

/** The latest day of the records of the kind before, by what they are of. */
function latestOf(
  { tables }: Context,
  { kind, of: stage, other = objectOf }: Before,
): ReadonlyMap<string, number> {
  const latest = new Map<string, number>();
  for (const table of tables)
    if (table.kind.id === kind)
      for (const row of table.rows as readonly Row[]) {
        const day = dayOf(row.date);
        const object = other(row);
        if (
          object !== undefined &&
          day !== undefined &&
          (stage === undefined || row.stage === stage)
        )
          latest.set(object, Math.max(day, latest.get(object) ?? day));
      }
  return latest;
}
