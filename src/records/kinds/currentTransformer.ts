import { contactCorrect } from "../../engineering/contactCorrect";
import type { Lineup, Panel } from "../../lineup/lineup";
import { ownCriterion } from "../../lineup/ownCriterion";
import { panelOf } from "../../lineup/panelOf";
import { CLASSES_BY_KNEE, ctClassNamed, knownCtClass } from "../../standards/ctClassNamed";
import { ctLimit } from "../../standards/ctLimit";
import { nearRated } from "../../standards/nearRated";
import { ctSource } from "../../standards/transformerClasses";
import { blank, closing, gear, PHASES, quoted, trail } from "../columns/common";
import { insulationAccepted, insulationEnough, limitSource } from "../columns/insulationColumns";
import {
  burden,
  burdenAccepted,
  plateColumn,
  plateSource,
  polarity,
  ratioColumns,
  secondaryInsulation,
  transformerMinimum,
  transformerTestVoltage,
} from "../columns/transformerColumns";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type RecordKind,
  type Row,
} from "../kind";
import { limitOf, sourceOf, sources } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { exactly } from "../quantity";
import { verdictBy } from "../verdict";

export type Core = Panel["currentTransformers"][number];

/** The core of a row, by its plate. */
export const coreOf = (row: Row, lineup: Lineup): Core | undefined =>
  panelOf(lineup, String(row.object))?.currentTransformers.find(({ name }) => name === row.part);

const NOT_CORRECTED = "not corrected";

/** Temperature that a plate's winding resistance holds for, °C (IEC 61869-2, memory). */
const WINDING_BASE = 75;

/** The maker's or project's own limit, for a class whose limits are not known here. */
const ownError = (row: Row, lineup: Lineup) =>
  isByKnee(row.accuracy) || knownCtClass(String(row.accuracy ?? ""))
    ? undefined
    : ownCriterion(lineup, "current transformer ratio error %", String(row.object));

const isByKnee = (accuracy: CellValue | undefined) =>
  CLASSES_BY_KNEE.some((name) => name === String(accuracy).toUpperCase());

const classLimit = (accuracy: CellValue | undefined, percent: number): CellValue => {
  const name = knownCtClass(String(accuracy ?? ""));
  if (!name) return null;
  return limitOf(ctLimit(name, Math.abs(percent - 100) <= nearRated.value ? 100 : percent));
};

const accepted: readonly Comparison[] = [
  { value: "error", limit: "errorMost", unit: "%", sense: "within", excusable: true },
  { value: "winding75", limit: "windingMost", unit: "Ω", sense: "most", excusable: true },
  insulationAccepted,
  burdenAccepted,
];
const enough: readonly Comparison[] = [insulationEnough];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Core", role: "key", width: 12 },
  { id: "phase", header: "Phase", role: "key", width: 7 },
  { id: "ratedPrimary", header: "Rated primary A", role: "given", width: 8, unit: "A" },
  { id: "ratedSecondary", header: "Rated secondary A", role: "given", width: 9, unit: "A" },
  { id: "accuracy", header: "Class", role: "given", width: 7 },
  {
    id: "primary",
    header: "Injected A",
    role: "entry",
    width: 9,
    unit: "A",
    accepts: { type: "number", least: 0, most: 10000 },
    need: "reading",
    help: "Primary current; for a protective class at rated current, for a measuring class where its table gives a limit.",
  },
  {
    id: "secondary",
    header: "Secondary A",
    role: "entry",
    width: 9,
    unit: "A",
    accepts: { type: "number", least: 0, most: 200 },
    need: "reading",
    help: "Read at the same moment as the primary current, the other cores shorted.",
  },
  ...ratioColumns("A"),
  {
    id: "errorMost",
    header: "Allowed ± %",
    role: "limit",
    width: 8,
    unit: "%",
    own: ownError,
    help: "n/a for a class that gives no limit of ratio error: the row is judged by the rest.",
    formula: (ref) =>
      `IF(OR(${CLASSES_BY_KNEE.map((name) => `${ref("accuracy")}=${quoted(name)}`).join(",")}),${quoted(NOT_APPLICABLE)},IF(ISNUMBER(${ref("percent")}),IFERROR(${gear("CTLIMIT", ref("accuracy"), `IF(ABS(${ref("percent")}-100)<=${nearRated.value},100,${ref("percent")})`)},""),""))`,
    value: ({ accuracy, percent }) => {
      if (isByKnee(accuracy)) return NOT_APPLICABLE;
      return typeof percent === "number" ? classLimit(accuracy, percent) : null;
    },
  },
  polarity,
  {
    id: "winding",
    header: "Rct Ω",
    role: "entry",
    width: 8,
    unit: "Ω",
    accepts: { type: "number", least: 0, most: 1000 },
    need: "reading",
    help: "DC resistance of the secondary winding, four-wire, demagnetized afterwards.",
  },
  {
    id: "temperature",
    header: "Winding °C",
    role: "entry",
    width: 9,
    unit: "°C",
    accepts: { type: "number", least: -40, most: 120 },
    need: "condition",
    needed: ({ windingMost }) => typeof windingMost === "number",
  },
  {
    id: "winding75",
    header: "Rct at 75 °C Ω",
    role: "computed",
    width: 9,
    unit: "Ω",
    format: "0.00#",
    formula: (ref) =>
      `IF(OR(${blank(ref("winding"))},${blank(ref("temperature"))}),"",IF(ISNUMBER(${ref("winding")}),IFERROR(${gear("CONTACTCORRECT", ref("winding"), ref("temperature"), '"copper"', WINDING_BASE)},"${NOT_CORRECTED}"),"${NOT_CORRECTED}"))`,
    value: (row) => {
      if (isBlank(row.winding) || isBlank(row.temperature)) return null;
      const temperature = exactly(row.temperature, "°C");
      const found =
        typeof row.winding === "number" && temperature !== undefined
          ? contactCorrect(row.winding, temperature, "copper", WINDING_BASE)
          : undefined;
      return found?.ok ? found.value : NOT_CORRECTED;
    },
    working: ({ winding, temperature, winding75 }) =>
      workedOut(
        winding75,
        `${onPaper(winding)} Ω × (234.5 + ${WINDING_BASE}) ÷ (234.5 + ${onPaper(temperature)})`,
        "Ω",
      ),
  },
  plateColumn(
    { id: "windingMost", header: "Plate Ω at 75 °C", width: 9, unit: "Ω" },
    coreOf,
    ({ windingOhm }) => windingOhm,
  ),
  ...secondaryInsulation(),
  burden,
  plateColumn(
    { id: "burdenMost", header: "Rated VA", width: 8, unit: "VA" },
    coreOf,
    ({ burdenVA }) => burdenVA,
  ),
  sources((row, lineup) => [
    [
      "ratio",
      row.errorMost === NOT_APPLICABLE
        ? `class ${row.accuracy} gives no limit of ratio error`
        : knownCtClass(String(row.accuracy ?? ""))
          ? `class ${row.accuracy}, ${sourceOf({ value: 0, source: ctSource })}; within ${nearRated.value} % of rated current taken as rated (practice)`
          : sourceOf(ownError(row, lineup)) ||
            `none known here for class ${row.accuracy ?? "not given"}: give the maker's or project's own`,
    ],
    ["Rct", plateSource(row.windingMost)],
    ["minimum", limitSource(transformerMinimum, row, lineup)],
    ["test V", limitSource(transformerTestVoltage, row, lineup)],
    ["burden", plateSource(row.burdenMost)],
  ]),
  ...trail(),
];

/** Current transformers, core by core and phase by phase. */
export const currentTransformer: RecordKind = {
  id: "currentTransformer",
  title: "Current transformers",
  sheet: "Current transformers",
  table: "GearCurrentTransformers",
  purpose:
    "Each core of each phase: ratio and polarity by primary injection, resistance of the secondary winding brought to 75 °C, insulation of the secondary, and the burden that is connected.",
  cautions: [
    "Never open the secondary circuit of a current transformer while primary current flows: the voltage that appears can kill. Short it first, at its own terminals, and short every core not under test.",
    "Isolate, prove dead and earth under the site's permit system. Primary injection sends large currents through joints, earths and neighbouring cores: barrier the whole path, and keep away from conductors that move.",
    "Block trips, busbar protection and inter-tripping that the injected current would start, by the permit and the relay's own test switches; put them back and record it.",
    "Lift the secondary earth for the insulation test only, and put it back at one point. Demagnetize after direct current. Local code, the maker's instruction and licensed practice come first.",
  ],
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, currentTransformers }) =>
      currentTransformers.flatMap(({ name, primaryA, secondaryA, accuracy }) =>
        PHASES.map(
          (phase): Row => ({
            object: designation,
            part: name,
            phase,
            ratedPrimary: primaryA,
            ratedSecondary: secondaryA,
            accuracy: knownCtClass(accuracy) ?? ctClassNamed(accuracy),
          }),
        ),
      ),
    ),
  accepted,
  enough,
  plot: { value: "error", limit: "errorMost", unit: "%", log: false },
};
