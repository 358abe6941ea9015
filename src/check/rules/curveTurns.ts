import { memoizeFor } from "../../quantities/memoizeFor";
import { type RecordKind, verdictOf } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { amongRows, columnsNamed } from "../among/amongRows";
import { headerOf, inUnit, type Rule, rowName, where } from "../context";

/** The points of a curve that is measured along and upward, in order, by the ids of their two columns. */
const pointsOf = memoizeFor(({ curve }: RecordKind): readonly (readonly [string, string])[] =>
  (curve?.points ?? []).flatMap(([along, upward]) =>
    typeof along === "string" ? [[along, upward] as const] : [],
  ),
);

/** A curve of which a point lies lower than the one before it, though both stand further along: a slip of the pen, or no curve. */
export const curveTurns: Rule = {
  id: "curve-turns",
  reads: "row",
  of: (kind) => pointsOf(kind).length > 1,
  among: (table) =>
    amongRows(
      table,
      columnsNamed(table, ...pointsOf(table.kind).flat()),
      (stored) => stored !== null,
    ),
  rows: (table, { text }) => {
    const says = text.rules["curve-turns"];
    const points = pointsOf(table.kind);
    const unitOf = new Map(table.kind.columns.map(({ id, unit }) => [id, unit]));
    const number = (row: Parameters<typeof exactly>[0], id: string) => {
      const unit = unitOf.get(id);
      return unit ? exactly(row, unit) : undefined;
    };
    return (row, stored, judged) => {
      // A curve that nothing can be worked out from, another rule tells.
      if (verdictOf(judged) === "Inconclusive") return undefined;
      const read = points.flatMap(([along, upward]) => {
        const [x, y] = [number(stored[along], along), number(stored[upward], upward)];
        return x === undefined || y === undefined ? [] : [{ along, upward, x, y }];
      });
      const at = read.findIndex((one, place) => {
        const before = read[place - 1];
        return before !== undefined && one.x <= before.x !== one.y <= before.y;
      });
      const [before, turned] = [read[at - 1], read[at]];
      if (!before || !turned) return undefined;
      const id = turned.y <= before.y ? turned.upward : turned.along;
      const earlier = turned.y <= before.y ? before.upward : before.along;
      const [is, was] = [stored[id], stored[earlier]].map((cell) => inUnit(cell, unitOf.get(id)));
      return {
        rule: "curve-turns",
        weight: "query",
        ...where(table, row, id),
        message: says.message(
          rowName(table, row),
          headerOf(table, id),
          is ?? "",
          headerOf(table, earlier),
          was ?? "",
        ),
        found: is ?? "",
        expected: says.expected(was ?? ""),
      };
    };
  },
};
