import { isCoupler, isIncomer } from "../../lineup/busbar";
import type { Lineup } from "../../lineup/lineup";
import { phasingLive, phasingRatio } from "../../standards/practice";
import { tidy } from "../../standards/tidy";
import { closing, PHASES, trail } from "../columns/common";
import { measured, named } from "../columns/measuredColumns";
import type { Column, Comparison, RecordKind, Row } from "../kind";
import { leastOf, mostOf, sourceOf, sources, TO_TYPE } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const ownRatio = mostOf("phasing between like phases %");
const ownLive = leastOf("phasing between unlike phases V");

/** Secondary voltage of the lineup's voltage transformers, V; without any, it is phased on the primary side, at the voltage of the system. */
const phasedV = ({ panels, ratings: { operatingkV } }: Lineup): number | undefined =>
  panels.flatMap(({ voltageTransformers }) => voltageTransformers)[0]?.secondaryV ??
  (operatingkV === undefined ? undefined : operatingkV * 1000);

const accepted: readonly Comparison[] = [
  { value: "likeness", limit: "likenessMost", unit: "%", sense: "most" },
];
/** Without voltage on both sides there is nothing between any phases, like or unlike. */
const live: Comparison = { value: "greaterV", limit: "crossLeast", unit: "V", sense: "least" };

const columns: readonly Column[] = [
  ...named("Between", 20),
  { id: "phase", header: "Phase", role: "key", width: 7 },
  measured("sameV", "Like phases V", "V", {
    wave: "AC",
    help: "Between the phase on one side and the phase of the same name on the other.",
  }),
  measured("crossV", "Unlike phases V", "V", {
    wave: "AC",
    help: "Between it and the next phase on the other side: proves that both sides are alive.",
  }),
  {
    id: "greaterV",
    header: "Greater V",
    role: "computed",
    width: 8,
    unit: "V",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("sameV")}),ISNUMBER(${ref("crossV")})),MAX(${ref("sameV")},${ref("crossV")}),"")`,
    value: ({ sameV, crossV }) =>
      typeof sameV === "number" && typeof crossV === "number" ? Math.max(sameV, crossV) : null,
    working: ({ sameV, crossV, greaterV }) =>
      workedOut(greaterV, `greater of ${onPaper(sameV)} V and ${onPaper(crossV)} V`, "V"),
  },
  {
    id: "likeness",
    header: "Like phases %",
    role: "computed",
    width: 10,
    unit: "%",
    format: "0.0",
    formula: (ref) => `IF(N(${ref("greaterV")})>0,${ref("sameV")}/${ref("greaterV")}*100,"")`,
    value: ({ sameV, greaterV }) =>
      typeof sameV === "number" && typeof greaterV === "number" && greaterV > 0
        ? (sameV / greaterV) * 100
        : null,
    working: ({ sameV, greaterV, likeness }) =>
      workedOut(likeness, `${onPaper(sameV)} V ÷ ${onPaper(greaterV)} V × 100`, "%"),
  },
  {
    id: "likenessMost",
    header: "Maximum %",
    role: "limit",
    width: 9,
    unit: "%",
    own: ownRatio,
    formula: () => String(phasingRatio.value),
    value: () => phasingRatio.value,
  },
  {
    id: "crossLeast",
    header: "Alive from V",
    role: "limit",
    width: 9,
    unit: "V",
    own: ownLive,
    help: "Where the lineup has neither voltage transformers nor an operating voltage, type it here.",
    value: (row, lineup) => {
      const volts = phasedV(lineup);
      return volts === undefined ? (row.crossLeast ?? null) : tidy(volts * phasingLive.value);
    },
  },
  sources((row, lineup) => [
    ["like phases", sourceOf(ownRatio(row, lineup) ?? phasingRatio)],
    [
      "alive",
      sourceOf(ownLive(row, lineup)) ||
        (phasedV(lineup) === undefined ? TO_TYPE : sourceOf(phasingLive)),
    ],
  ]),
  ...trail(),
];

/** Phasing across each coupler, and each incomer where there are several. */
export const phasing: RecordKind<"phasing"> = {
  id: "phasing",
  alsoCalled: ["phasing out", "phase comparison"],
  step: "energization",
  onRequest: true,
  sheet: "Phasing",
  table: "GearPhasing",
  columns: [...columns, verdictBy(columns, accepted, [live]), ...closing()],
  rows: ({ panels }) => {
    const several = panels.filter(isIncomer).length > 1;
    return panels.flatMap((panel): Row[] => {
      const { breaker, designation } = panel;
      return breaker && (isCoupler(panel) || (several && isIncomer(panel)))
        ? PHASES.map((phase) => ({
            object: designation,
            part: `Across ${breaker.designation}`,
            phase,
          }))
        : [];
    });
  },
  live: () => true,
  voidBy: voidBy(["Cable", "Voltage transformer"]),
  accepted,
  enough: [live],
};
