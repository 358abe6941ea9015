import type { Lineup } from "../../lineup/lineup";
import { renamed } from "../../lineup/renamed";
import { type Row, rowKey } from "../../records/kind";
import { type Plan, planFor } from "./plan";
import type { PlannedSheet } from "./plannedSheet";

/** The key cells that a row has now, by the key that it had. */
export type RenamedRows = ReadonlyMap<string, Row>;

const NONE: RenamedRows = new Map();

const keysOf = ({ columns }: PlannedSheet) =>
  columns.filter(({ role }) => role === "key").map(({ id }) => id);

/**
 * Rows whose panel, breaker, core, cable or other equipment is called otherwise now, by table: the lineup
 * of before and the same under its names of now give the same rows one by one.
 *
 * @param before the lineup that the workbook was built for; undefined where it tells none
 */
export function renamedRows(
  before: Lineup | undefined,
  { lineup }: Plan,
): (table: string) => RenamedRows {
  if (!before) return () => NONE;
  const same = renamed(before, lineup);
  if (JSON.stringify(same) === JSON.stringify(before)) return () => NONE;
  const next = new Map(planFor(same).sheets.map((sheet) => [sheet.table, sheet]));
  const found = new Map(
    planFor(before).sheets.map((sheet) => [sheet.table, pairs(sheet, next.get(sheet.table))]),
  );
  return (table) => found.get(table) ?? NONE;
}

function pairs(was: PlannedSheet, now: PlannedSheet | undefined): RenamedRows {
  if (was.rows.length !== now?.rows.length) return NONE;
  const ids = keysOf(was);
  return new Map(
    was.rows.flatMap((row, at): [string, Row][] => {
      const key = rowKey(row, ids);
      const next = now.rows[at] ?? {};
      return key === rowKey(next, ids)
        ? []
        : [[key, Object.fromEntries(ids.map((id) => [id, next[id] ?? null]))]];
    }),
  );
}
