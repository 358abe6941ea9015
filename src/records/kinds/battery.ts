import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { itemLimit } from "../../lineup/plate";
import { capacityMost, dischargedTo } from "../../standards/practice";
import { answered, blank, closing, trail } from "../columns/common";
import { givenLimit, measured, named } from "../columns/measuredColumns";
import type { Column, Comparison, Own, RecordKind, Row } from "../kind";
import { leastOf, sourceOf, sources, stricterOf, TO_TYPE } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Battery = Panel["batteries"][number];

const batteryOf = (row: Row, lineup: Lineup): Battery | undefined =>
  panelOf(lineup, String(row.object))?.batteries.find(
    ({ designation }) => designation === row.part,
  );
const plate = (pick: (battery: Battery) => number | undefined, own: string): Own =>
  stricterOf(
    "least",
    (row, lineup) => {
      const battery = batteryOf(row, lineup);
      return itemLimit(battery, battery && pick(battery));
    },
    leastOf(own),
  );
const capacityLeast = plate(({ capacityPercent }) => capacityPercent, "battery capacity %");
const endLeast = plate(({ endV }) => endV, "battery end of discharge V");

const accepted: readonly Comparison[] = [
  { value: "capacity", limit: "capacityLeast", unit: "%", sense: "least", lenient: "failsBelow" },
];
/** Hours below the end voltage are not the battery's, nor those at whose end it still has its rated voltage: the charger gave them. */
const enough: readonly Comparison[] = [
  { value: "endVolts", limit: "ratedV", unit: "V", sense: "most" },
  { value: "endVolts", limit: "endLeast", unit: "V", sense: "least" },
  { value: "capacity", limit: "capacityMost", unit: "%", sense: "most" },
];

const alarm = (id: string, header: string, help: string): Column =>
  answered(id, header, ["Given", "Not given"], { help });

const columns: readonly Column[] = [
  ...named("Battery", 14),
  { id: "ratedV", header: "Rated V", role: "given", width: 8, unit: "V" },
  { id: "ratedAh", header: "Rated Ah", role: "given", width: 8 },
  measured("current", "Discharged with A", "A", {
    most: 10_000,
    wave: "DC",
    help: "Held constant; at the rate that the rated capacity is given for.",
  }),
  {
    id: "hours",
    header: "For h",
    role: "entry",
    width: 8,
    accepts: { type: "number", least: 0, most: 100 },
    need: "reading",
    help: "Until the end voltage, brought to the maker's reference temperature as he says.",
  },
  {
    id: "capacity",
    header: "Capacity %",
    role: "computed",
    width: 9,
    unit: "%",
    format: "0.0",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("current")}),ISNUMBER(${ref("hours")}),N(${ref("ratedAh")})>0),${ref("current")}*${ref("hours")}/${ref("ratedAh")}*100,"")`,
    value: ({ current, hours, ratedAh }) =>
      typeof current === "number" &&
      typeof hours === "number" &&
      typeof ratedAh === "number" &&
      ratedAh > 0
        ? ((current * hours) / ratedAh) * 100
        : null,
    working: ({ current, hours, ratedAh, capacity }) =>
      workedOut(
        capacity,
        `${onPaper(current)} A × ${onPaper(hours)} h ÷ ${onPaper(ratedAh)} Ah × 100`,
        "%",
      ),
  },
  givenLimit("capacityLeast", "Minimum %", "%", capacityLeast),
  measured("endVolts", "At the end V", "V", {
    most: 1000,
    wave: "DC",
    need: "condition",
    help: "At the battery's terminals while it still gives the current.",
  }),
  givenLimit("endLeast", "End of discharge V", "V", endLeast),
  {
    id: "failsBelow",
    header: "Fails below %",
    role: "limit",
    width: 8,
    unit: "%",
    help: "0 where the discharge was stopped above its end voltage: what was taken out is then the least that the battery holds, and no failure.",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("endVolts")}),ISNUMBER(${ref("endLeast")})),IF(N(${ref("endVolts")})>N(${ref("endLeast")})*${dischargedTo.value},0,${ref("capacityLeast")}),IF(${blank(ref("capacityLeast"))},"",${ref("capacityLeast")}))`,
    value: ({ endVolts, endLeast, capacityLeast }) =>
      typeof endVolts === "number" &&
      typeof endLeast === "number" &&
      endVolts > endLeast * dischargedTo.value
        ? 0
        : (capacityLeast ?? null),
  },
  {
    id: "capacityMost",
    header: "Plausible up to %",
    role: "limit",
    width: 9,
    unit: "%",
    formula: () => String(capacityMost.value),
    value: () => capacityMost.value,
  },
  alarm(
    "earthAlarm",
    "Earth fault alarm",
    "Each pole earthed through the resistor that the maker names.",
  ),
  alarm("chargerAlarm", "Charger alarm", "Charger off, and voltage low."),
  sources((row, lineup) => [
    ["capacity", sourceOf(capacityLeast(row, lineup)) || TO_TYPE],
    ["end of discharge", sourceOf(endLeast(row, lineup)) || TO_TYPE],
    ["plausible", sourceOf(capacityMost)],
  ]),
  ...trail(),
];

/** DC supply: capacity of each battery, its voltage at the end, and its alarms. */
export const battery: RecordKind<"battery"> = {
  id: "battery",
  alsoCalled: ["batter(?:y|ies)", "dc supply", "discharge test"],
  step: "devices",
  sheet: "DC supply",
  table: "GearBattery",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation: object, batteries }) =>
      batteries.map(
        ({ designation, ratedV, ratedAh }): Row => ({ object, part: designation, ratedV, ratedAh }),
      ),
    ),
  voidBy: voidBy(["DC supply"]),
  minutes: ({ hours }) => (typeof hours === "number" ? 60 * hours : 0),
  accepted,
  enough,
};
