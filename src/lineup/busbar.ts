import type { Lineup, Panel } from "./lineup";

/** The bus sections of a lineup, each once, in the order in which their first panel stands. */
export const busSections = (lineup: Lineup): string[] => [
  ...new Set(lineup.panels.map((panel) => panel.section)),
];

/** Busbar joints: one between each two neighbouring panels of a section. */
export const busJoints = (lineup: Lineup): { section: string; left: Panel; right: Panel }[] =>
  lineup.panels.flatMap((left, index) => {
    const right = lineup.panels[index + 1];
    return right && right.section === left.section ? [{ section: left.section, left, right }] : [];
  });
