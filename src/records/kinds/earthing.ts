import { earthResistance } from "../../engineering/earthResistance";
import { busSections } from "../../lineup/busbar";
import type { Lineup } from "../../lineup/lineup";
import { ownCriterion } from "../../lineup/ownCriterion";
import { deviceName } from "../../lineup/plate";
import { earthContinuity } from "../../standards/earthContinuity";
import { tidy } from "../../standards/tidy";
import { blank, closing, gear, trail } from "../columns/common";
import { figure } from "../figure";
import { type Column, type Comparison, isBlank, type RecordKind, type Row } from "../kind";
import { sourceOf, sources } from "../limits";
import { exactly } from "../quantity";
import { verdictBy } from "../verdict";

const { current, drop } = earthContinuity;
/** The drop allowed at the current it is allowed at, as a resistance: 3 V at 30 A are 100 mΩ. */
const MOST = tidy((drop.value / current.value) * 1000);
const NOT_COMPUTED = "not computed";

const ownLimit = (row: Row, lineup: Lineup) =>
  ownCriterion(lineup, "earthing resistance mΩ", String(row.object));

const accepted: readonly Comparison[] = [
  { value: "resistance", limit: "maximum", unit: "mΩ", sense: "most" },
];
const enough: readonly Comparison[] = [
  { value: "testCurrent", limit: "testCurrentLeast", unit: "A", sense: "least" },
];

const columns: readonly Column[] = [
  { id: "object", header: "Panel or section", role: "key", width: 15 },
  { id: "part", header: "Earthed part", role: "key", width: 15 },
  {
    id: "testCurrent",
    header: "Test A DC",
    role: "entry",
    width: 9,
    unit: "A",
    accepts: { type: "number", least: 0, most: 10000 },
    need: "condition",
    help: "Current that flows when the drop is read.",
  },
  {
    id: "testCurrentLeast",
    header: "Least test A",
    role: "limit",
    width: 9,
    unit: "A",
    formula: () => String(current.value),
    value: () => current.value,
  },
  {
    id: "reading",
    header: "Drop V",
    role: "entry",
    width: 10,
    unit: "V",
    accepts: { type: "reading" },
    need: "reading",
    help: 'Between the part and the earthing point, by leads that carry no current: a number in V, or as written: "150 mV". An instrument that shows only mΩ: current times resistance.',
  },
  {
    id: "resistance",
    header: "R mΩ",
    role: "computed",
    width: 10,
    unit: "mΩ",
    format: "0.0##",
    formula: (ref) =>
      `IF(OR(${blank(ref("reading"))},${blank(ref("testCurrent"))}),"",IFERROR(${gear("EARTHRESISTANCE", ref("testCurrent"), ref("reading"))},"${NOT_COMPUTED}"))`,
    value: (row) => {
      if (isBlank(row.reading) || isBlank(row.testCurrent)) return null;
      const [amps, volts] = [exactly(row.testCurrent, "A"), exactly(row.reading, "V")];
      const found =
        amps === undefined || volts === undefined ? undefined : earthResistance(amps, volts);
      return found?.ok ? found.value : NOT_COMPUTED;
    },
    working: ({ reading, testCurrent, resistance }) =>
      typeof resistance === "number"
        ? `${figure(exactly(reading, "V"))} V ÷ ${figure(exactly(testCurrent, "A"))} A × 1000 = ${figure(resistance)} mΩ`
        : "",
  },
  {
    id: "maximum",
    header: "Maximum mΩ",
    role: "limit",
    width: 10,
    unit: "mΩ",
    own: ownLimit,
    formula: () => String(MOST),
    value: () => MOST,
  },
  sources((row, lineup) => [
    [
      "maximum",
      sourceOf(ownLimit(row, lineup)) || `${drop.value} V at ${current.value} A: ${sourceOf(drop)}`,
    ],
    ["test A", sourceOf(current)],
  ]),
  ...trail(),
];

/** Continuity of the earthing circuit: each panel's earthed parts, and each section's earth bar. */
export const earthing: RecordKind = {
  id: "earthing",
  title: "Continuity of the earthing circuit",
  sheet: "Earthing",
  table: "GearEarthing",
  purpose:
    "Four-wire drop from each earthed part to the earthing point at the test current: enclosure, door across its hinge, breaker frame in the service position, and each section's earth bar to the station's earth.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; never open a protective earth of gear that is in service.",
    "The test current heats thin paths and loose joints, and flows through whatever lies parallel: say in the remarks what was connected.",
    "Do not open the current circuit under test.",
    "The local code, the maker's instruction and licensed practice come first.",
  ],
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) => [
    ...lineup.panels.flatMap(({ designation, breaker }) =>
      ["Enclosure", "Door", ...(breaker ? [`${deviceName(breaker)} frame`] : [])].map(
        (part): Row => ({ object: designation, part }),
      ),
    ),
    ...busSections(lineup).map((object): Row => ({ object, part: "Earth bar" })),
  ],
  accepted,
  enough,
  plot: { value: "resistance", limit: "maximum", unit: "mΩ", log: true },
};
