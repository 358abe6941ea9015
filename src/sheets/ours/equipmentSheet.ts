import type { Lineup, Panel } from "../../lineup/lineup";
import { type Column, isBlank, type Row } from "../../records/kind";
import type { PlannedSheet } from "../plan/plannedSheet";
import { inWords, type Path, pathOf } from "./equipmentWords";
import { factsOf, wholeOf } from "./facts";

export const EQUIPMENT_TABLE = "GearEquipment";

export const EQUIPMENT_COLUMNS: readonly Column[] = [
  { id: "panel", header: "Panel", role: "key", width: 12 },
  { id: "item", header: "Item", role: "key", width: 52 },
  { id: "value", header: "Value", role: "given", width: 44 },
];

/** What stands in a panel, without what the sheet of panels shows. */
export const equipmentOf = ({
  designation: _designation,
  name: _name,
  type: _type,
  section: _section,
  breaker,
  ...equipment
}: Panel): Record<string, unknown> => {
  const { designation: _q, medium: _m, ratedA: _a, ...plate } = breaker ?? {};
  return { breaker: plate, ...equipment };
};

/** Plates, settings and joints of every panel, fact by fact. */
export const equipmentSheet = (lineup: Lineup): PlannedSheet => ({
  sheet: "Equipment",
  table: EQUIPMENT_TABLE,
  title: "Equipment of the panels",
  purpose:
    "Plates, settings and joints as the lineup's description gives them, which the records are made for and judged by. A change belongs there, then build again.",
  cautions: [],
  columns: EQUIPMENT_COLUMNS,
  rows: lineup.panels.flatMap((panel) =>
    factsOf(equipmentOf(panel))
      // By what name the builder knows it is told to nobody.
      .filter(({ path }) => path.at(-1) !== "knownAs")
      .map(({ path, value }): Row => ({ panel: panel.designation, item: inWords(path), value })),
  ),
});

/** The equipment of each panel, as the rows of the sheet tell it. */
export function equipmentTold(rows: readonly Row[]): ReadonlyMap<string, Record<string, unknown>> {
  const byPanel = new Map<string, Row[]>();
  for (const row of rows) {
    if (isBlank(row.panel) || isBlank(row.item) || isBlank(row.value)) continue;
    const panel = String(row.panel);
    const sofar = byPanel.get(panel);
    if (sofar) sofar.push(row);
    else byPanel.set(panel, [row]);
  }
  // Panels hold the same items.
  const paths = new Map<string, Path>();
  const path = (words: string): Path => {
    const known = paths.get(words) ?? pathOf(words);
    paths.set(words, known);
    return known;
  };
  return new Map(
    [...byPanel].map(([panel, facts]) => [
      panel,
      wholeOf(facts.map(({ item, value }) => ({ path: path(String(item)), value: value ?? null }))),
    ]),
  );
}
