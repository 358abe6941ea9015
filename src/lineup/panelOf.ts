import { bare, type Lineup, type Panel } from "./lineup";

const known = new WeakMap<Lineup, ReadonlyMap<string, Panel>>();

/** The panel of this name, whatever its case, spaces and punctuation; looked up, not searched for. */
export function panelOf(lineup: Lineup, name: string): Panel | undefined {
  let panels = known.get(lineup);
  if (!panels) {
    panels = new Map(
      lineup.panels.flatMap((panel) => [
        [bare(panel.designation), panel],
        [panel.designation, panel],
      ]),
    );
    known.set(lineup, panels);
  }
  return panels.get(name) ?? panels.get(bare(name));
}
