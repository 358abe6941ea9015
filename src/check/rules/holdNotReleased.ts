import { type Lineup, sameName } from "../../lineup/lineup";
import { serialDay } from "../../quantities/dates";
import { LINEUP } from "../../records/columns/common";
import { type Row, verdictOf } from "../../records/kind";
import { inspection } from "../../records/kinds/inspection";
import { isLeftOut } from "../../records/rowsOf";
import { type Context, dayOf, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";

/** The panels that a record is about: a panel, those of a section, or all of the lineup. */
const panelsOf = ({ panels }: Lineup, object: string) =>
  panels
    .filter(
      ({ designation, section }) =>
        object === LINEUP || sameName(designation, object) || sameName(section, object),
    )
    .map(({ designation }) => designation);

/** The inspection rows of an activity, by what they are about. */
const releasesOf = ({ tables }: Context, activity: string): ReadonlyMap<string, Row> =>
  new Map(
    tables
      .filter(({ kind }) => kind.id === inspection.id)
      .flatMap(({ judged }) => judged)
      .filter(({ part }) => part === activity)
      .map((row) => [String(row.object), row]),
  );

/** Why a record made on this day went ahead too early; undefined where every release came first. */
function tooEarly(releases: readonly (Row | undefined)[], day: number | undefined) {
  if (releases.some((row) => !row || verdictOf(row) !== "Pass")) return "which is not released";
  const late = releases.map((row) => dayOf(row?.date)).find((held) => Number(held) > Number(day));
  return late !== undefined && day !== undefined
    ? `released on ${serialDay(late)}, after this record of ${serialDay(day)}`
    : undefined;
}

/**
 * Records of a kind that went ahead before the hold point that guards it was released, or without its
 * release: one finding a table and panel, at its first such row.
 */
export const holdNotReleased: Rule = {
  id: "hold-not-released",
  title: "A hold point passed over",
  finds: "records of a kind that went ahead before the hold point that guards it was released",
  why: "A hold point is where the client agreed to look first; what was done without it may have to be done again.",
  satisfies: "the release, dated on or before the records' day",
  quiet: "where inspection points are left out, and for rows without readings",
  reads: "book",
  of: "every kind",
  find: (context) =>
    isLeftOut(context.lineup, inspection)
      ? []
      : context.lineup.inspectionPoints.flatMap(({ activity, guards = [], each }) => {
          const releases = releasesOf(context, activity);
          return context.tables
            .filter(({ kind }) => guards.some((guarded) => guarded === kind.id))
            .flatMap((table): Finding[] => {
              const seen = new Set<string>();
              return table.judged.flatMap((judged, row): Finding[] => {
                const object = String(judged.object ?? "");
                if (table.aside.has(row) || verdictOf(judged) === "Missing" || seen.has(object))
                  return [];
                const about = each === "lineup" ? [LINEUP] : panelsOf(context.lineup, object);
                const why = tooEarly(
                  about.map((one) => releases.get(one)),
                  dayOf(judged.date),
                );
                if (why === undefined) return [];
                seen.add(object);
                return [
                  {
                    rule: "hold-not-released",
                    weight: "stop",
                    ...where(table, row, "date"),
                    message: `${rowName(table, row)}: went ahead of the hold point "${activity}", ${why}. Nothing that it guards goes ahead before its release.`,
                  },
                ];
              });
            });
        }),
};
