import type { Lineup } from "../../lineup/lineup";
import type { Column } from "../../records/kind";
import type { PlannedSheet } from "../plan/plannedSheet";

export const PANEL_TABLE = "GearPanels";

export const PANEL_COLUMNS: readonly Column[] = [
  { id: "panel", header: "Panel", role: "key", width: 12 },
  { id: "name", header: "Circuit", role: "given", width: 28 },
  { id: "type", header: "Type", role: "given", width: 18 },
  { id: "section", header: "Bus section", role: "given", width: 14 },
  { id: "breaker", header: "Breaker", role: "given", width: 10 },
  { id: "medium", header: "Medium", role: "given", width: 10 },
  { id: "ratedA", header: "Rated current A", role: "given", width: 12 },
  { id: "massKg", header: "Mass kg", role: "given", width: 10 },
];

/** The panels in the order in which they stand, seen from the front. */
export const panelSheet = (lineup: Lineup): PlannedSheet => ({
  sheet: "Panels",
  table: PANEL_TABLE,
  title: "Panels of the lineup",
  purpose: "In the order in which they stand, seen from the front, left to right.",
  cautions: [],
  columns: PANEL_COLUMNS,
  rows: lineup.panels.map(({ designation, name, type, section, breaker, massKg }) => ({
    panel: designation,
    name: name ?? null,
    type,
    section,
    breaker: breaker?.designation ?? null,
    medium: breaker?.medium ?? null,
    ratedA: breaker?.ratedA ?? null,
    massKg: massKg ?? null,
  })),
});
