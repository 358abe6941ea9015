import { earthResistance } from "../../engineering/earthResistance";
import { busSections } from "../../lineup/busbar";
import type { Lineup } from "../../lineup/lineup";
import { deviceName } from "../../lineup/plate";
import type { Criterion } from "../../standards/criterion";
import { earthContinuity } from "../../standards/iec62271-200.2021";
import { groundContinuity } from "../../standards/neta-ats.2025";
import { bondSpread, contactSpread, soundBond } from "../../standards/practice";
import { tidy } from "../../standards/tidy";
import { blank, closing, gear, NOT_COMPUTED, trail } from "../columns/common";
import { lowestBy, spreadAccepted, spreadColumn, spreadMostColumn } from "../columns/spreadColumns";
import { figure } from "../figure";
import {
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type RecordKind,
  type Row,
} from "../kind";
import { asFraction, mostOf, ownOf, sourceOf, sources } from "../limits";
import { exactly } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const { current, drop } = earthContinuity;
/** The drop allowed at the current it is allowed at, as a resistance: 3 V at 30 A are 100 mΩ. */
const MOST = tidy((drop.value / current.value) * 1000);
const EARTH_BAR = "Earth bar";
const isBar = (row: Row) => row.part === EARTH_BAR;

const ownLimit = mostOf(
  { name: "earth bar resistance mΩ", of: isBar },
  { name: "ground bus resistance mΩ", of: isBar },
  "earthing resistance mΩ",
  "ground continuity mΩ",
);
const ownCurrent = ownOf("earthing test current A");
const ownSpread = asFraction(mostOf({ name: "ground bus spread %", of: isBar }));

/** The criterion of the basis: for what is earthed through hinges, contacts and frames, not for the bar itself. */
const standard = (row: Row, { basis }: Lineup) =>
  isBar(row) ? undefined : basis === "IEC" ? dropAsResistance : groundContinuity;
const dropAsResistance: Criterion = { value: MOST, source: drop.source };

const standardCurrent = (row: Row, { basis }: Lineup) =>
  !isBar(row) && basis === "IEC" ? current : undefined;

const accepted: readonly Comparison[] = [
  { value: "resistance", limit: "maximum", unit: "mΩ", sense: "most", when: "maximum" },
  spreadAccepted,
  {
    value: "resistance",
    limit: "likeMost",
    unit: "mΩ",
    sense: "most",
    when: "likeMost",
    asks: true,
  },
];
const enough: readonly Comparison[] = [
  {
    value: "testCurrent",
    limit: "testCurrentLeast",
    unit: "A",
    sense: "least",
    excusable: true,
  },
];

const resistanceOf = ({ like, resistance }: Row) =>
  !isBlank(like) && typeof resistance === "number" && resistance > 0 ? resistance : undefined;

/** What an earthed part may resist beside its like, where neither maker nor project gives a maximum. */
const likeColumns: readonly Column[] = [
  {
    id: "like",
    header: "Like",
    role: "given",
    width: 15,
    help: "The parts that it is compared with; blank where maker or project gives a maximum.",
    value: (row, lineup) => (isBar(row) || ownLimit(row, lineup) ? null : (row.part ?? null)),
  },
  {
    id: "likeMost",
    header: "Asks above mΩ",
    role: "limit",
    width: 9,
    unit: "mΩ",
    format: "0.0##",
    help: `${bondSpread.value} times the lowest of its like, and no less than ${soundBond.value} mΩ: above it an explanation is asked for. Blank until two of them are measured.`,
    formula: (ref) => {
      // AGGREGATE compares names as they are; MINIFS would read a leading "=" as an operator.
      const lowest = (place: number) =>
        `_xlfn.AGGREGATE(15,6,${ref.all("resistance")}/((${ref.all("like")}=${ref("like")})*(${ref.all("resistance")}>0)),${place})`;
      return `IF(OR(${blank(ref("like"))},NOT(N(${ref("resistance")})>0)),"",IFERROR(MAX(${soundBond.value},${bondSpread.value}*${lowest(1)})+0*${lowest(2)},""))`;
    },
    survey: (rows) => lowestBy(rows, "like", resistanceOf),
    value: (row, _lineup, lowest) => {
      const least = lowest.get(String(row.like));
      return resistanceOf(row) !== undefined && least
        ? Math.max(soundBond.value, bondSpread.value * least)
        : null;
    },
  },
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
    wave: "DC",
    accepts: { type: "number", least: 0, most: 10000 },
    need: "condition",
    help: "Current that flows when the drop is read.",
  },
  {
    id: "testCurrentLeast",
    header: "Minimum test A",
    role: "limit",
    width: 9,
    unit: "A",
    own: ownCurrent,
    help: "n/a where the basis prescribes none: a micro-ohmmeter of 10 A serves.",
    value: (row, lineup) => standardCurrent(row, lineup)?.value ?? NOT_APPLICABLE,
  },
  {
    id: "reading",
    header: "Drop V",
    role: "entry",
    width: 10,
    unit: "V",
    wave: "DC",
    accepts: { type: "reading" },
    above: { value: 0 },
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
    help: "Where the lineup gives none for an earth bar, type the project's value here; without it the bars are compared with each other.",
    value: (row, lineup) => standard(row, lineup)?.value ?? row.maximum ?? null,
  },
  spreadColumn({
    of: "resistance",
    unit: "mΩ",
    by: "part",
    only: EARTH_BAR,
    help: "Of earth bars: above the lowest of them. More than 50 % asks for an explanation.",
  }),
  spreadMostColumn(ownSpread, isBar),
  ...likeColumns,
  sources((row, lineup) => [
    ["maximum", maximumSource(row, lineup)],
    ...(isBlank(row.like) ? [] : [["beside its like", sourceOf(bondSpread)] as const]),
    [
      "test A",
      sourceOf(ownCurrent(row, lineup) ?? standardCurrent(row, lineup)) || "none prescribed",
    ],
  ]),
  ...trail(),
];

function maximumSource(row: Row, lineup: Lineup): string {
  const own = sourceOf(ownLimit(row, lineup));
  if (own !== "") return own;
  if (isBar(row))
    return `none given: type the project's value here; without it compared with the other sections' bars, ${sourceOf(contactSpread)}`;
  return lineup.basis === "IEC"
    ? `${drop.value} V at ${current.value} A: ${sourceOf(drop)}`
    : sourceOf(groundContinuity);
}

/** Continuity of the earthing circuit: each panel's earthed parts, and each section's earth bar. */
export const earthing: RecordKind<"earthing"> = {
  id: "earthing",
  alsoCalled: ["earth(?: bond| continuity)?", "bonding"],
  step: "earthing",
  sheet: "Earthing",
  table: "GearEarthing",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) => [
    ...lineup.panels.flatMap(({ designation, breaker }) =>
      ["Enclosure", "Door", ...(breaker ? [`${deviceName(breaker)} frame`] : [])].map(
        (part): Row => ({ object: designation, part }),
      ),
    ),
    ...busSections(lineup).map((object): Row => ({ object, part: EARTH_BAR })),
  ],
  voidBy: voidBy([], ["Earth connection"]),
  accepted,
  enough,
  plot: { value: "resistance", limit: "maximum", unit: "mΩ", log: true },
};
