import { PANEL_TYPES } from "./equipment";

/** What a panel can be asked to have on the way from its busbar. */
export const USUAL_PARTS = [
  "breaker",
  "currentTransformers",
  "voltageTransformers",
  "protection",
  "cables",
] as const;
export type UsualPart = (typeof USUAL_PARTS)[number];

type PanelType = (typeof PANEL_TYPES)[number];
const OUTGOING: readonly UsualPart[] = ["breaker", "currentTransformers", "protection", "cables"];
const COUPLING: readonly UsualPart[] = ["breaker", "currentTransformers"];

/** What panels of a type usually have (common practice, no source). */
const USUAL: Readonly<Record<PanelType, readonly UsualPart[]>> = {
  incomer: OUTGOING,
  main: OUTGOING,
  feeder: OUTGOING,
  "transformer feeder": OUTGOING,
  "motor feeder": OUTGOING,
  "bus coupler": COUPLING,
  tie: COUPLING,
  riser: [],
  metering: ["voltageTransformers"],
};

/** A panel as a lineup or its form has it. */
export type DescribedPanel = { readonly type?: unknown } & {
  readonly [P in UsualPart]?: unknown;
};

export const hasPart = (panel: DescribedPanel, part: UsualPart): boolean => {
  const found = panel[part];
  return Array.isArray(found) ? found.length > 0 : found !== undefined && found !== null;
};

/**
 * What a panel of its type usually has and this one is not said to have. It may well have none.
 *
 * @example undescribed({ type: "metering" }) // ["voltageTransformers"]
 */
export const undescribed = (panel: DescribedPanel): readonly UsualPart[] => {
  const type = PANEL_TYPES.find((one) => one === panel.type);
  return type ? USUAL[type].filter((part) => !hasPart(panel, part)) : [];
};
