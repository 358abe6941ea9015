import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { leastBurden, vtMeasuring, vtProtective } from "../../standards/iec61869-3.2011";
import { vtBurdens } from "../../standards/ieeeC57.13.2016";
import { plateClass } from "../../standards/plateClass";
import { grossRatio } from "../../standards/practice";
import { tidy } from "../../standards/tidy";
import { knownVtClasses, type VtQuantity, vtLimit } from "../../standards/vtLimit";
import { closing, gear, PHASES, trail } from "../columns/common";
import { insulationAccepted, insulationEnough } from "../columns/insulationColumns";
import {
  burden,
  burdenAccepted,
  burdenEnough,
  displacementAccepted,
  displacementColumns,
  finerThanClass,
  plateColumn,
  polarity,
  ratioAccepted,
  ratioColumns,
  ratioWrong,
  secondaryInsulation,
  tapInUse,
  transformerSources,
} from "../columns/transformerColumns";
import {
  type CellValue,
  type Column,
  type Comparison,
  NOT_APPLICABLE,
  type RecordKind,
  type Row,
} from "../kind";
import { limitOf, sourceOf, sources } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Winding = Panel["voltageTransformers"][number];

const windingOf = (row: Row, lineup: Lineup): Winding | undefined =>
  panelOf(lineup, String(row.object))?.voltageTransformers.find(({ name }) => name === row.part);

/** Rated burden: as given, else within the class, else of the greatest letter of IEEE C57.13. */
const burdenOf = ({ accuracy, burdenVA }: Winding): number | undefined => {
  const plate = plateClass(accuracy);
  const letters = plate.letters?.match(/ZZ|[WXMYZ]/g) ?? [];
  const ofLetters = letters.map((letter) => vtBurdens.rows[letter]?.va ?? 0);
  return burdenVA ?? plate.burdenVA ?? (ofLetters.length > 0 ? Math.max(...ofLetters) : undefined);
};

/** Least burden of IEC 61869-3: a quarter of rated from 10 VA up; a class of IEEE C57.13 holds from no burden on. */
const burdenLeastOf = (winding: Winding): number | undefined => {
  const rated = burdenOf(winding);
  const isIec = knownVtClasses(winding.accuracy)?.every((name) => IEC_CLASSES.has(name)) ?? false;
  const quarter =
    rated !== undefined && rated >= leastBurden.fromVA && isIec
      ? tidy(rated * leastBurden.value)
      : undefined;
  return winding.burdenLeastVA ?? quarter;
};
const IEC_CLASSES: ReadonlySet<string> = new Set(
  [vtMeasuring, vtProtective].flatMap(({ rows }) => Object.keys(rows)),
);

const ownError = finerThanClass("voltage transformer ratio error %", (accuracy) =>
  vtLimit(accuracy, 100),
);

/** Whether more is applied than the plate's voltage factor allows the class to be asked for. */
const isBeyond = ({ percent, factor }: Row) =>
  typeof percent === "number" && typeof factor === "number" && percent > factor * 100;

const figureOf = (row: Row, quantity: VtQuantity): CellValue =>
  limitOf(vtLimit(String(row.accuracy ?? ""), Number(row.percent ?? 0), quantity));

/** The same whatever is applied, so that a reading changes no source. */
const classSource = (row: Row, lineup: Lineup): string => {
  const own = sourceOf(ownError(row, lineup));
  const found = vtLimit(String(row.accuracy ?? ""), 100);
  if (own !== "") return own;
  return found.ok
    ? `class ${row.accuracy}, ${sourceOf(found)}`
    : `none known here for class ${row.accuracy ?? "not given"}`;
};

const accepted: readonly Comparison[] = [
  ...ratioAccepted,
  displacementAccepted,
  insulationAccepted,
  burdenAccepted,
];
const enough: readonly Comparison[] = [insulationEnough, burdenEnough];

const burdenMost = plateColumn<Winding>(
  { id: "burdenMost", header: "Rated VA", width: 8, unit: "VA" },
  windingOf,
  burdenOf,
  ["most", "voltage transformer burden VA"],
);
const burdenLeast = plateColumn<Winding>(
  {
    id: "burdenLeast",
    header: "Minimum VA",
    width: 8,
    unit: "VA",
    help: "Below this burden the class promises nothing (IEC 61869-3: 25 % of rated from 10 VA up).",
  },
  windingOf,
  burdenLeastOf,
  ["least", "voltage transformer least burden VA"],
);

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Winding", role: "key", width: 12 },
  { id: "phase", header: "Phase", role: "key", width: 7 },
  { id: "ratedPrimary", header: "Rated primary V", role: "given", width: 9, unit: "V" },
  { id: "ratedSecondary", header: "Rated secondary V", role: "given", width: 9, unit: "V" },
  { id: "accuracy", header: "Class", role: "given", width: 7 },
  { id: "factor", header: "Voltage factor", role: "given", width: 7 },
  {
    id: "primary",
    header: "Primary V",
    role: "entry",
    width: 9,
    unit: "V",
    wave: "AC",
    accepts: { type: "number", least: 0, most: 100000 },
    need: "reading",
    help: "Applied to the primary, never fed back through the secondary; IEC measuring classes give limits from 80 % to 120 % of rated voltage alone, IEEE classes from 90 % to 110 %. At less, a row shows the right ratio and not the class.",
  },
  {
    id: "secondary",
    header: "Secondary V",
    role: "entry",
    width: 9,
    unit: "V",
    wave: "AC",
    accepts: { type: "number", least: 0, most: 1000 },
    need: "reading",
  },
  ...ratioColumns("V"),
  {
    id: "errorMost",
    header: "Allowed ± %",
    role: "limit",
    width: 8,
    unit: "%",
    own: ownError,
    help: "Blank at a voltage of which the class says nothing: the row then shows the right ratio, not the class.",
    formula: (ref) =>
      `IF(NOT(ISNUMBER(${ref("percent")})),"",IF(AND(ISNUMBER(${ref("factor")}),${ref("percent")}>N(${ref("factor")})*100),"",IFERROR(${gear("VTLIMIT", ref("accuracy"), ref("percent"))},"")))`,
    value: (row) =>
      typeof row.percent !== "number" || isBeyond(row) ? null : figureOf(row, "ratio"),
  },
  {
    id: "errorWrong",
    header: "Fails beyond ± %",
    role: "limit",
    width: 8,
    unit: "%",
    own: ownError,
    help: "Between allowed and this the reading proves nothing of the class.",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("factor")}),N(${ref("percent")})>N(${ref("factor")})*100),${grossRatio.value},IFERROR(${gear("VTLIMIT", ref("accuracy"), `N(${ref("percent")})`, '"wrong"')},${grossRatio.value}))`,
    value: (row) =>
      isBeyond(row) ? grossRatio.value : (figureOf(row, "wrong") ?? grossRatio.value),
  },
  ratioWrong,
  ...displacementColumns(
    "voltage transformer phase displacement min",
    (ref) =>
      `IF(AND(ISNUMBER(${ref("percent")}),NOT(AND(ISNUMBER(${ref("factor")}),N(${ref("percent")})>N(${ref("factor")})*100))),${gear("VTLIMIT", ref("accuracy"), ref("percent"), '"phase"')},"${NOT_APPLICABLE}")`,
    (row) => (typeof row.percent !== "number" || isBeyond(row) ? null : figureOf(row, "phase")),
  ),
  tapInUse,
  polarity,
  ...secondaryInsulation(),
  {
    id: "fuses",
    header: "Fuses",
    role: "entry",
    width: 12,
    accepts: { type: "list", values: ["To drawing", "Not to drawing"], right: "To drawing" },
    need: "condition",
    help: "Primary and secondary: rating and type as drawn, contacts firm.",
  },
  {
    id: "earth",
    header: "Secondary earth",
    role: "entry",
    width: 11,
    accepts: { type: "list", values: ["One point", "None", "Several"], right: "One point" },
    need: "condition",
    help: "Back in place after the insulation test.",
  },
  burden,
  burdenLeast,
  burdenMost,
  sources((row, lineup) => [
    ["ratio", classSource(row, lineup)],
    ["wrong ratio", sourceOf(grossRatio)],
    ...transformerSources(burdenMost, row, lineup),
  ]),
  ...trail(),
];

/** Voltage transformers, winding by winding and phase by phase. */
export const voltageTransformer: RecordKind<"voltageTransformer"> = {
  id: "voltageTransformer",
  alsoCalled: ["voltage transformers?", "potential transformers?", "vts?", "pts?"],
  step: "devices",
  sheet: "Voltage transformers",
  table: "GearVoltageTransformers",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, voltageTransformers }) =>
      voltageTransformers.flatMap(({ name, primaryV, secondaryV, accuracy, voltageFactor }) =>
        PHASES.map(
          (phase): Row => ({
            object: designation,
            part: name,
            phase,
            ratedPrimary: primaryV,
            ratedSecondary: secondaryV,
            accuracy: plateClass(accuracy).names.join("/"),
            factor: voltageFactor ?? null,
          }),
        ),
      ),
    ),
  voidBy: voidBy(["Voltage transformer"]),
  accepted,
  enough,
  plot: { value: "error", limit: "errorMost", unit: "%", log: false },
};
