import { type BoltSize, bolts, proofStress } from "../../../src/engineering/bolts";
import { type Curve, curves } from "../../../src/engineering/curves";
import { insulationFactors } from "../../../src/engineering/insulationFactors";
import { sources } from "../../../src/functions/sources";
import {
  ansiCoilSource,
  ansiCoils,
  iecCoilSource,
  iecCoils,
} from "../../../src/standards/coilTable";
import { contactSpread } from "../../../src/standards/contactSpread";
import { contactTestCurrent } from "../../../src/standards/contactTestCurrent";
import { BASES, type Source } from "../../../src/standards/criterion";
import { dewLimit } from "../../../src/standards/dewLimit";
import { earthContinuity } from "../../../src/standards/earthContinuity";
import { gasLeak } from "../../../src/standards/gasLeak";
import { nearPoint } from "../../../src/standards/nearPoint";
import { nearRated } from "../../../src/standards/nearRated";
import { poleSpreadCycles, poleSpreadSource } from "../../../src/standards/poleSpread";
import { timeTolerance } from "../../../src/standards/timeTolerance";
import { timingVoltage } from "../../../src/standards/timingVoltage";
import { torqueTolerance } from "../../../src/standards/torqueTolerance";
import {
  CT_CLASSES,
  type CtClass,
  ctClasses,
  VT_CLASSES,
  type VtClass,
  vtClasses,
  vtIeeeSource,
  vtProtectiveSource,
  vtSource,
} from "../../../src/standards/transformerClasses";

import { declaredStandards, type ListedCriterion, standardsTables } from "./standardsTables";

/** One table of figures: what it is, where it comes from, and its rows. */
export interface CriteriaTable {
  readonly title: string;
  readonly sources: readonly Source[];
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

const NONE = "none given";

/** Every table that the criteria and calculations rest on: those that the standards' files declare, then the others. */
export async function criteriaTables(): Promise<CriteriaTable[]> {
  const { tables } = await declaredStandards();
  return [...standardsTables(tables), ...otherTables()];
}

/** Every criterion: those of the standards' files, then those of the other tables, row by row. */
export async function listedCriteria(): Promise<ListedCriterion[]> {
  const { criteria } = await declaredStandards();
  const others = otherTables().flatMap(({ title, sources: [source], columns, rows }) =>
    source === undefined
      ? []
      : rows.map((row) => ({
          what: title,
          value: row.map((cell, at) => `${columns[at]} ${cell}`).join(", "),
          source,
        })),
  );
  return [...criteria, ...others];
}

/** Tables of the look-ups that have no file of their standard yet, in the order of the trade's work. */
const otherTables = (): CriteriaTable[] => [
  {
    title: "Insulation resistance: factors to 20 °C",
    sources: sourcesOf("IRFACTOR"),
    columns: ["°C", "solid", "oil"],
    rows: insulationFactors.solid.map(([celsius, solid], i) => [
      celsius,
      solid,
      insulationFactors.oil[i]?.[1] ?? NONE,
    ]),
  },
  {
    title: "Surface above the dew point",
    sources: [dewLimit.source],
    columns: ["least margin, K"],
    rows: [[dewLimit.value]],
  },
  {
    title: "Contact resistance: least test current",
    sources: BASES.map((basis) => contactTestCurrent(basis).source),
    columns: ["basis", "A DC"],
    rows: BASES.map((basis) => [basis, contactTestCurrent(basis).value]),
  },
  {
    title: "Contact resistance: spread that asks for investigation",
    sources: [contactSpread.source],
    columns: ["above the lowest, fraction"],
    rows: [[contactSpread.value]],
  },
  {
    title: "Continuity of the earthing circuit",
    sources: [earthContinuity.drop.source],
    columns: ["test current A DC", "greatest drop V"],
    rows: [[earthContinuity.current.value, earthContinuity.drop.value]],
  },
  {
    title: "Torque: tolerance",
    sources: [torqueTolerance.source],
    columns: ["± % of the required torque"],
    rows: [[torqueTolerance.value]],
  },
  {
    title: "Operating times: control voltage while timing",
    sources: [timingVoltage.source],
    columns: ["± % of rated"],
    rows: [[timingVoltage.value]],
  },
  {
    title: "SF6: leakage rate of a closed pressure system",
    sources: [gasLeak.source],
    columns: ["% a year"],
    rows: [[gasLeak.value]],
  },
  {
    title: "Coils: operating range, IEC",
    sources: [iecCoilSource],
    columns: ["coil", "wave", "least, part of rated", "most, part of rated"],
    rows: OPERATIONS.flatMap((operation) =>
      (["AC", "DC"] as const).map((wave) => {
        const { least, most } = iecCoils[operation][wave];
        return [operation, wave, least, most];
      }),
    ),
  },
  {
    title: "Coils: operating range, NETA",
    sources: [ansiCoilSource],
    columns: ["coil", "rated V", "least V", "most V"],
    rows: OPERATIONS.flatMap((operation) =>
      WAVES.flatMap((wave) =>
        [...ansiCoils[operation][wave]].map(([rated, { least, most, lowest }]) => [
          operation,
          `${rated} ${wave}`,
          lowest === undefined ? least : `${least} (${lowest} in some)`,
          most,
        ]),
      ),
    ),
  },
  {
    title: "Poles of one operation",
    sources: [poleSpreadSource],
    columns: ["operation", "greatest difference, part of a cycle"],
    rows: OPERATIONS.map((operation) => [
      operation,
      `1/${Math.round(1 / poleSpreadCycles[operation])}`,
    ]),
  },
  {
    title: "Current transformers: limits of error",
    sources: sourcesOf("CTLIMIT"),
    columns: ["class", "percent of rated current", "ratio ±%", "phase ±min", "composite %"],
    rows: CT_CLASSES.map((name) => {
      const { ratio, phase, composite }: CtClass = ctClasses[name];
      const list = (points: CtClass["phase"]) =>
        points?.map(([, limit]) => limit).join(", ") ?? "-";
      return [name, ratio.map(([at]) => at).join(", "), list(ratio), list(phase), composite ?? "-"];
    }),
  },
  {
    title: "Voltage transformers: limits of error",
    sources: [vtSource, vtProtectiveSource, vtIeeeSource],
    columns: ["class", "percent of rated voltage", "ratio ±%", "phase ±min", "certainty"],
    rows: VT_CLASSES.map((name) => {
      const { from, to, ratio, phase, source }: VtClass = vtClasses[name];
      return [name, `${from} to ${to}`, ratio, phase ?? "-", source.certainty];
    }),
  },
  {
    title: "Inverse-time curves: t = setting (a / (M^p − 1) + b)",
    sources: sourcesOf("CURVETIME"),
    columns: ["curve", "a s", "b s", "p"],
    rows: (Object.keys(curves) as Curve[]).map((name) => {
      const { a, b, p } = curves[name];
      return [name, a, b, p];
    }),
  },
  {
    title: "Protection: tolerance of the operating time",
    sources: [timeTolerance(1).source],
    columns: ["expected s", "tolerance s"],
    rows: [0.3, 0.8, 2, 10].map((expected) => [expected, timeTolerance(expected).value]),
  },
  {
    title: "Bolts: stress area",
    sources: sourcesOf("BOLTTORQUE").slice(0, 1),
    columns: ["bolt", "mm", "stress area mm²"],
    rows: (Object.keys(bolts) as BoltSize[]).map((size) => [
      size,
      bolts[size].diameter,
      bolts[size].area,
    ]),
  },
  {
    title: "Bolts: proof stress",
    sources: sourcesOf("BOLTTORQUE").slice(0, 1),
    columns: ["class", "to M16, MPa", "above, MPa"],
    rows: (["8.8", "10.9", "12.9"] as const).map((grade) => [
      grade,
      proofStress[grade].small,
      proofStress[grade].large,
    ]),
  },
  {
    title: "Current transformers: injection that counts as at rated current",
    sources: [nearRated.source],
    columns: ["± % of rated"],
    rows: [[nearRated.value]],
  },
  {
    title: "Meters: how near to its point a value is applied",
    sources: [nearPoint.source],
    columns: ["± % of full scale"],
    rows: [[nearPoint.value]],
  },
];

const OPERATIONS = ["closing", "opening"] as const;
const WAVES = ["DC", "AC"] as const;

function sourcesOf(name: string): readonly Source[] {
  const found = sources[name] ?? [];
  return "IEC" in found ? BASES.flatMap((basis) => found[basis]) : found;
}
