import type { Breaker } from "../../lineup/plate";
import { deviceName, plateLimit } from "../../lineup/plate";
import { interrupterOver, interrupterSeconds } from "../../standards/practice";
import { answered, blank, closing, PHASES, trail } from "../columns/common";
import { givenLimit } from "../columns/measuredColumns";
import {
  appliedColumn,
  currentColumn,
  discharge,
  durationColumn,
} from "../columns/withstandColumns";
import { figure } from "../figure";
import { type Column, type Comparison, isBlank, type RecordKind, type Row } from "../kind";
import { ownOf, plateOr, sourceOf, sources, TO_TYPE } from "../limits";
import { secondsHeld } from "../minutes";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const AC = "AC";
const DC = "DC";
const HALF_WAVE = "DC, half-wave";

const level = (name: string, pick: (breaker: Breaker) => number | undefined) =>
  plateOr((row, lineup) => plateLimit(lineup, String(row.object), pick), ownOf(name));
const acLevel = level("interrupter AC kV", ({ interrupter }) => interrupter?.ackV);
const dcLevel = level("interrupter DC kV", ({ interrupter }) => interrupter?.dckV);
const ownSeconds = ownOf("interrupter s");

const accepted: readonly Comparison[] = [];
const enough: readonly Comparison[] = [
  { value: "applied", limit: "required", unit: "kV", sense: "least" },
  { value: "applied", limit: "mostkV", unit: "kV", sense: "most" },
  { value: "duration", limit: "durationLeast", unit: "s", sense: "least" },
];

const isWave = ({ wave }: Row, word: string) =>
  String(wave ?? "").toLowerCase() === word.toLowerCase();

/** The maker's level for what was applied; none for DC that he does not allow, or whose polarity is not told. */
const required = (row: Row) => {
  if (isWave(row, AC)) return row.acLevel ?? null;
  return isWave(row, DC) && !isBlank(row.polarity) ? (row.dcLevel ?? null) : null;
};

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Breaker", role: "key", width: 16 },
  { id: "pole", header: "Pole", role: "key", width: 7 },
  {
    id: "distance",
    header: "Keep away m",
    role: "given",
    width: 9,
    unit: "m",
    help: "From X-rays, as the maker says.",
  },
  {
    id: "wave",
    header: "Test with",
    role: "entry",
    width: 13,
    accepts: { type: "list", values: [AC, DC, HALF_WAVE] },
    need: "condition",
    help: "DC is smoothed and only where the maker allows it. A half-wave rectified set has peaks far above what its meter shows: it proves nothing and gives X-rays.",
  },
  {
    id: "polarity",
    header: "DC polarity",
    role: "entry",
    width: 10,
    accepts: { type: "list", values: ["Positive", "Negative", "Both"] },
    need: "condition",
    needed: (row) => !isBlank(row.wave) && !isWave(row, AC),
    help: "Of the terminal that was fed. A breakdown with one polarity alone is tried with the other and with AC before an interrupter is given up.",
  },
  givenLimit("acLevel", "Maker's AC kV", "kV", acLevel),
  givenLimit("dcLevel", "Maker's DC kV", "kV", dcLevel, {
    help: "Blank where the maker allows no DC.",
  }),
  {
    id: "required",
    header: "Required kV",
    role: "computed",
    side: "least",
    width: 9,
    unit: "kV",
    format: "0.0##",
    formula: (ref) =>
      `IF(${ref("wave")}="${AC}",IF(${blank(ref("acLevel"))},"",${ref("acLevel")}),IF(AND(${ref("wave")}="${DC}",NOT(${blank(ref("polarity"))}),NOT(${blank(ref("dcLevel"))})),${ref("dcLevel")},""))`,
    value: required,
  },
  {
    id: "mostkV",
    header: "At most kV",
    role: "computed",
    width: 9,
    unit: "kV",
    format: "0.0##",
    help: "Above it the maker is asked before anyone signs.",
    formula: (ref) =>
      `IF(ISNUMBER(${ref("required")}),${ref("required")}*${interrupterOver.value},"")`,
    value: (row) =>
      typeof row.required === "number" ? row.required * interrupterOver.value : null,
    working: (row) =>
      typeof row.mostkV === "number"
        ? `${figure(row.required)} kV × ${interrupterOver.value} = ${figure(row.mostkV)} kV`
        : "",
  },
  appliedColumn({ wave: "any", help: "r.m.s. for AC; across the open contacts of one pole." }),
  durationColumn(3600),
  {
    id: "durationLeast",
    header: "Required s",
    role: "limit",
    width: 9,
    unit: "s",
    own: ownSeconds,
    formula: () => String(interrupterSeconds.value),
    value: () => interrupterSeconds.value,
  },
  currentColumn("Recorded, not judged: the shield and the supports carry more of it than the gap."),
  answered("gap", "Contact gap", ["In full", "Reduced"], {
    width: 10,
    help: "Breaker open to its full stroke, as its indicator and the maker's drawing have it.",
  }),
  discharge,
  sources((row, lineup) => [
    ["AC", sourceOf(acLevel(row, lineup)) || TO_TYPE],
    ["DC", sourceOf(dcLevel(row, lineup)) || "none given: DC is not allowed"],
    ["at most", sourceOf(interrupterOver)],
    ["duration", sourceOf(ownSeconds(row, lineup) ?? interrupterSeconds)],
  ]),
  ...trail(),
];

/** Vacuum interrupters: voltage across the open contacts of each pole. */
export const interrupter: RecordKind<"interrupter"> = {
  id: "interrupter",
  alsoCalled: ["vacuum integrity", "vacuum bottles?", "vi integrity"],
  step: "devices",
  onRequest: true,
  sheet: "Interrupters",
  table: "GearInterrupter",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, breaker }): Row[] =>
      breaker?.medium === "vacuum"
        ? PHASES.map((pole) => ({
            object: designation,
            part: deviceName(breaker),
            pole,
            distance: breaker.interrupter?.distanceM ?? null,
          }))
        : [],
    ),
  voidBy: voidBy(["Breaker pole"]),
  minutes: ({ duration }) => secondsHeld(duration),
  accepted,
  enough,
  plot: { value: "applied", limit: "required", unit: "kV", log: false },
};
