import { isCoupler, isIncomer } from "../../lineup/busbar";
import type { Lineup, Panel } from "../../lineup/lineup";
import {
  itemColumns,
  itemRows,
  ownItems,
  type Shown,
  shownIn,
  type UsualItem,
  withItem,
} from "../columns/checkItems";
import { LINEUP } from "../columns/common";
import type { CellValue, RecordKind, Row } from "../kind";
import { voidBy } from "../repairs";

const hasBreaker = ({ breaker }: Panel) => breaker !== undefined;
const hasSpring = ({ breaker }: Panel) => breaker !== undefined && !breaker.device;
const hasFuses = ({ breaker }: Panel) => breaker?.device === "fused contactor";
const hasGas = ({ breaker }: Panel) => breaker?.gas !== undefined;
const hasCable = ({ type, cables, breaker }: Panel) =>
  breaker !== undefined &&
  (cables.length > 0 ||
    ["incomer", "main", "feeder", "transformer feeder", "motor feeder"].includes(type));
const hasVoltage = ({ type, voltageTransformers }: Panel) =>
  voltageTransformers.length > 0 || type === "metering";

/** What a panel is tried for, by what stands in it: common practice, no source. */
const USUAL: readonly UsualItem[] = [
  { item: "Closes and opens locally", of: hasBreaker, always: true },
  { item: "Closes and opens remotely", of: hasBreaker },
  { item: "Selector switch: local shuts out remote, and remote local", of: hasBreaker },
  { item: "Mechanical trip opens", of: hasSpring, always: true },
  {
    item: "Anti-pumping: one closing to a command held during a trip",
    of: hasSpring,
    always: true,
  },
  { item: "Spring charges after closing; failure of it is shown", of: hasSpring, always: true },
  {
    item: "A blown fuse opens the contactor and is shown; one phase out is not run on",
    of: hasFuses,
    always: true,
  },
  { item: "Trip circuit supervision shows a broken circuit, open and closed", of: hasBreaker },
  { item: "Does not close in between positions, nor move while closed", of: hasBreaker },
  { item: "Earthing switch: closes only with the breaker out", of: hasCable },
  { item: "Breaker goes in only with the earthing switch open", of: hasCable },
  {
    item: "Indications: open, closed, tripped, positions; here and remote",
    of: hasBreaker,
    always: true,
  },
  { item: "Lamps: all lit by the lamp test, each in its colour", of: hasBreaker },
  {
    item: "Mimic agrees with the gear in every position of breaker and earthing switch",
    of: hasBreaker,
  },
  { item: "Operation counter counts", of: hasBreaker },
  { item: "Gas alarm is given, and lockout blocks operation", of: hasGas },
  { item: "Voltage transformers: fuse failure is shown", of: hasVoltage },
  {
    item: "Meters and transducers show what is fed in, also remotely",
    of: ({ meters }) => meters.length > 0,
  },
  { item: "Alarms reach their places" },
  { item: "Loss of control supply is shown" },
  { item: "Heating and lighting work" },
];

/** Each relay of a panel trips what it is drawn to trip. */
const relays = ({ protection }: Panel): UsualItem[] =>
  [...new Set(protection.map(({ relay }) => relay))].map((relay) => ({
    item: `Relay ${relay} trips its breaker and is shown`,
  }));

/** The item of a relay that trips, by the relay's name; one of several words is known by none. */
const TRIPS = /^Relay (\S+) trips /;
const relayName = (object: CellValue | undefined, relay: string | undefined) =>
  relay === undefined ? undefined : `${object}\u0000${relay}`;

/** A counter of operations that was read. */
function isCounted(row: Row): boolean {
  return Object.keys(row).some((id) => id.startsWith("counter") && typeof row[id] === "number");
}

/** What holds between panels: incomers that may not feed side by side, with the couplers between them. */
const between = ({ panels }: Lineup): Row[] => {
  const named = (is: (panel: Panel) => boolean) =>
    panels.filter(is).map(({ designation }) => designation);
  const [incomers, couplers] = [named(isIncomer), named(isCoupler)];
  const closed = [...incomers, ...couplers].join(", ");
  return incomers.length > 1
    ? [
        `Interlock of ${closed}: supplies are not paralleled but as drawn`,
        `Transfer between ${incomers.join(", ")}: as drawn, by hand and by itself`,
      ].map((part): Row => ({ object: LINEUP, part, document: "common practice" }))
    : [];
};

/** What shows that the thing of an item is there: its own records, or that it was looked at or tried elsewhere. */
const SHOWN_BY: Shown = [
  [/^(?:Earthing switch|Breaker goes in only)/, withItem("installation", /^Earthing switch /)],
  [/^Earthing switch/, withItem("function", /^Breaker goes in only/)],
  [/^Breaker goes in only/, withItem("function", /^Earthing switch/)],
  [/^Voltage transformers: /, [{ kind: "voltageTransformer" }, { kind: "voltageWinding" }]],
  [/^Meters /, [{ kind: "metering" }]],
  [/^Gas alarm /, [{ kind: "gas" }]],
  [/^Heating /, [{ kind: "heater" }]],
  [
    /^Operation counter /,
    [
      { kind: "mechanism", of: isCounted },
      { kind: "timing", of: isCounted },
    ],
  ],
  [/^Interlock of /, ["lineup"]],
];

/** Each panel tried out, function by function, and what holds between panels. */
export const functionTest: RecordKind<"function"> = {
  id: "function",
  ownItems: "seen to",
  step: "functions",
  sheet: "Function",
  table: "GearFunction",
  columns: itemColumns("Panel or lineup", "Function", "As tried, against the schematic."),
  rows: (lineup) => {
    const own = ownItems(lineup, "function");
    return [
      ...lineup.panels.flatMap((panel) => itemRows(panel, [...USUAL, ...relays(panel)], own)),
      ...between(lineup),
    ];
  },
  after: [
    { kind: "control" },
    // What the breaker does by itself is measured before its circuits are tried with it.
    { kind: "timing", orRemark: true },
    { kind: "mechanism", orRemark: true },
    { kind: "motion", orRemark: true },
    {
      kind: "protection",
      own: ({ object, part }) => relayName(object, TRIPS.exec(String(part))?.[1]),
      other: ({ object, part }) => relayName(object, String(part).split(" ")[0]),
    },
  ],
  shownBy: ({ object, part }) => {
    const relay = TRIPS.exec(String(part))?.[1];
    if (relay === undefined) return shownIn(SHOWN_BY, part);
    const of = (row: Row) =>
      relayName(object, String(row.part).split(" ")[0]) === relayName(object, relay);
    return [{ kind: "protection", of }];
  },
  minor: ({ part }) => /^(?:Heating|Meters|Operation counter) /.test(String(part)),
  voidBy: voidBy(["Breaker mechanism"], ["Wiring", "Relay or settings"]),
  accepted: [],
  enough: [],
};
