import { excitingCurrent } from "../../engineering/excitingCurrent";
import { KNEE_RULES, type KneeRule, kneePoint } from "../../engineering/kneePoint";
import { limitingVoltage } from "../../engineering/limitingVoltage";
import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import { bounded } from "../../quantities/reading/bounded";
import { sourceText } from "../../standards/criterion";
import { ctClassNamed, isProtective, relayingVolts } from "../../standards/ctClassNamed";
import { ctLimit } from "../../standards/ctLimit";
import { unknownDrop } from "../../standards/practice";
import { tidy } from "../../standards/tidy";
import { blank, closing, gear, quoted, trail } from "../columns/common";
import { judged } from "../judged";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type RecordKind,
  type Row,
} from "../kind";
import { leastOf, mostOf, sourceOf, sources, stricterOf } from "../limits";
import { onPaper } from "../onPaper";
import { exactly } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";
import { burdenOf, type Core, coreOf, factorOf, phasesOf } from "./currentTransformer";

const POINTS = Array.from({ length: 10 }, (_, at) => at + 1);
/** A curve of fewer points holds no knee. */
const FEWEST = 6;
const NO_KNEE = "no knee";
const IEC = "IEC 10/50" satisfies KneeRule;

/** IEC 10/50 for the classes of IEC 61869-2; 45° for those of IEEE C57.13, whose cores have no gap. */
const ruleFor = (accuracy: string): KneeRule =>
  relayingVolts(accuracy) === undefined ? IEC : "IEEE 45";

const plate =
  (pick: (core: Core) => number | undefined) =>
  (row: Row, lineup: Lineup): OwnLimit | undefined => {
    const core = coreOf(row, lineup);
    const value = core && pick(core);
    return value === undefined ? undefined : { from: "maker", value, document: "its plate" };
  };
const ownKnee = stricterOf(
  "least",
  plate(({ kneeV }) => kneeV),
  leastOf("knee point V"),
);
const ownExciting = stricterOf(
  "most",
  plate(({ excitingA }) => excitingA),
  mostOf("exciting current at the knee A"),
);

const letterOf = (accuracy: CellValue | undefined) =>
  /^[CKT]/.exec(ctClassNamed(String(accuracy ?? "")))?.[0];

/** Part of its voltage that the knee of a K class has to reach (IEEE C57.13, quoted by a relay maker). */
const K_KNEE = 0.7;

/** The knee that a class itself asks for: none of C, which is judged by its current at the class voltage. */
const kneeOfClass = ({ accuracy }: Row): CellValue => {
  const letter = letterOf(accuracy);
  if (letter === "C") return NOT_APPLICABLE;
  const volts = relayingVolts(String(accuracy ?? ""));
  return letter === "K" && volts !== undefined ? tidy(volts * K_KNEE) : null;
};

/**
 * Voltage behind the winding at which a class limits the exciting current, V: of a relaying class its own and
 * the drop in the winding at 20 times rated current, of a class P its secondary limiting e.m.f. Null for a class
 * P of which the plate does not give all that it takes.
 */
const classVolts = (core: Core): number | null => {
  const { accuracy, secondaryA, windingOhm } = core;
  const volts = relayingVolts(accuracy);
  if (volts !== undefined) return tidy(volts + 20 * secondaryA * (windingOhm ?? 0));
  const [factor, burden] = [factorOf(core), burdenOf(core)];
  const found =
    compositeOf(core) === undefined ||
    factor === undefined ||
    windingOhm === undefined ||
    burden === undefined
      ? undefined
      : limitingVoltage(factor, secondaryA, windingOhm, burden);
  return found?.ok ? tidy(found.value) : null;
};

/** Composite error of a class P or PR, %. */
const compositeOf = ({ accuracy }: Core): number | undefined => {
  const found = ctLimit(accuracy, 100, "composite");
  return found.ok && relayingVolts(accuracy) === undefined ? found.value.value : undefined;
};

/**
 * Voltage up to which the exciting current must stay below its limit where the plate does not give the
 * winding's resistance, V: the drop in it is not known, and rarely more than this part of the class voltage.
 */
const sureVolts = ({ accuracy, windingOhm }: Core): number | null => {
  const volts = relayingVolts(accuracy);
  return volts === undefined || windingOhm !== undefined
    ? null
    : tidy(volts * (1 + unknownDrop.value));
};

/**
 * Exciting current that the class allows there, A: of a relaying class 10 % of 20 times rated (IEEE C57.13), of
 * a class P its composite error of the accuracy limit current (IEC 61869-2, indirect test of the composite error;
 * from memory).
 */
const classAmps = (core: Core): number | null => {
  if (relayingVolts(core.accuracy) !== undefined) return 2 * core.secondaryA;
  const [composite, factor] = [compositeOf(core), factorOf(core)];
  return composite === undefined || factor === undefined || classVolts(core) === null
    ? null
    : tidy((composite / 100) * factor * core.secondaryA);
};

const accepted: readonly Comparison[] = [
  { value: "knee", limit: "kneeLeast", unit: "V", sense: "least", excusable: true },
  { value: "exciting", limit: "excitingMost", unit: "A", sense: "most", excusable: true },
  {
    value: "atClass",
    limit: "atClassMost",
    unit: "A",
    sense: "most",
    when: "atClass",
    excusable: true,
  },
  {
    value: "atSure",
    limit: "atClassMost",
    unit: "A",
    sense: "most",
    when: "sureVolts",
    excusable: true,
    asks: true,
  },
];

const point = (letter: "V" | "A", at: number): Column => ({
  id: `${letter.toLowerCase()}${at}`,
  header: `${letter} ${at}`,
  role: "entry",
  width: 8,
  unit: letter,
  wave: "AC",
  accepts: { type: "number", least: 0, most: letter === "V" ? 10000 : 100 },
  ...(at <= FEWEST ? { need: "reading" as const } : {}),
  ...(at === 1
    ? {
        help:
          letter === "V"
            ? "Secondary volts, from the lowest point up; the last ones well past the knee."
            : "Exciting current at the voltage of the same number.",
      }
    : {}),
});

/** Points of a row: both lists, or nothing where one of a pair is blank or unreadable. */
const pointsOf = (row: Row): { volts: number[]; amps: number[] } | undefined => {
  const [volts, amps]: [number[], number[]] = [[], []];
  for (const at of POINTS) {
    if (isBlank(row[`v${at}`]) && isBlank(row[`a${at}`])) continue;
    const [volt, ampere] = [exactly(row[`v${at}`], "V"), exactly(row[`a${at}`], "A")];
    if (volt === undefined || ampere === undefined) return undefined;
    volts.push(volt);
    amps.push(ampere);
  }
  return { volts, amps };
};

/**
 * The exciting current at a voltage of the row, from its own curve.
 *
 * @param refuting the limit beyond which the current refutes a class P: where the curve ends before the voltage
 * and not beyond the limit it says nothing, since a class P is not proved by it (leakage adds)
 */
const currentAt = (
  id: string,
  header: string,
  volts: string,
  help: string,
  refuting?: string,
): Column => ({
  id,
  header,
  role: "computed",
  width: 9,
  unit: "A",
  format: "0.0000",
  help,
  formula: (ref) => {
    const curve = gear("EXCITING", ref.span("v1", "v10"), ref.span("a1", "a10"), ref(volts));
    const found = `IFERROR(${curve},"${NO_KNEE}")`;
    const told = refuting
      ? `IF(OR(${ref("rule")}<>"${IEC}",ISNUMBER(${found}),IFERROR(${gear("JUDGE", found, ref(refuting), quoted("most"))},"")="Fail"),${found},"")`
      : found;
    return `IF(OR(${blank(ref("v1"))},NOT(ISNUMBER(${ref(volts)}))),"",${told})`;
  },
  value: (row) => {
    if (isBlank(row.v1) || typeof row[volts] !== "number") return null;
    const points = pointsOf(row);
    const current = points ? excitingCurrent(points.volts, points.amps, row[volts]) : undefined;
    const found = current?.ok ? bounded(current.value) : NO_KNEE;
    const tells =
      refuting === undefined ||
      row.rule !== IEC ||
      typeof found === "number" ||
      judged(found, row[refuting], "most") === "Fail";
    return tells ? found : null;
  },
  working: (row) =>
    isBlank(row[id]) || row[id] === NO_KNEE
      ? ""
      : `from the curve at ${onPaper(row[volts])} V: ${onPaper(row[id])} A`,
});

const isRule = (cell: unknown): cell is KneeRule => KNEE_RULES.some((rule) => rule === cell);

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Core", role: "key", width: 12 },
  { id: "phase", header: "Phase", role: "key", width: 7 },
  { id: "accuracy", header: "Class", role: "given", width: 7 },
  { id: "rule", header: "Knee rule", role: "given", width: 10 },
  ...POINTS.map((at) => point("V", at)),
  ...POINTS.map((at) => point("A", at)),
  {
    id: "knee",
    header: "Knee V",
    role: "computed",
    width: 9,
    unit: "V",
    format: "0.0",
    help: "As sharp as the points about it are close.",
    formula: (ref) =>
      `IF(${blank(ref("v1"))},"",IFERROR(${gear("KNEEPOINT", ref.span("v1", "v10"), ref.span("a1", "a10"), ref("rule"))},"${NO_KNEE}"))`,
    value: (row) => {
      if (isBlank(row.v1)) return null;
      const points = pointsOf(row);
      const rule = isBlank(row.rule) ? IEC : row.rule;
      const found = points && isRule(rule) ? kneePoint(points.volts, points.amps, rule) : undefined;
      return found?.ok ? found.value : NO_KNEE;
    },
    working: (row) => {
      const { volts = [], amps = [] } = pointsOf(row) ?? {};
      return typeof row.knee === "number"
        ? `${row.rule} on ${volts.length} points, ${onPaper(volts[0])} V at ${onPaper(amps[0])} A to ${onPaper(volts.at(-1))} V at ${onPaper(amps.at(-1))} A: knee at ${onPaper(row.knee)} V`
        : "";
    },
  },
  {
    id: "kneeLeast",
    header: "Minimum knee V",
    role: "limit",
    width: 9,
    unit: "V",
    own: ownKnee,
    help: "Where the plate gives none, type the maker's or the protection study's value here. n/a for class C, which is judged by its exciting current at the class voltage.",
    value: (row) => (typeof row.kneeLeast === "number" ? row.kneeLeast : kneeOfClass(row)),
  },
  currentAt(
    "exciting",
    "Exciting A at least knee",
    "kneeLeast",
    "At the least knee-point voltage, for which a plate of class PX gives the greatest exciting current.",
  ),
  {
    id: "excitingMost",
    header: "Maximum exciting A",
    role: "limit",
    width: 9,
    unit: "A",
    format: "0.0000",
    own: ownExciting,
    value: () => NOT_APPLICABLE,
  },
  {
    id: "classVolts",
    header: "Class V",
    role: "given",
    width: 8,
    unit: "V",
    help: "Of a relaying class: its voltage at 20 times rated current and, where the plate gives the winding's resistance, the drop in it. Of a class P with the winding's resistance on the plate: its secondary limiting e.m.f.",
  },
  {
    id: "atClassMost",
    header: "Maximum A at class V",
    role: "limit",
    width: 9,
    unit: "A",
    value: (row, lineup) => {
      const core = coreOf(row, lineup);
      return (core && classAmps(core)) ?? NOT_APPLICABLE;
    },
  },
  currentAt(
    "atClass",
    "Exciting A at class V",
    "classVolts",
    "Above its limit the core does not have its class, whatever the knee. A curve of a class P need not reach this voltage, and a current below the limit does not prove the class.",
    "atClassMost",
  ),
  {
    id: "sureVolts",
    header: "Class V, Rct unknown",
    role: "given",
    width: 9,
    unit: "V",
    help: "Blank where the plate gives the winding's resistance. Else the drop in the winding is not known, and the curve has to lie below the limit up to here.",
  },
  currentAt(
    "atSure",
    "Exciting A there",
    "sureVolts",
    "Above the limit, or beyond the curve, the class is neither shown nor refuted: give the winding's resistance in the lineup.",
  ),
  sources((row, lineup) => [
    [
      "knee",
      sourceOf(ownKnee(row, lineup)) ||
        CLASS_KNEES[letterOf(row.accuracy) ?? ""] ||
        "none on the plate: type the maker's or the protection study's value, and name its document in the remarks",
    ],
    ...(isBlank(row.sureVolts)
      ? []
      : ([["drop in the winding", sourceText(unknownDrop.source)]] as const)),
    [
      "rule",
      row.rule === IEC
        ? "IEC 61869-2:2012, 10 % more voltage takes 50 % more current (read)"
        : "IEEE C57.13.1, tangent at 45° (read; edition not named)",
    ],
  ]),
  ...trail(),
];

/** The same whatever is measured. */
const CLASS_KNEES: Readonly<Record<string, string>> = {
  C: "none asked of class C: its exciting current at the class voltage is at most 10 % of 20 times rated (IEEE C57.13-2016; read, quoted by a relay maker)",
  K: "at least 70 % of the class voltage (IEEE C57.13-2016; read, quoted by a relay maker)",
};

/** Excitation curves of protective cores, each beside the row of its core and phase among the current transformers. */
export const excitation: RecordKind<"excitation"> = {
  id: "excitation",
  alsoCalled: ["(?:magneti[sz]ing|excitation|magneti[sz]ation) curve"],
  step: "devices",
  sheet: "Excitation",
  table: "GearExcitation",
  curve: {
    points: Array.from({ length: 10 }, (_, at) => [`a${at + 1}`, `v${at + 1}`] as const),
    along: "Exciting current, A",
    upward: "Secondary voltage, V",
    unit: "V",
    mark: "knee",
  },
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, currentTransformers }) =>
      currentTransformers
        .filter(({ accuracy }) => isProtective(accuracy))
        .flatMap((core) =>
          phasesOf(core).map(
            (phase): Row => ({
              object: designation,
              part: core.name,
              phase,
              accuracy: core.accuracy,
              rule: ruleFor(core.accuracy),
              classVolts: classVolts(core),
              sureVolts: sureVolts(core),
            }),
          ),
        ),
    ),
  voidBy: voidBy(["Current transformer"]),
  accepted,
  enough: [],
  plot: { value: "knee", limit: "kneeLeast", unit: "V", log: false },
};
