import type { Panel } from "../../lineup/lineup";
import { itemColumns, itemRows, ownItems, type UsualItem } from "../columns/checkItems";
import { LINEUP } from "../columns/common";
import type { RecordKind, Row } from "../kind";
import { OTHER } from "./settings";

/** What an item begins with, by which it waits for those before it. */
const STAGES = ["Before: ", "Under voltage: ", "After: "] as const;

const hasBreaker = ({ breaker }: Panel) => breaker !== undefined;
const hasCurrent = ({ currentTransformers }: Panel) => currentTransformers.length > 0;
const hasVoltage = ({ voltageTransformers }: Panel) => voltageTransformers.length > 0;
const hasProtection = ({ protection, schemes }: Panel) => protection.length + schemes.length > 0;

const AS_ORDERED = "Before: settings as left are the order's";

/** Common practice, no source: what is put back before, and what is read after. */
const USUAL: readonly UsualItem[] = [
  { item: "Before: test earths and short circuits off, counted against the list", always: true },
  { item: "Before: covers, barriers and doors closed and locked", always: true },
  {
    item: "Before: links and shorting of current transformers as drawn",
    of: hasCurrent,
    always: true,
  },
  { item: "Before: fuses of voltage transformers in", of: hasVoltage, always: true },
  { item: "Before: arresters and cables connected that were taken off for tests" },
  { item: "Before: trips that were blocked are enabled again", of: hasProtection, always: true },
  { item: AS_ORDERED, of: hasProtection, always: true },
  {
    item: "Before: interlock keys in their places, none forced or bypassed",
    of: hasBreaker,
    always: true,
  },
  { item: "Under voltage: no unusual noise, smell or smoke while it soaks", always: true },
  {
    item: "Under voltage: phase voltages and rotation at the secondaries",
    of: hasVoltage,
    always: true,
  },
  { item: "After: phase currents, angles and differential read under load", of: hasBreaker },
  {
    item: "After: hot spots looked for under load, through windows or with covers as permitted",
    of: hasBreaker,
  },
];

const STEP_BY_STEP = "Voltage given step by step: each section held and looked at before the next";

/** Of the lineup as a whole. */
const WHOLE = [
  "Release: by whom, on what permit or switching order, in the remarks",
  "People told and out, area barred, far ends manned",
  STEP_BY_STEP,
];

/** First energization: what was put back, who released it, and what was read. */
export const energization: RecordKind<"energization"> = {
  id: "energization",
  alsoCalled: ["first energi[sz]ation", "energi[sz]ation check ?lists?"],
  step: "energization",
  onRequest: true,
  ownItems: "seen to",
  sheet: "Energization",
  table: "GearEnergization",
  columns: itemColumns("Panel or lineup", "What is seen to", "As seen, by the one who signs."),
  rows: (lineup) => {
    const own = ownItems(lineup, "energization");
    return [
      ...WHOLE.map(
        (part): Row => ({
          object: LINEUP,
          part,
          document: "common practice",
          always: "always",
        }),
      ),
      ...lineup.panels.flatMap((panel) => itemRows(panel, USUAL, own)),
    ];
  },
  stages: {
    of: ({ object, part }) => {
      if (object === LINEUP) return 0;
      const at = STAGES.findIndex((words) => String(part ?? "").startsWith(words));
      return at < 0 ? undefined : at;
    },
    alive: ({ object, part }) =>
      object === LINEUP ? part === STEP_BY_STEP : /^(?:Under voltage|After): /.test(String(part)),
    last: STAGES.length - 1,
    first: ["rotation", "phasing"],
  },
  against: [
    {
      kind: "settings",
      own: ({ object, part }) => (part === AS_ORDERED ? String(object) : undefined),
      other: ({ object }) => String(object),
      contradiction: ({ state }, { agrees }) =>
        String(state).toLowerCase() === "ok" && agrees === OTHER
          ? { column: "state", why: "confirmed", found: String(state), other: OTHER }
          : undefined,
    },
  ],
  accepted: [],
  enough: [],
};
