import { accuracyLimitFactor } from "../../engineering/accuracyLimitFactor";
import { contactCorrect } from "../../engineering/contactCorrect";
import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { ctClassNamed, relayingVolts } from "../../standards/ctClassNamed";
import { type CtQuantity, ctLimit } from "../../standards/ctLimit";
import { ctErrors, windingBase } from "../../standards/iec61869-2.2012";
import { plateClass } from "../../standards/plateClass";
import { grossRatio, nearRated } from "../../standards/practice";
import { tidy } from "../../standards/tidy";
import type { CtClass } from "../../standards/transformerClass";
import { blank, closing, gear, NOT_CORRECTED, PHASES, quoted, trail } from "../columns/common";
import { insulationAccepted, insulationEnough } from "../columns/insulationColumns";
import {
  burden,
  burdenAccepted,
  burdenEnough,
  displacementAccepted,
  displacementColumns,
  finerThanClass,
  plateColumn,
  plateSource,
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
  isBlank,
  NOT_APPLICABLE,
  type RecordKind,
  type Reference,
  type Row,
} from "../kind";
import { leastOf, limitOf, sourceOf, sources } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { exactly } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

export type Core = Panel["currentTransformers"][number];

/** The core of a row, by its plate. */
export const coreOf = (row: Row, lineup: Lineup): Core | undefined =>
  panelOf(lineup, String(row.object))?.currentTransformers.find(({ name }) => name === row.part);

const WINDING_BASE = windingBase.value;

/** What the core's plate gives, also within its class: `5P20 15 VA`, `0.3B-0.5`, `C200`. */
export const factorOf = ({ accuracy, accuracyLimitFactor }: Core) =>
  accuracyLimitFactor ?? plateClass(accuracy).factor;

/** Rated burden of a core, VA: as given, else within its class. */
export const burdenOf = ({ accuracy, burdenVA, secondaryA }: Core): number | undefined => {
  const plate = plateClass(accuracy);
  if (burdenVA !== undefined || plate.burdenVA !== undefined) return burdenVA ?? plate.burdenVA;
  // Standard burdens of IEEE C57.13 are for 5 A; a relaying class is the voltage at 20 times rated current.
  if (plate.burdenOhm !== undefined) return tidy(plate.burdenOhm * 25);
  const volts = relayingVolts(accuracy);
  return volts === undefined ? undefined : tidy((volts * secondaryA) / 20);
};

/** Least burden of IEC 61869-2: a quarter of rated for the classes 0.1 to 1, half for 3 and 5. */
const burdenLeastOf = (core: Core): number | undefined => {
  const rated = burdenOf(core);
  const parts = plateClass(core.accuracy).names.map((name) => ERRORS[name]?.burdenPart ?? 0);
  const least = Math.max(0, ...parts);
  return (
    core.burdenLeastVA ?? (rated === undefined || least === 0 ? undefined : tidy(rated * least))
  );
};
const ERRORS: Readonly<Record<string, CtClass>> = ctErrors.rows;

const ownError = finerThanClass("current transformer ratio error %", (accuracy) =>
  ctLimit(accuracy, 100),
);
const ownFactor = leastOf("accuracy limit factor");

const VOLTAGE = "Voltage";
const isByVoltage = ({ method }: Row) =>
  String(method ?? "").toLowerCase() === VOLTAGE.toLowerCase();

/** Percent of rated current that the class is looked up at: near rated current and up to the rating factor, rated. */
const lookedUpAt = ({ percent: at, ratingFactor }: Row): number | null => {
  if (typeof at !== "number") return null;
  const most = typeof ratingFactor === "number" ? ratingFactor * 100 : 0;
  return Math.abs(at - 100) <= nearRated.value || (at > 100 && at <= most) ? 100 : at;
};
const lookedUpBy = (ref: Reference): string => {
  const at = ref("percent");
  return `IF(NOT(ISNUMBER(${at})),"",IF(OR(ABS(${at}-100)<=${nearRated.value},AND(${at}>100,${at}<=N(${ref("ratingFactor")})*100)),100,${at}))`;
};

const figureOf = (row: Row, percent: number, quantity: CtQuantity): CellValue =>
  limitOf(ctLimit(String(row.accuracy ?? ""), percent, quantity));

const accepted: readonly Comparison[] = [
  ...ratioAccepted,
  displacementAccepted,
  { value: "winding75", limit: "windingMost", unit: "Ω", sense: "most", excusable: true },
  insulationAccepted,
  burdenAccepted,
  { value: "factor", limit: "factorLeast", sense: "least", excusable: true },
];
const enough: readonly Comparison[] = [insulationEnough, burdenEnough];

const windingMost = plateColumn<Core>(
  { id: "windingMost", header: "Plate Ω at 75 °C", width: 9, unit: "Ω" },
  coreOf,
  ({ windingOhm }) => windingOhm,
  ["most", "current transformer winding resistance Ω"],
);
const burdenMost = plateColumn<Core>(
  { id: "burdenMost", header: "Rated VA", width: 8, unit: "VA" },
  coreOf,
  burdenOf,
  ["most", "current transformer burden VA"],
);
const burdenLeast = plateColumn<Core>(
  {
    id: "burdenLeast",
    header: "Minimum VA",
    width: 8,
    unit: "VA",
    help: "Below this burden the class promises nothing (IEC 61869-2: 25 % of rated, 50 % for classes 3 and 5).",
  },
  coreOf,
  burdenLeastOf,
  ["least", "current transformer least burden VA"],
);

/** Winding resistance that the limit factor is worked out with: the plate's, else the measured one at 75 °C. */
const windingOf = ({ windingMost, winding75 }: Row) =>
  typeof windingMost === "number" ? windingMost : winding75;

const factorLeft = (row: Row): CellValue => {
  const { ratedFactor, burdenMost, burden, ratedSecondary } = row;
  const winding = windingOf(row);
  const connected = exactly(burden, "VA");
  if (
    typeof ratedFactor !== "number" ||
    typeof winding !== "number" ||
    typeof burdenMost !== "number" ||
    typeof ratedSecondary !== "number" ||
    connected === undefined
  )
    return null;
  const square = ratedSecondary ** 2;
  const found = accuracyLimitFactor(ratedFactor, winding, burdenMost / square, connected / square);
  return found.ok ? found.value : null;
};

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Core", role: "key", width: 12 },
  { id: "phase", header: "Phase", role: "key", width: 7 },
  { id: "ratedPrimary", header: "Rated primary A", role: "given", width: 8, unit: "A" },
  { id: "ratedSecondary", header: "Rated secondary A", role: "given", width: 9, unit: "A" },
  { id: "accuracy", header: "Class", role: "given", width: 7 },
  { id: "ratedFactor", header: "Rated limit factor", role: "given", width: 8 },
  {
    id: "ratingFactor",
    header: "Rating factor",
    role: "given",
    width: 7,
    help: "Up to so many times rated current the class holds; blank for once.",
  },
  {
    id: "method",
    header: "Ratio by",
    role: "entry",
    width: 9,
    accepts: { type: "list", values: ["Current", VOLTAGE] },
    help: "Blank or Current: primary injection. Voltage: V applied to the secondary stand under Injected, V read on the primary under Secondary; that shows the turns ratio, and no class but PX and its like.",
  },
  {
    id: "primary",
    header: "Injected A",
    role: "entry",
    width: 9,
    unit: "A",
    wave: "AC",
    accepts: { type: "number", least: 0, most: 100000 },
    need: "reading",
    help: "Primary current; for a protective class at rated current, for a measuring class where its table gives a limit. At less, a row shows the right tap and not the class.",
  },
  {
    id: "secondary",
    header: "Secondary A",
    role: "entry",
    width: 9,
    unit: "A",
    wave: "AC",
    accepts: { type: "number", least: 0, most: 200 },
    need: "reading",
    help: "Read at the same moment as the primary current, the other cores shorted.",
  },
  ...ratioColumns("A", VOLTAGE),
  {
    id: "lookedUp",
    header: "Class at %",
    role: "computed",
    width: 8,
    unit: "%",
    format: "0.0",
    help: "Percent of rated current that the class is looked up at: near rated current, and up to the rating factor, rated.",
    formula: lookedUpBy,
    value: lookedUpAt,
    working: ({ percent, lookedUp }) =>
      typeof lookedUp === "number"
        ? `${onPaper(percent)} %, looked up at ${onPaper(lookedUp)} %`
        : "",
  },
  {
    id: "errorMost",
    header: "Allowed ± %",
    role: "limit",
    width: 8,
    unit: "%",
    own: ownError,
    help: "Blank at a current of which the class says nothing.",
    formula: (ref) =>
      `IF(${ref("method")}="${VOLTAGE}",IFERROR(${gear("CTLIMIT", ref("accuracy"), 100, '"turns"')},""),IF(ISNUMBER(${ref("percent")}),IFERROR(${gear("CTLIMIT", ref("accuracy"), ref("lookedUp"))},""),""))`,
    value: (row) => {
      if (isByVoltage(row)) return figureOf(row, 100, "turns");
      return typeof row.percent === "number"
        ? figureOf(row, Number(row.lookedUp ?? 0), "ratio")
        : null;
    },
  },
  {
    id: "errorWrong",
    header: "Fails beyond ± %",
    role: "limit",
    width: 8,
    unit: "%",
    own: ownError,
    help: "Between allowed and this the reading proves nothing of the class.",
    formula: (ref) => {
      const wrong = `IFERROR(${gear("CTLIMIT", ref("accuracy"), `N(${ref("lookedUp")})`, '"wrong"')},${grossRatio.value})`;
      return `IF(OR(${ref("method")}="${VOLTAGE}",N(${ref("error")})>0),IFERROR(${gear("CTLIMIT", ref("accuracy"), 100, '"turns"')},${wrong}),${wrong})`;
    },
    value: (row) => {
      const wrong = figureOf(row, Number(row.lookedUp ?? 0), "wrong") ?? grossRatio.value;
      // The exciting current lowers the secondary current: only too much of it speaks against the turns.
      const speaksOfTurns = isByVoltage(row) || (typeof row.error === "number" && row.error > 0);
      return speaksOfTurns ? (figureOf(row, 100, "turns") ?? wrong) : wrong;
    },
  },
  ratioWrong,
  ...displacementColumns(
    "current transformer phase displacement min",
    (ref) =>
      `IF(ISNUMBER(${ref("lookedUp")}),${gear("CTLIMIT", ref("accuracy"), ref("lookedUp"), '"phase"')},"${NOT_APPLICABLE}")`,
    (row) => (typeof row.lookedUp === "number" ? figureOf(row, row.lookedUp, "phase") : null),
  ),
  tapInUse,
  polarity,
  {
    id: "winding",
    header: "Rct Ω",
    role: "entry",
    width: 8,
    unit: "Ω",
    accepts: { type: "number", least: 0, most: 1000 },
    need: "reading",
    above: { value: 0 },
    help: "DC resistance of the secondary winding, four-wire, demagnetized afterwards.",
  },
  {
    id: "temperature",
    header: "Winding °C",
    role: "entry",
    takesFirst: "temperature",
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
  windingMost,
  ...secondaryInsulation(),
  burden,
  burdenLeast,
  burdenMost,
  {
    id: "factor",
    header: "Limit factor left",
    role: "computed",
    width: 8,
    format: "0.0",
    help: "Accuracy limit factor at the connected burden, as in phase (a relay maker's manual).",
    formula: (ref) => {
      const square = `${ref("ratedSecondary")}^2`;
      const winding = `IF(ISNUMBER(${ref("windingMost")}),${ref("windingMost")},${ref("winding75")})`;
      const connected = `${gear("QUANTITY", ref("burden"), quoted("VA"))}/${square}`;
      const left = gear(
        "LIMITFACTOR",
        ref("ratedFactor"),
        winding,
        `${ref("burdenMost")}/${square}`,
        connected,
      );
      return `IF(OR(${["ratedFactor", "burden", "ratedSecondary"].map((id) => blank(ref(id))).join(",")},NOT(ISNUMBER(${winding})),NOT(ISNUMBER(${ref("burdenMost")}))),"",IFERROR(${left},""))`;
    },
    value: factorLeft,
    working: (row) => {
      const square = `(${onPaper(row.ratedSecondary)} A)²`;
      return workedOut(
        row.factor,
        `${onPaper(row.ratedFactor)} × (${onPaper(windingOf(row))} Ω + ${onPaper(row.burdenMost)} VA ÷ ${square}) ÷ (${onPaper(windingOf(row))} Ω + ${onPaper(exactly(row.burden, "VA"))} VA ÷ ${square})`,
      );
    },
  },
  {
    id: "factorLeast",
    header: "Limit factor needed",
    role: "limit",
    width: 8,
    own: ownFactor,
    help: "By the protection study; n/a where the project gives none.",
    value: () => NOT_APPLICABLE,
  },
  sources((row, lineup) => [
    ["ratio", ratioSource(row, lineup)],
    ["wrong ratio", sourceOf(grossRatio)],
    ["Rct", plateSource(windingMost, row, lineup)],
    ...transformerSources(burdenMost, row, lineup),
    ["limit factor", sourceOf(ownFactor(row, lineup)) || "none asked for"],
  ]),
  ...trail(),
];

/** The same whatever is injected, so that a reading changes no source. */
function ratioSource(row: Row, lineup: Lineup): string {
  const own = sourceOf(ownError(row, lineup));
  if (own !== "") return own;
  const found = ctLimit(String(row.accuracy ?? ""), 100);
  return found.ok
    ? `class ${row.accuracy}, ${sourceOf(found)}; within ${nearRated.value} % of rated current taken as rated (practice)`
    : `none known here for class ${row.accuracy ?? "not given"}: give the maker's or project's own`;
}

/** The phases that a core has rows for: a ground sensor encloses all three and has one. */
export const phasesOf = ({ encloses }: Core): readonly string[] =>
  encloses === "all phases" ? ["all"] : PHASES;

/** Current transformers, core by core and phase by phase. */
export const currentTransformer: RecordKind<"currentTransformer"> = {
  id: "currentTransformer",
  alsoCalled: ["current transformers?", "cts?"],
  step: "devices",
  sheet: "Current transformers",
  table: "GearCurrentTransformers",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, currentTransformers }) =>
      currentTransformers.flatMap((core) =>
        phasesOf(core).map(
          (phase): Row => ({
            object: designation,
            part: core.name,
            phase,
            ratedPrimary: core.primaryA,
            ratedSecondary: core.secondaryA,
            accuracy: ctClassNamed(core.accuracy),
            ratedFactor: factorOf(core) ?? null,
            ratingFactor: core.ratingFactor ?? null,
          }),
        ),
      ),
    ),
  voidBy: voidBy(["Current transformer"]),
  accepted,
  enough,
  plot: { value: "error", limit: "errorMost", unit: "%", log: false },
};
