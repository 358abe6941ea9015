import { type BoltSize, bolts, proofStress } from "../../../src/engineering/bolts";
import { type Curve, curves } from "../../../src/engineering/curves";
import { insulationFactors } from "../../../src/engineering/insulationFactors";
import { sources } from "../../../src/functions/sources";
import { cableMinimum, cableTestVoltage } from "../../../src/standards/cableInsulation";
import { cableMinutes } from "../../../src/standards/cableMinutes";
import {
  iecCableSource,
  iecCables,
  vlfCableSource,
  vlfCables,
} from "../../../src/standards/cableTable";
import { CABLE_WAVES } from "../../../src/standards/cableTest";
import {
  ansiCoilSource,
  ansiCoils,
  iecCoilSource,
  iecCoils,
} from "../../../src/standards/coilTable";
import { contactSpread } from "../../../src/standards/contactSpread";
import { contactTestCurrent } from "../../../src/standards/contactTestCurrent";
import {
  controlMinimum,
  controlSeconds,
  controlTestVoltage,
} from "../../../src/standards/controlWiring";
import { BASES, type Source } from "../../../src/standards/criterion";
import { dewLimit } from "../../../src/standards/dewLimit";
import { earthContinuity } from "../../../src/standards/earthContinuity";
import { gasContact } from "../../../src/standards/gasContact";
import { gasFilling } from "../../../src/standards/gasFilling";
import { gasLeak } from "../../../src/standards/gasLeak";
import { insulationSource, insulationTable } from "../../../src/standards/insulationTable";
import {
  testVoltageHabit,
  testVoltagesByHabit,
} from "../../../src/standards/insulationTestVoltage";
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
import {
  iecSource,
  iecWithstand,
  metalCladFactory,
  metalCladSite,
  netaSources,
} from "../../../src/standards/withstandTables";
import { withstandTolerance } from "../../../src/standards/withstandTolerance";
import { controlWithstand, siteSources } from "../../../src/standards/withstandVoltage";

/** One table of figures: what it is, where it comes from, and its rows. */
export interface CriteriaTable {
  readonly title: string;
  readonly sources: readonly Source[];
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

const NONE = "none given";

/** Every table that the criteria and calculations rest on, in the order of the trade's work. */
export const criteriaTables = (): CriteriaTable[] => [
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
    title: "Insulation resistance: test voltage and least value, NETA",
    sources: [insulationSource],
    columns: ["rated kV, up to", "test V DC", "least MΩ at 20 °C"],
    rows: insulationTable.map(({ ratedkV, testV, megohm }) => [
      Number.isFinite(ratedkV) ? ratedkV : "46 and above",
      testV,
      megohm,
    ]),
  },
  {
    title: "Insulation resistance: test voltage beside IEC",
    sources: [testVoltageHabit],
    columns: ["rated kV, up to", "test V DC"],
    rows: testVoltagesByHabit.map(({ ratedkV, testV }) => [ratedkV, testV]),
  },
  {
    title: "Surface above the dew point",
    sources: [dewLimit.source],
    columns: ["least margin, K"],
    rows: [[dewLimit.value]],
  },
  {
    title: "Withstand of switchgear, IEC",
    sources: [iecSource, siteSources.main],
    columns: ["rated kV", "factory kV", "across the isolating distance, factory kV", "site kV"],
    rows: iecWithstand.map(({ ratedkV, main, isolating }) => [
      ratedkV,
      main,
      isolating,
      Number((main * 0.8).toPrecision(12)),
    ]),
  },
  ...(["factory", "site"] as const).map((place) => ({
    title: `Withstand of metal-clad switchgear, NETA, ${place}`,
    sources: [netaSources[place]],
    columns: ["rated kV, up to", "AC kV", "DC kV"],
    rows: (place === "factory" ? metalCladFactory : metalCladSite).map(
      ({ ratedkV, AC, DC, certaintyDC }) => [
        ratedkV,
        AC,
        DC === undefined ? NONE : certaintyDC ? `${DC} (${certaintyDC})` : DC,
      ],
    ),
  })),
  {
    title: "Withstand of control wiring",
    sources: BASES.map((basis) => controlWithstand[basis].factory.source),
    columns: ["basis", "factory kV", "site kV"],
    rows: BASES.map((basis) => [
      basis,
      controlWithstand[basis].factory.value,
      `${controlWithstand[basis].site.value} (${controlWithstand[basis].site.source.note})`,
    ]),
  },
  {
    title: "Tolerance of the test voltage",
    sources: [withstandTolerance(60).source],
    columns: ["duration s", "fraction"],
    rows: [
      ["up to 60", withstandTolerance(60).value],
      ["longer", withstandTolerance(61).value],
    ],
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
    title: "Insulation of control wiring",
    sources: [controlMinimum(0).source, controlTestVoltage.source],
    columns: ["least MΩ", "least test V DC"],
    rows: [["rated kV + 1", controlTestVoltage.value]],
  },
  {
    title: "Withstand of control wiring: least duration on site",
    sources: BASES.map((basis) => controlSeconds[basis].source),
    columns: ["basis", "s"],
    rows: BASES.map((basis) => [basis, controlSeconds[basis].value]),
  },
  {
    title: "Operating times: control voltage while timing",
    sources: [timingVoltage.source],
    columns: ["± % of rated"],
    rows: [[timingVoltage.value]],
  },
  {
    title: "SF6: reading below the filling pressure that is let pass",
    sources: [gasFilling.source],
    columns: ["fraction"],
    rows: [[gasFilling.value]],
  },
  {
    title: "SF6: contact points of a density monitor, ± of the plate's",
    sources: [gasContact.source],
    columns: ["fraction"],
    rows: [[gasContact.value]],
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
    columns: ["coil", "rated V DC", "least V", "most V"],
    rows: OPERATIONS.flatMap((operation) =>
      [...ansiCoils[operation]].map(([rated, { least, most }]) => [operation, rated, least, most]),
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
    title: "Cables after laying, IEC: AC U0 for 24 h, DC 4 U0 for 15 min",
    sources: [iecCableSource],
    columns: ["highest voltage of the system kV, up to", "U0 kV"],
    rows: iecCables.map(({ ratedkV, u0 }) => [ratedkV, u0]),
  },
  {
    title: "Cables after laying, NETA: very low frequency, acceptance",
    sources: [vlfCableSource],
    columns: ["system kV, up to", "kV rms", "note"],
    rows: vlfCables.map((row) => [row.ratedkV, row.acceptance, "note" in row ? row.note : ""]),
  },
  {
    title: "Cables after laying: least duration",
    sources: [iecCableSource, vlfCableSource],
    columns: ["basis", "wave", "min"],
    rows: BASES.flatMap((basis) =>
      CABLE_WAVES.flatMap((wave) => {
        const found = cableMinutes(basis, wave);
        return found.ok ? [[basis, wave, found.value.value]] : [];
      }),
    ),
  },
  {
    title: "Cables before connection: insulation",
    sources: [cableMinimum.source],
    columns: ["least MΩ", "least test V DC"],
    rows: [[cableMinimum.value, cableTestVoltage.value]],
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

function sourcesOf(name: string): readonly Source[] {
  const found = sources[name] ?? [];
  return "IEC" in found ? BASES.flatMap((basis) => found[basis]) : found;
}
