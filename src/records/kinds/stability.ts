import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { itemLimit } from "../../lineup/plate";
import { grossRatio, injectionReading } from "../../standards/practice";
import { answered, closing, trail } from "../columns/common";
import { measured, named } from "../columns/measuredColumns";
import {
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type Own,
  type RecordKind,
  type Row,
} from "../kind";
import { mostOf, sourceOf, sources, stricterOf, TO_TYPE } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Scheme = Panel["schemes"][number];

interface Point {
  readonly point: string;
  /** Whether the scheme stays still or trips. */
  readonly asks: "stays" | "trips";
  /** Whether what is left over of the through current is judged. */
  readonly spill?: true;
}
const THROUGH: Point = { point: "Through current", asks: "stays", spill: true };
const IN_ZONE: Point = { point: "In-zone current", asks: "trips" };

/** What each principle is tried with (common practice). */
const POINTS: Readonly<Record<Scheme["principle"], readonly Point[]>> = {
  differential: [THROUGH, IN_ZONE],
  "restricted earth fault": [THROUGH, IN_ZONE],
  directional: [
    { point: "Forward current", asks: "trips" },
    { point: "Reverse current", asks: "stays" },
  ],
  overcurrent: [{ point: "Above pick-up", asks: "trips" }],
};

const schemeOf = (row: Row, lineup: Lineup): Scheme | undefined =>
  panelOf(lineup, String(row.object))?.schemes.find(({ designation }) => designation === row.part);
const isSpill = (row: Row) => !isBlank(row.asksSpill);
const ownSpill: Own = stricterOf(
  "most",
  (row, lineup) => {
    const scheme = schemeOf(row, lineup);
    const given = isSpill(row) ? itemLimit(scheme, scheme?.spillPercent) : undefined;
    return given && { ...given, from: "project" };
  },
  mostOf({ name: "scheme spill %", of: isSpill }),
);
const ownReading = mostOf("injected current shown %");

const accepted: readonly Comparison[] = [
  { value: "error", limit: "errorMost", unit: "%", sense: "within", lenient: "errorWrong" },
  { value: "spillPercent", limit: "spillMost", unit: "%", sense: "most", excusable: true },
];

const state = (
  id: "stays" | "trips",
  header: string,
  words: readonly [string, ...string[]],
): Column =>
  answered(id, header, words, {
    width: 17,
    asked: `asks${id}`,
    needed: (row) => !isBlank(row[`asks${id}`]),
  });

/** One number over another in percent, less the whole where a difference is meant. */
const percent = (id: string, header: string, of: string, less: 0 | 1, help: string): Column => ({
  id,
  header,
  role: "computed",
  width: 9,
  unit: "%",
  format: "0.0",
  help,
  formula: (ref) =>
    `IF(AND(ISNUMBER(${ref(of)}),ISNUMBER(${ref("injected")}),N(${ref("injected")})>0),(${ref(of)}/${ref("injected")}-${less})*100,"")`,
  value: ({ injected, [of]: read }) =>
    typeof read === "number" && typeof injected === "number" && injected > 0
      ? (read / injected - less) * 100
      : null,
  working: (row) =>
    workedOut(row[id], `(${onPaper(row[of])} A ÷ ${onPaper(row.injected)} A − ${less}) × 100`, "%"),
});

const columns: readonly Column[] = [
  ...named("Scheme", 16),
  { id: "point", header: "Tried with", role: "key", width: 18 },
  { id: "asksstays", header: "Must stay", role: "given", width: 7 },
  { id: "askstrips", header: "Must trip", role: "given", width: 7 },
  { id: "asksSpill", header: "Spill judged", role: "given", width: 7 },
  measured("injected", "Set or load A", "A", {
    wave: "AC",
    help: "Primary current of the set, or of the load that serves.",
  }),
  measured("shown", "Shown A", "A", {
    help: "Primary current as relay and meter show it; the worst of the phases.",
  }),
  percent("error", "Shown off %", "shown", 1, "How far what is shown lies from what is injected."),
  {
    id: "errorMost",
    header: "Allowed ± %",
    role: "limit",
    width: 8,
    unit: "%",
    own: ownReading,
    formula: () => String(injectionReading.value),
    value: () => injectionReading.value,
  },
  {
    id: "errorWrong",
    header: "Wrong beyond ± %",
    role: "limit",
    width: 9,
    unit: "%",
    formula: () => String(grossRatio.value),
    value: () => grossRatio.value,
  },
  {
    id: "angle",
    header: "Angle °",
    role: "entry",
    width: 8,
    accepts: { type: "number", least: -360, most: 360 },
    need: "trail",
    help: "Of what is shown against the injected current.",
  },
  measured("spill", "Spill A", "A", {
    unless: "spillMost",
    help: "Differential or residual current that relay or ammeter shows, as primary current.",
  }),
  percent("spillPercent", "Spill %", "spill", 0, "Of the through current."),
  {
    id: "spillMost",
    header: "Maximum spill %",
    role: "limit",
    width: 9,
    unit: "%",
    own: ownSpill,
    help: "Where the lineup gives none, type the scheme's value here; n/a where no spill is judged.",
    value: (row) => (isSpill(row) ? (row.spillMost ?? null) : NOT_APPLICABLE),
  },
  answered("polarity", "Polarity end to end", ["As drawn", "Reversed"], { width: 12 }),
  state("stays", "Stays", ["Did not operate", "Operated"]),
  state("trips", "Trips through", ["Tripped the breaker", "Did not trip"]),
  sources((row, lineup) => [
    ["shown", sourceOf(ownReading(row, lineup) ?? injectionReading)],
    ["spill", isSpill(row) ? sourceOf(ownSpill(row, lineup)) || TO_TYPE : "not judged here"],
  ]),
  ...trail(),
];

/** Protection schemes proved from the primary side. */
export const stability: RecordKind<"stability"> = {
  id: "stability",
  alsoCalled: ["stability tests?"],
  step: "functions",
  sheet: "Stability",
  table: "GearStability",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation: object, schemes }) =>
      schemes.flatMap(({ designation, principle }) =>
        POINTS[principle].map(
          ({ point, asks, spill }): Row => ({
            object,
            part: designation,
            point,
            asksstays: asks === "stays" ? "Yes" : null,
            askstrips: asks === "trips" ? "Yes" : null,
            asksSpill: spill ? "Yes" : null,
          }),
        ),
      ),
    ),
  after: [{ kind: "currentTransformer" }, { kind: "protection" }],
  angle: { column: "angle", turned: ({ point }) => point === "Reverse current" },
  voidBy: voidBy(["Current transformer", "Relay or settings"], ["Wiring"]),
  accepted,
  enough: [],
};
