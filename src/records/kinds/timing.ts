import type { Lineup } from "../../lineup/lineup";
import { type Breaker, deviceName, plateLimit } from "../../lineup/plate";
import { poleSpread } from "../../standards/poleSpread";
import { timingVoltage } from "../../standards/practice";
import { blank, closing, NOT_COMPUTED, numberIn, PHASES, trail } from "../columns/common";
import { figure } from "../figure";
import {
  type Column,
  type Comparison,
  isBlank,
  type Own,
  type RecordKind,
  type Row,
} from "../kind";
import {
  limitOf,
  mostOf,
  ownOf,
  sourceOf,
  sources,
  stricterOf,
  strictestOf,
  TO_TYPE,
} from "../limits";
import { exactly } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const OPERATIONS = ["closing", "opening"] as const;
const isClosing = (row: Row) => row.operation === "closing";
const plate =
  (pick: (breaker: Breaker, row: Row) => number | undefined) => (row: Row, lineup: Lineup) =>
    plateLimit(lineup, String(row.object), (breaker) => pick(breaker, row));
const windowOf = (breaker: Breaker, row: Row) =>
  isClosing(row) ? breaker.closingMs : breaker.openingMs;
const timeLimit = (end: "least" | "most"): Own =>
  stricterOf(
    end,
    plate((breaker, row) => windowOf(breaker, row)?.[end]),
    strictestOf(
      end,
      { name: `closing time ${end} ms`, of: isClosing },
      { name: `opening time ${end} ms`, of: (row) => !isClosing(row) },
    ),
  );
const least = timeLimit("least");
const most = timeLimit("most");
const spread = stricterOf(
  "most",
  plate(
    ({ poleSpreadMs, closingSpreadMs, openingSpreadMs }, row) =>
      (isClosing(row) ? closingSpreadMs : openingSpreadMs) ?? poleSpreadMs,
  ),
  mostOf("pole spread ms"),
);

const ownVoltage = ownOf("control voltage while timing %");

const standardSpread = (row: Row, { ratings }: Lineup) =>
  poleSpread(isClosing(row) ? "closing" : "opening", ratings.frequencyHz);
const spreadOf = (operation: "closing" | "opening", { ratings }: Lineup) => {
  const found = poleSpread(operation, ratings.frequencyHz);
  return found.ok ? found.value.value : '""';
};

const accepted: readonly Comparison[] = [
  { value: "slowest", limit: "most", unit: "ms", sense: "most" },
  { value: "fastest", limit: "least", unit: "ms", sense: "least" },
  { value: "poleSpread", limit: "spreadMost", unit: "ms", sense: "most" },
];
const enough: readonly Comparison[] = [
  { value: "controlOff", limit: "controlTolerance", unit: "%", sense: "within" },
];

const window = (id: string, header: string, own: NonNullable<Column["own"]>): Column => ({
  id,
  header,
  role: "limit",
  width: 8,
  unit: "ms",
  own,
  help: "Where the lineup gives none, type the maker's value here.",
  value: (row) => row[id] ?? null,
});

const POLES = PHASES.map((phase) => phase.toLowerCase());

const time = (id: string, header: string): Column => ({
  id,
  header: `${header} ms`,
  role: "entry",
  width: 8,
  unit: "ms",
  accepts: { type: "number", least: 0, most: 2000 },
  need: "reading",
  help: "From the coil's command to contact touch on closing, to contact parting on opening; all three poles of one operation.",
});

/** The times of the three poles; undefined until all three are there, and more than nothing. */
const timesOf = (row: Row): number[] | undefined => {
  const times = POLES.map((id) => exactly(row[id], "ms"));
  return times.every((one): one is number => one !== undefined && one > 0) ? times : undefined;
};

/** A column worked out from the times of all three poles. */
const ofPoles = (
  id: string,
  header: string,
  formula: (poles: string) => string,
  value: (times: readonly number[]) => number,
  working: (row: Row, poles: string) => string,
): Column => ({
  id,
  header,
  role: "computed",
  width: 9,
  unit: "ms",
  format: "0.0##",
  help: "Worked out once all three poles are there.",
  formula: (ref) => {
    const poles = POLES.map(ref);
    const times = poles.map((pole) => numberIn(pole, '"ms"')).join(",");
    return `IF(OR(${poles.map(blank).join(",")}),"",IFERROR(IF(MIN(${times})>0,${formula(times)},""),""))`;
  },
  value: (row) => {
    const times = timesOf(row);
    return times ? value(times) : null;
  },
  working: (row, { phases }) =>
    timesOf(row)
      ? working(row, POLES.map((pole, at) => `${phases[at]} ${figure(row[pole])}`).join(", "))
      : "",
});

const windowSource = (limit: Column["own"], row: Row, lineup: Lineup) =>
  sourceOf(limit?.(row, lineup)) || TO_TYPE;

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Part", role: "key", width: 19 },
  { id: "operation", header: "Operation", role: "given", width: 9 },
  { id: "ratedV", header: "Rated control V", role: "given", width: 9, unit: "V" },
  {
    id: "controlV",
    header: "Control V",
    role: "entry",
    width: 9,
    unit: "V",
    accepts: { type: "number", least: 0, most: 500 },
    need: "condition",
    help: "At the coil's terminals while it draws its current.",
  },
  {
    id: "controlOff",
    header: "Control V off %",
    role: "computed",
    width: 9,
    unit: "%",
    format: "0.0",
    formula: (ref) =>
      `IF(OR(${blank(ref("controlV"))},${blank(ref("ratedV"))}),"",IFERROR(IF(N(${ref("ratedV")})>0,(${numberIn(ref("controlV"), '"V"')}/${ref("ratedV")}-1)*100,"${NOT_COMPUTED}"),"${NOT_COMPUTED}"))`,
    value: ({ controlV, ratedV }) => {
      if (isBlank(controlV) || isBlank(ratedV)) return null;
      const volts = exactly(controlV, "V");
      return volts !== undefined && typeof ratedV === "number" && ratedV > 0
        ? (volts / ratedV - 1) * 100
        : NOT_COMPUTED;
    },
    working: ({ controlV, ratedV, controlOff }) =>
      typeof controlOff === "number"
        ? `(${figure(controlV)} V ÷ ${figure(ratedV)} V − 1) × 100 = ${figure(controlOff)} %`
        : "",
  },
  {
    id: "controlTolerance",
    header: "Allowed ± %",
    role: "limit",
    width: 8,
    unit: "%",
    own: ownVoltage,
    formula: () => String(timingVoltage.value),
    value: () => timingVoltage.value,
  },
  time("l1", "L1"),
  time("l2", "L2"),
  time("l3", "L3"),
  ofPoles(
    "fastest",
    "Fastest ms",
    (poles) => `MIN(${poles})`,
    (times) => Math.min(...times),
    (row, poles) => `least of ${poles} = ${figure(row.fastest)} ms`,
  ),
  ofPoles(
    "slowest",
    "Slowest ms",
    (poles) => `MAX(${poles})`,
    (times) => Math.max(...times),
    (row, poles) => `most of ${poles} = ${figure(row.slowest)} ms`,
  ),
  window("least", "Minimum ms", least),
  window("most", "Maximum ms", most),
  ofPoles(
    "poleSpread",
    "Pole spread ms",
    (poles) => `MAX(${poles})-MIN(${poles})`,
    (times) => Math.max(...times) - Math.min(...times),
    (row) =>
      `slowest ${figure(row.slowest)} − fastest ${figure(row.fastest)} = ${figure(row.poleSpread)} ms`,
  ),
  {
    id: "spreadMost",
    header: "Maximum spread ms",
    role: "limit",
    width: 9,
    unit: "ms",
    format: "0.0##",
    own: spread,
    formula: (ref, lineup) =>
      `IF(${ref("operation")}="closing",${spreadOf("closing", lineup)},${spreadOf("opening", lineup)})`,
    value: (row, lineup) => limitOf(standardSpread(row, lineup)),
  },
  sources((row, lineup) => [
    ["least", windowSource(least, row, lineup)],
    ["most", windowSource(most, row, lineup)],
    ["spread", sourceOf(spread(row, lineup) ?? standardSpread(row, lineup))],
    ["control V", sourceOf(ownVoltage(row, lineup) ?? timingVoltage)],
  ]),
  ...trail(),
];

/** Control voltage of the coil that is timed, V. */
const controlOf = (
  { controlV, openingControlV }: Breaker,
  operation: (typeof OPERATIONS)[number],
  { ratings }: Lineup,
) => (operation === "opening" ? openingControlV : undefined) ?? controlV ?? ratings.controlV;

/** Operating times of each breaker pole on closing and opening, and how far the poles lie apart. */
export const timing: RecordKind<"timing"> = {
  id: "timing",
  alsoCalled: ["operating times?", "closing times?", "opening times?", "breaker times?"],
  spread: { column: "poleSpread", unit: "ms", step: 0.1 },
  step: "devices",
  sheet: "Timing",
  table: "GearTiming",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, breaker }) =>
      // Of a contactor's poles no standard of breakers says how far apart they may lie.
      breaker && !(breaker.device && breaker.poleSpreadMs === undefined)
        ? OPERATIONS.map(
            (operation): Row => ({
              object: designation,
              part: `${deviceName(breaker)} ${operation}`,
              operation,
              ratedV: controlOf(breaker, operation, lineup) ?? null,
            }),
          )
        : [],
    ),
  voidBy: voidBy(["Breaker mechanism", "Breaker pole"]),
  accepted,
  enough,
  parts: {
    title: ({ object, part }) => `${object} ${part}`,
    values: POLES,
    limits: ["least", "most"],
    upward: "Operating time",
    unit: "ms",
  },
  plot: { value: "poleSpread", limit: "spreadMost", unit: "ms", log: false },
};
