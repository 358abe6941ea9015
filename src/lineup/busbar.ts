import type { Lineup, Panel } from "./lineup";

/** The bus sections of a lineup, each once, in the order in which their first panel stands. */
export const busSections = (lineup: Lineup): string[] => [
  ...new Set(lineup.panels.map((panel) => panel.section)),
];

/** A bus coupler, or a tie as it is called in American practice. */
export const isCoupler = ({ type }: Panel): boolean => type === "bus coupler" || type === "tie";

/** An incomer, or a main. */
export const isIncomer = ({ type }: Panel): boolean => type === "incomer" || type === "main";

/** A joint of the busbars of two panels, by the order in which they stand. */
export interface BusJoint {
  readonly left: Panel;
  readonly right: Panel;
}

/**
 * Busbar joints: one between each panel and the next of its section along the row, whatever stands
 * between them, and one for the link from each bus coupler to the section that it couples to.
 */
export const busJoints = ({ panels }: { readonly panels: readonly Panel[] }): BusJoint[] => {
  const links = linksOf(panels);
  return panels.flatMap((left, index) => {
    const right = panels.slice(index + 1).find(({ section }) => section === left.section);
    return [...(right ? [{ left, right }] : []), ...links.filter((link) => link.left === left)];
  });
};

/** A coupler is linked to the nearest riser of another section that no other coupler has, else to a neighbour of another section. */
function linksOf(panels: readonly Panel[]): BusJoint[] {
  const taken = new Set<Panel>();
  return panels.flatMap((coupler, at) => {
    if (!isCoupler(coupler)) return [];
    const away = (panel: Panel) => Math.abs(panels.indexOf(panel) - at);
    const others = panels
      .filter(({ section }) => section !== coupler.section)
      .sort((one, other) => away(one) - away(other));
    const other =
      others.find((panel) => panel.type === "riser" && !taken.has(panel)) ??
      others.find((panel) => panel.type !== "riser" && away(panel) === 1);
    if (!other) return [];
    taken.add(other);
    const [left, right] = panels.indexOf(other) < at ? [other, coupler] : [coupler, other];
    return [{ left, right }];
  });
}
