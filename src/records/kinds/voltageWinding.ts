import { zeroResistance } from "../../engineering/zeroResistance";
import type { Lineup, Panel } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import { panelOf } from "../../lineup/panelOf";
import { primaryTestVoltage, windingSpread } from "../../standards/practice";
import { closing, PHASES, trail } from "../columns/common";
import { asRead } from "../columns/insulationColumns";
import { givenLimit, measured } from "../columns/measuredColumns";
import {
  type Column,
  type Comparison,
  NOT_APPLICABLE,
  type Own,
  type RecordKind,
  type Row,
} from "../kind";
import { leastOf, mostOf, ownOf, sourceOf, sources, TO_TYPE } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Winding = Panel["voltageTransformers"][number];
type Side = "primary" | "secondary";

const windingOf = (row: Row, lineup: Lineup): Winding | undefined =>
  panelOf(lineup, String(row.object))?.voltageTransformers.find(({ name }) => name === row.part);

const ownMinimum = leastOf("voltage transformer primary insulation MΩ");
const ownDeviation = mostOf("voltage transformer winding deviation %");
const makers =
  (side: Side): Own =>
  (row, lineup): OwnLimit | undefined => {
    const value = windingOf(row, lineup)?.[`${side}Ohm`];
    return value === undefined
      ? undefined
      : { from: "maker", value, document: "maker's routine test" };
  };
const SIDES = [
  { side: "primary", id: "windingP", maker: "makerP", off: "offP", header: "Primary" },
  { side: "secondary", id: "windingS", maker: "makerS", off: "offS", header: "Secondary" },
] as const;

const accepted: readonly Comparison[] = [
  { value: "insulation", limit: "minimum", unit: "MΩ", sense: "least" },
  ...SIDES.map(
    ({ off, maker }): Comparison => ({
      value: off,
      limit: "offMost",
      unit: "%",
      sense: "within",
      insteadOf: `${maker}None`,
      asks: true,
    }),
  ),
];

const ownVoltage = ownOf("transformer test voltage V");
/** Megohms at a few volts prove nothing of a primary. */
const enough: readonly Comparison[] = [
  { value: "testVoltage", limit: "testLeast", unit: "V", sense: "least" },
];

/** Zero-resistance temperature of copper and what 20 °C lies above it. */
const ZERO = zeroResistance.copper;
const AT_20 = ZERO + 20;

/** A winding's resistance, what the maker measured, and how far the one lies from the other at 20 °C. */
const windingColumns = ({ side, id, maker, off, header }: (typeof SIDES)[number]): Column[] => [
  measured(id, `${header} winding Ω`, "Ω", {
    unless: maker,
    help: "Between its terminals, by a small direct current, once it no longer changes.",
  }),
  {
    id: maker,
    header: `${header} by maker Ω`,
    role: "limit",
    width: 10,
    unit: "Ω",
    own: makers(side),
    help: "At 20 °C; n/a where the lineup does not give it.",
    value: () => NOT_APPLICABLE,
  },
  {
    id: `${maker}None`,
    header: `${header} not given`,
    role: "computed",
    width: 8,
    formula: (ref) => `IF(ISNUMBER(${ref(maker)}),"","n/a")`,
    value: (row) => (typeof row[maker] === "number" ? null : NOT_APPLICABLE),
  },
  {
    id: off,
    header: `${header} off %`,
    role: "computed",
    width: 9,
    unit: "%",
    format: "0.0",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref(id)}),ISNUMBER(${ref("temperature")}),ISNUMBER(${ref(maker)}),N(${ref("temperature")})>-${ZERO}),(${ref(id)}*${AT_20}/(${ZERO}+${ref("temperature")})/${ref(maker)}-1)*100,"")`,
    value: ({ temperature, [id]: read, [maker]: made }) =>
      typeof read === "number" &&
      typeof temperature === "number" &&
      typeof made === "number" &&
      temperature > -ZERO
        ? ((read * AT_20) / (ZERO + temperature) / made - 1) * 100
        : null,
    working: (row) =>
      workedOut(
        row[off],
        `(${onPaper(row[id])} Ω × ${AT_20} ÷ (${ZERO} + ${onPaper(row.temperature)}) ÷ ${onPaper(row[maker])} Ω − 1) × 100`,
        "%",
      ),
  },
];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Winding", role: "key", width: 14 },
  { id: "phase", header: "Phase", role: "key", width: 7 },
  {
    id: "testVoltage",
    header: "Test V DC",
    role: "entry",
    width: 9,
    unit: "V",
    wave: "DC",
    accepts: { type: "number", least: 0, most: 15_000 },
    need: "condition",
    help: "As the maker allows for the primary; its earthed end lifted where he says so.",
  },
  {
    id: "testLeast",
    header: "Minimum test V",
    role: "limit",
    width: 9,
    unit: "V",
    own: ownVoltage,
    formula: () => String(primaryTestVoltage.value),
    value: () => primaryTestVoltage.value,
  },
  {
    id: "primaryRead",
    header: "Primary insulation MΩ",
    role: "entry",
    width: 12,
    unit: "MΩ",
    accepts: { type: "reading" },
    need: "reading",
    help: 'Primary to secondaries and earth, after 1 min: a number in MΩ, or as written: "> 2 GΩ".',
  },
  asRead("insulation", "R MΩ", "primaryRead"),
  givenLimit("minimum", "Minimum MΩ", "MΩ", ownMinimum),
  measured("temperature", "Winding °C", "°C", {
    accepts: { type: "number", least: -40, most: 120 },
    takesFirst: "temperature",
    need: "condition",
  }),
  ...SIDES.flatMap(windingColumns),
  {
    id: "offMost",
    header: "Asks beyond ± %",
    role: "limit",
    width: 9,
    unit: "%",
    own: ownDeviation,
    formula: () => String(windingSpread.value),
    value: () => windingSpread.value,
  },
  sources((row, lineup) => [
    ["primary insulation", sourceOf(ownMinimum(row, lineup)) || TO_TYPE],
    ["test voltage", sourceOf(ownVoltage(row, lineup) ?? primaryTestVoltage)],
    ["windings", sourceOf(ownDeviation(row, lineup) ?? windingSpread)],
  ]),
  ...trail(),
];

/** Voltage transformers in depth: insulation of the primary, and resistance of the windings. */
export const voltageWinding: RecordKind<"voltageWinding"> = {
  id: "voltageWinding",
  alsoCalled: ["vt windings?", "vt primary insulation"],
  step: "devices",
  onRequest: true,
  sheet: "VT windings",
  table: "GearVoltageWinding",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, voltageTransformers }) =>
      voltageTransformers.flatMap(({ name }) =>
        PHASES.map((phase): Row => ({ object: designation, part: name, phase })),
      ),
    ),
  voidBy: voidBy(["Voltage transformer"]),
  accepted,
  enough,
};
