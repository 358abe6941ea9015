import { poleSpread } from "../criteria/poleSpread";
import { timingVoltage } from "../criteria/timingVoltage";
import { timeSpread } from "../engineering/timeSpread";
import type { Lineup } from "../lineup/lineup";
import { type Breaker, plateLimit } from "../lineup/plate";
import { blank, closing, PHASES, trail } from "./columns";
import { type Column, type Comparison, isBlank, type RecordKind, type Row } from "./kind";
import { limitOf, sourceOf, sources } from "./limits";
import { verdictBy } from "./verdict";

const OPERATIONS = ["closing", "opening"] as const;
const NOT_COMPUTED = "not computed";

const isClosing = (row: Row) => row.operation === "closing";
const groupOf = (row: Row) => `${row.object}\u0000${row.part}`;

const plate =
  (pick: (breaker: Breaker, row: Row) => number | undefined) => (row: Row, lineup: Lineup) =>
    plateLimit(lineup, String(row.object), (breaker) => pick(breaker, row));
const windowOf = (breaker: Breaker, row: Row) =>
  isClosing(row) ? breaker.closingMs : breaker.openingMs;
const least = plate((breaker, row) => windowOf(breaker, row)?.least);
const most = plate((breaker, row) => windowOf(breaker, row)?.most);
const spread = plate(({ poleSpreadMs }) => poleSpreadMs);

const standardSpread = (row: Row, { ratings }: Lineup) =>
  poleSpread(isClosing(row) ? "closing" : "opening", ratings.frequencyHz);
const spreadOf = (operation: "closing" | "opening", { ratings }: Lineup) => {
  const found = poleSpread(operation, ratings.frequencyHz);
  return found.ok ? found.value.value : '""';
};

const accepted: readonly Comparison[] = [
  { value: "reading", limit: "most", unit: "ms", sense: "most" },
  { value: "reading", limit: "least", unit: "ms", sense: "least" },
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

const counter = (id: string, header: string): Column => ({
  id,
  header,
  role: "entry",
  width: 9,
  accepts: { type: "number", least: 0 },
  need: "trail",
  needed: (row) => row.pole === "L1",
  help: "Operation counter; once for an operation, beside its first pole.",
});

const windowSource = (limit: Column["own"], id: string, row: Row, lineup: Lineup) =>
  sourceOf(limit?.(row, lineup)) ||
  (isBlank(row[id])
    ? "none: give the maker's value"
    : "typed on this sheet: name the maker's document in the remarks");

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Part", role: "key", width: 19 },
  { id: "pole", header: "Pole", role: "key", width: 7 },
  { id: "operation", header: "Operation", role: "given", width: 9 },
  { id: "ratedV", header: "Rated control V", role: "given", width: 9, unit: "V" },
  counter("counterBefore", "Counter before"),
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
      `IF(OR(${blank(ref("controlV"))},${blank(ref("ratedV"))}),"",IF(AND(ISNUMBER(${ref("controlV")}),N(${ref("ratedV")})>0),(${ref("controlV")}/${ref("ratedV")}-1)*100,"${NOT_COMPUTED}"))`,
    value: ({ controlV, ratedV }) => {
      if (isBlank(controlV) || isBlank(ratedV)) return null;
      return typeof controlV === "number" && typeof ratedV === "number" && ratedV > 0
        ? (controlV / ratedV - 1) * 100
        : NOT_COMPUTED;
    },
  },
  {
    id: "controlTolerance",
    header: "Allowed ± %",
    role: "limit",
    width: 8,
    unit: "%",
    formula: () => String(timingVoltage.value),
    value: () => timingVoltage.value,
  },
  {
    id: "reading",
    header: "Operating ms",
    role: "entry",
    width: 10,
    unit: "ms",
    accepts: { type: "number", least: 0, most: 2000 },
    need: "reading",
    help: "From the coil's command to contact touch on closing, to contact parting on opening; all three poles of one operation.",
  },
  window("least", "Least ms", least),
  window("most", "Most ms", most),
  {
    id: "poleSpread",
    header: "Pole spread ms",
    role: "computed",
    width: 9,
    unit: "ms",
    format: "0.0##",
    help: "Slowest less fastest pole of the operation; worked out once all three are there.",
    // TIMESPREAD takes a range, and the poles of one operation need not stand together in a sorted table.
    formula: (ref) => {
      const times = `${ref.all("reading")}/((${ref.all("object")}=${ref("object")})*(${ref.all("part")}=${ref("part")})*ISNUMBER(${ref.all("reading")})*(${ref.all("reading")}>0))`;
      const nth = (way: 14 | 15, k: number) => `_xlfn.AGGREGATE(${way},6,${times},${k})`;
      return `IF(N(${ref("reading")})>0,IFERROR(IF(${nth(15, 3)}>0,${nth(14, 1)}-${nth(15, 1)},""),""),"")`;
    },
    survey: spreadByOperation,
    value: (row, _lineup, spreads) =>
      typeof row.reading === "number" && row.reading > 0
        ? (spreads.get(groupOf(row)) ?? null)
        : null,
  },
  {
    id: "spreadMost",
    header: "Most spread ms",
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
    ["least", windowSource(least, "least", row, lineup)],
    ["most", windowSource(most, "most", row, lineup)],
    ["spread", sourceOf(spread(row, lineup) ?? standardSpread(row, lineup))],
    ["control V", sourceOf(timingVoltage)],
  ]),
  counter("counterAfter", "Counter after"),
  ...trail(),
];

/** Operating times of each breaker pole on closing and opening, and how far the poles lie apart. */
export const timing: RecordKind = {
  id: "timing",
  title: "Operating times of breakers",
  sheet: "Timing",
  table: "GearTiming",
  purpose:
    "Closing and opening time of each pole at rated control voltage against the maker's window, and the time between the poles; the operation counter before and after.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; the breaker is in its test position or out of its panel, with every other supply of it locked off.",
    "A charged spring moves without warning: keep hands and tools out, and discharge it (close, open) before work on the mechanism.",
    "Do not operate the breaker more often or faster than its maker allows; let coils cool.",
    "Block inter-tripping and whatever else its auxiliary contacts would start. The maker's instruction and licensed practice come first.",
  ],
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, breaker }) =>
      breaker
        ? OPERATIONS.flatMap((operation) =>
            PHASES.map(
              (pole): Row => ({
                object: designation,
                part: `Breaker ${breaker.designation} ${operation}`,
                pole,
                operation,
                ratedV: lineup.ratings.controlV ?? null,
              }),
            ),
          )
        : [],
    ),
  accepted,
  enough,
  plot: { value: "reading", limit: "most", unit: "ms", log: false },
};

/** Time between the poles of each operation that has all three of them. */
function spreadByOperation(rows: readonly Row[]): ReadonlyMap<string, number> {
  const times = new Map<string, number[]>();
  for (const row of rows) {
    if (typeof row.reading !== "number" || row.reading <= 0) continue;
    const group = times.get(groupOf(row));
    if (group) group.push(row.reading);
    else times.set(groupOf(row), [row.reading]);
  }
  return new Map(
    [...times].flatMap(([group, found]): [string, number][] => {
      const between = timeSpread(found);
      return found.length >= PHASES.length && between.ok ? [[group, between.value]] : [];
    }),
  );
}
