import { decisive } from "../../lineup/decisive";
import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import type { Told } from "../../messages/told";
import { answer, type Result, refuse } from "../../quantities/result";
import type { Criterion } from "../../standards/criterion";
import { dissipation as ieee } from "../../standards/ieee400.2.2013";
import { answered, closing, PHASES, trail } from "../columns/common";
import { named } from "../columns/measuredColumns";
import type { Column, Comparison, RecordKind, Row } from "../kind";
import { limitOf, mostOf, sourceOf, sources } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Measure = keyof typeof ieee;

/** The three assessments: of what, and the project's own limit by name. */
const MEASURES = [
  { measure: "mean", value: "rated", header: "At U0", own: mostOf("cable dissipation factor e-3") },
  {
    measure: "tipUp",
    value: "tipUp",
    header: "Tip-up",
    own: mostOf("cable dissipation tip-up e-3"),
  },
  {
    measure: "stability",
    value: "deviation",
    header: "Stability",
    own: mostOf("cable dissipation stability e-3"),
  },
] as const;

const cableOf = (row: Row, lineup: Lineup): Panel["cables"][number] | undefined =>
  panelOf(lineup, String(row.object))?.cables.find(({ designation }) => designation === row.part);

/** The guide's figure for cables in service with insulation based on PE; for others none is known here. */
const standard = (
  measure: Measure,
  end: "study" | "action",
  row: Row,
  lineup: Lineup,
): Result<Criterion, Told> => {
  const cable = cableOf(row, lineup);
  const isInService = (cable?.purpose ?? lineup.purpose) === "maintenance";
  return cable?.insulation === "XLPE" && isInService
    ? decisive(lineup, answer(ieee[measure][end]))
    : refuse("none", ({ records }: Told) => records.noDissipation(cable?.insulation, isInService));
};

const accepted: readonly Comparison[] = [
  ...MEASURES.map(
    ({ measure, value }): Comparison => ({
      value,
      limit: `${measure}Study`,
      sense: "most",
      lenient: `${measure}Action`,
    }),
  ),
  // A factor that falls as steeply with the voltage is no sound cable's either: the readings are asked for.
  { value: "tipUp", limit: "tipUpStudy", sense: "within", asks: true },
];

const step = (id: string, header: string, help: string): Column => ({
  id,
  header: `${header} e-3`,
  role: "entry",
  width: 10,
  accepts: { type: "number", least: 0, most: 10_000 },
  need: "reading",
  // The deviation of readings may be too small to show.
  ...(id === "deviation" ? {} : { above: { value: 0 } }),
  help,
});

const limits = ({ measure, header, own }: (typeof MEASURES)[number]): Column[] => [
  {
    id: `${measure}Study`,
    header: `${header}: study above`,
    role: "limit",
    width: 9,
    own,
    help: "Up to this no action is required.",
    value: (row, lineup) => limitOf(standard(measure, "study", row, lineup)),
  },
  {
    id: `${measure}Action`,
    header: `${header}: action above`,
    role: "limit",
    width: 9,
    help: "Between the two limits: further study, neither passed nor failed. Blank where the project's own limit decides.",
    value: (row, lineup) =>
      own(row, lineup) ? null : limitOf(standard(measure, "action", row, lineup)),
  },
];

const columns: readonly Column[] = [
  ...named("Cable", 14),
  { id: "phase", header: "Phase", role: "key", width: 7 },
  step("low", "At 0.5 U0", "Mean of the readings at the step, in thousandths."),
  step("rated", "At U0", "Mean of the readings at the step, in thousandths."),
  step("high", "At 1.5 U0", "Mean of the readings at the step, in thousandths."),
  step("deviation", "Deviation at U0", "Standard deviation of the readings at U0, in thousandths."),
  {
    id: "tipUp",
    header: "Tip-up e-3",
    role: "computed",
    width: 9,
    format: "0.0##",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("low")}),ISNUMBER(${ref("high")})),${ref("high")}-${ref("low")},"")`,
    value: ({ low, high }) =>
      typeof low === "number" && typeof high === "number" ? high - low : null,
    working: ({ low, high, tipUp }) =>
      workedOut(tipUp, `${onPaper(high)}e-3 − ${onPaper(low)}e-3`, "e-3"),
  },
  ...MEASURES.flatMap(limits),
  answered("screen", "Screen", ["Continuous", "Interrupted"], {
    help: "Its resistance from end to end is what its section and length give; earthed as drawn after the test.",
  }),
  sources((row, lineup) =>
    MEASURES.map(({ measure, header, own }) => [
      header,
      sourceOf(own(row, lineup) ?? standard(measure, "study", row, lineup)),
    ]),
  ),
  ...trail(),
];

/** Dissipation factor of cables at steps of voltage. */
export const dissipation: RecordKind<"dissipation"> = {
  id: "dissipation",
  alsoCalled: ["dissipation factor", "tan(?:gent)? ?delta", "tan ?δ"],
  step: "devices",
  onRequest: true,
  sheet: "Dissipation",
  table: "GearDissipation",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation: object, cables }) =>
      cables.flatMap(({ designation }) =>
        PHASES.map((phase): Row => ({ object, part: designation, phase })),
      ),
    ),
  after: [{ kind: "cable" }],
  rising: { columns: ["low", "rated", "high"], by: 0.1, share: 0.05 },
  voidBy: voidBy(["Cable"]),
  accepted,
  enough: [],
};
