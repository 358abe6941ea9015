import { isCoupler, isIncomer } from "../../lineup/busbar";
import type { Lineup, Panel } from "../../lineup/lineup";
import { itemColumns, itemRows, ownItems, type UsualItem } from "../columns/checkItems";
import type { RecordKind } from "../kind";
import { voidBy } from "../repairs";

const hasVoltage = ({ voltageTransformers }: Panel) => voltageTransformers.length > 0;
const joinsSources = (panel: Panel) =>
  panel.breaker !== undefined && (isCoupler(panel) || isIncomer(panel));

/** Common practice, no source. */
const usual = ({ phases }: Lineup): readonly UsualItem[] => [
  {
    item: `Voltage transformers: rotation ${phases.join("-")} at every terminal that takes it`,
    of: hasVoltage,
    always: true,
  },
  {
    item: "Voltage transformers: fuses and links back as drawn after the tests",
    of: hasVoltage,
    always: true,
  },
  {
    item: "Synchronizing check: permitted cases close, refused ones do not",
    of: joinsSources,
  },
  {
    item: "Synchronizing check: live bus with dead line, dead bus with live line, both dead as set",
    of: joinsSources,
  },
];

/** Phases of each cable from end to end. */
const cables = ({ cables }: Panel): UsualItem[] =>
  cables.map(({ designation }) => ({
    item: `Cable ${designation}: phases end to end as marked, far end named in the remarks`,
    always: true,
  }));

/** Rotation, identity of phases and synchronizing check. */
export const rotation: RecordKind<"rotation"> = {
  id: "rotation",
  alsoCalled: ["phase rotation", "synchronizing check"],
  step: "energization",
  onRequest: true,
  ownItems: "seen to",
  sheet: "Rotation",
  table: "GearRotation",
  columns: itemColumns("Panel", "What is tried", "As tried, against the drawing."),
  rows: (lineup) => {
    const own = ownItems(lineup, "rotation");
    const items = usual(lineup);
    return lineup.panels.flatMap((panel) => itemRows(panel, [...items, ...cables(panel)], own));
  },
  shownBy: ({ part }) =>
    String(part).startsWith("Synchronizing check: ")
      ? [{ kind: "protection", of: (row) => /\b25\b/.test(String(row.part)) }]
      : [],
  voidBy: voidBy(["Cable", "Voltage transformer"]),
  accepted: [],
  enough: [],
};
