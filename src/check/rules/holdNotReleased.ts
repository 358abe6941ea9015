import type { Lineup } from "../../lineup/lineup";
import { serialDay } from "../../quantities/dates";
import { LINEUP } from "../../records/columns/common";
import { type Row, verdictOf } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { isLeftOut } from "../../records/rowsOf";
import {
  type Context,
  dayOf,
  everyKind,
  type JudgedTable,
  type Rule,
  rowName,
  where,
  withRole,
} from "../context";
import type { Finding } from "../findings/finding";
import { panelsOf } from "../panelsOf";

const isInspection = withRole("inspection");

/** The inspection rows of an activity, by what they are about. */
const releasesOf = ({ tables }: Context, activity: string): ReadonlyMap<string, Row> =>
  new Map(
    tables
      .filter(({ kind }) => isInspection(kind))
      .flatMap(({ judged }) => judged)
      .filter(({ part }) => part === activity)
      .map((row) => [String(row.object), row]),
  );

/** When a hold point was released that is released too late for a record of this day, or that it is not released at all. */
function lateRelease(
  releases: readonly (Row | undefined)[],
  day: number | undefined,
): number | "not released" | undefined {
  if (releases.some((row) => !row || verdictOf(row) !== "Pass")) return "not released";
  return releases.map((row) => dayOf(row?.date)).find((held) => Number(held) > Number(day));
}

type HoldPoint = Lineup["inspectionPoints"][number];

/** The rows of a table that went ahead of a hold point: the first of each panel. */
function aheadOf(
  { activity, each }: HoldPoint,
  releases: ReadonlyMap<string, Row>,
  table: JudgedTable,
  { lineup, text }: Context,
): Finding[] {
  const says = text.rules["hold-not-released"];
  const told = new Set<string>();
  return table.judged.flatMap((judged, row): Finding[] => {
    const object = String(judged.object ?? "");
    if (table.aside.has(row) || verdictOf(judged) === "Missing" || told.has(object)) return [];
    const about = each === "lineup" ? [LINEUP] : panelsOf(lineup, object);
    const day = dayOf(judged.date);
    const late = lateRelease(
      about.map((name) => releases.get(name)),
      day,
    );
    if (late === undefined) return [];
    told.add(object);
    return [
      {
        rule: "hold-not-released",
        weight: "stop",
        ...where(table, row, "date"),
        message:
          late === "not released"
            ? says.notReleased(rowName(table, row), activity)
            : says.releasedLate(
                rowName(table, row),
                activity,
                serialDay(late),
                serialDay(day ?? 0),
              ),
      },
    ];
  });
}

/**
 * Records of a kind that went ahead before the hold point that guards it was released, or without its
 * release: one finding a table and panel, at its first such row.
 */
export const holdNotReleased: Rule = {
  id: "hold-not-released",
  reach: "table",
  reads: "book",
  of: everyKind,
  find: (context) =>
    KINDS.some((kind) => isInspection(kind) && isLeftOut(context.lineup, kind))
      ? []
      : context.lineup.inspectionPoints.flatMap((point) => {
          const releases = releasesOf(context, point.activity);
          return context.tables
            .filter(({ kind }) => point.guards?.some((guarded) => guarded === kind.id))
            .flatMap((table) => aheadOf(point, releases, table, context));
        }),
};
