import { KNEE_RULES, type KneeRule, kneePoint } from "../../engineering/kneePoint";
import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import { isProtective } from "../../standards/ctClassNamed";
import { blank, closing, gear, PHASES, trail } from "../columns/common";
import { type Column, type Comparison, isBlank, type RecordKind, type Row } from "../kind";
import { sourceOf, sources } from "../limits";
import { onPaper } from "../onPaper";
import { exactly } from "../quantity";
import { verdictBy } from "../verdict";
import { coreOf } from "./currentTransformer";

const POINTS = Array.from({ length: 10 }, (_, at) => at + 1);
/** A curve of fewer points holds no knee. */
const FEWEST = 6;
const NO_KNEE = "no knee";

/** IEC 10/50 for the classes of IEC 61869-2; 45° for those of IEEE C57.13, whose cores have no gap. */
const ruleFor = (accuracy: string): KneeRule =>
  /^[CKTX]\d+$/i.test(accuracy.trim()) ? "IEEE 45" : "IEC 10/50";

const ownKnee = (row: Row, lineup: Lineup): OwnLimit | undefined => {
  const value = coreOf(row, lineup)?.kneeV;
  return value === undefined ? undefined : { from: "maker", value, document: "its plate" };
};

const accepted: readonly Comparison[] = [
  { value: "knee", limit: "kneeLeast", unit: "V", sense: "least" },
];

const point = (letter: "V" | "A", at: number): Column => ({
  id: `${letter.toLowerCase()}${at}`,
  header: `${letter} ${at}`,
  role: "entry",
  width: 8,
  unit: letter,
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
      const rule = isBlank(row.rule) ? "IEC 10/50" : row.rule;
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
    header: "Least knee V",
    role: "limit",
    width: 9,
    unit: "V",
    own: ownKnee,
    help: "Where the plate gives none, type the maker's or the protection study's value here.",
    value: (row) => row.kneeLeast ?? null,
  },
  sources((row, lineup) => [
    [
      "knee",
      sourceOf(ownKnee(row, lineup)) ||
        "none on the plate: type the maker's or the protection study's value, and name its document in the remarks",
    ],
    [
      "rule",
      row.rule === "IEC 10/50"
        ? "IEC 61869-2:2012, 10 % more voltage takes 50 % more current (read)"
        : "IEEE C57.13.1, tangent at 45° (read; edition not named)",
    ],
  ]),
  ...trail(),
];

/** Excitation curves of protective cores, each beside the row of its core and phase among the current transformers. */
export const excitation: RecordKind = {
  id: "excitation",
  title: "Excitation curves of current transformers",
  sheet: "Excitation",
  table: "GearExcitation",
  purpose:
    "Exciting current of each protective core against secondary voltage, primary open, and the knee point that the curve shows. The row goes with the one of the same panel, core and phase among the current transformers.",
  cautions: [
    "The voltage at the secondary terminals is dangerous, and the primary takes part in it: keep the primary open and clear of people, and every other core shorted.",
    "Isolate, prove dead and earth the primary circuit under the site's permit system before the secondary is disconnected; never open a secondary while primary current can flow.",
    "Do not pass the maker's greatest voltage. Go up without stepping back, and bring the voltage slowly down to zero so that the core is left demagnetized.",
    "Disconnect relays and meters from the core. Local code, the maker's instruction and licensed practice come first.",
  ],
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
        .flatMap(({ name, accuracy }) =>
          PHASES.map(
            (phase): Row => ({
              object: designation,
              part: name,
              phase,
              accuracy,
              rule: ruleFor(accuracy),
            }),
          ),
        ),
    ),
  accepted,
  enough: [],
  plot: { value: "knee", limit: "kneeLeast", unit: "V", log: false },
};
