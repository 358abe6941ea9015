import type { Lineup } from "../lineup/lineup";
import { panelOf } from "../lineup/panelOf";
import type { Row } from "./kind";

/** The names that a criterion for this row may apply to: its panel, and the section that the panel stands on. */
export function targetsOf(row: Row, lineup: Lineup): string[] {
  const object = String(row.object ?? "");
  const panel = panelOf(lineup, object);
  return panel ? [panel.designation, panel.section] : [object];
}
