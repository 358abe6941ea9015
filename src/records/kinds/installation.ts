import type { Panel } from "../../lineup/lineup";
import {
  itemColumns,
  itemRows,
  ownItems,
  type Shown,
  shownIn,
  type UsualItem,
  withItem,
} from "../columns/checkItems";
import type { RecordKind } from "../kind";

const hasBreaker = ({ breaker }: Panel) => breaker !== undefined;
const hasCable = ({ type, cables }: Panel) =>
  cables.length > 0 ||
  ["incomer", "main", "feeder", "transformer feeder", "motor feeder"].includes(type);

/** What is seen to in a panel before it is tested: common practice, no source. */
const USUAL: readonly UsualItem[] = [
  { item: "Transport braces, packing and desiccant taken out" },
  { item: "Anchored to the foundation", always: true },
  { item: "Levelled, and joined to its neighbours without strain" },
  { item: "Busbar supports, barriers and covers fitted", always: true },
  { item: "Pressure relief path free" },
  { item: "Doors, locks and handles work", always: true },
  { item: "Shutters close by themselves and can be locked", of: hasBreaker },
  { item: "Breaker goes in and out freely; contacts engage in full", of: hasBreaker },
  { item: "Mechanical interlocks and coding fitted", of: hasBreaker },
  {
    item: "Fuses: type, rating and striker's direction as on the drawing",
    of: ({ breaker }) => breaker?.device === "fused contactor",
  },
  { item: "Earthing switch moves freely, latches and shows its position", of: hasCable },
  { item: "Cables supported, glanded and sealed; cable compartment closed", of: hasCable },
  { item: "Instrument transformers as on the drawing: place, ratio, orientation", of: hasBreaker },
  { item: "Wiring between panels connected; ferrules as on the drawing" },
  {
    item: "Degree of protection kept: openings closed, gland and blanking plates fitted",
    always: true,
  },
  {
    item: "Contacts, racking gear and mechanism lubricated as the maker says",
    of: hasBreaker,
  },
  { item: "Labels and warning signs as on the drawing", always: true },
  { item: "Heaters and lighting fitted" },
  { item: "Tools, spare and loose parts out", always: true },
  { item: "Clean and dry", always: true },
];

/** What shows that the thing of an item is there: its own records, or that it was tried. */
const SHOWN_BY: Shown = [
  [/^Earthing switch /, withItem("function", /^(?:Earthing switch|Breaker goes in only)/)],
  [
    /^Instrument transformers /,
    [
      { kind: "currentTransformer" },
      { kind: "excitation" },
      { kind: "voltageTransformer" },
      { kind: "voltageWinding" },
    ],
  ],
  [/^Cables /, [{ kind: "cable" }]],
  [/^Heaters /, [{ kind: "heater" }, ...withItem("function", /^Heating /)]],
  [
    /^Breaker goes in /,
    withItem("function", /^(?:Does not close in between|Breaker goes in only)/),
  ],
  [/^Mechanical interlocks /, withItem("function", /^Does not close in between/)],
  [/^Fuses: /, withItem("function", /^A blown fuse /)],
];

/** Each panel as it stands: what is seen to before the first test. */
export const installation: RecordKind<"installation"> = {
  id: "installation",
  ownItems: "seen to",
  step: "installation",
  sheet: "Installation",
  table: "GearInstallation",
  columns: itemColumns("Panel", "Check item", "As seen, by drawing and erection manual."),
  rows: (lineup) => {
    const own = ownItems(lineup, "installation");
    return lineup.panels.flatMap((panel) => itemRows(panel, USUAL, own));
  },
  shownBy: ({ part }) => shownIn(SHOWN_BY, part),
  minor: ({ part }) => /^(?:Labels|Heaters) /.test(String(part)),
  accepted: [],
  enough: [],
};
