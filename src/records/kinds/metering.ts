import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { nearPoint } from "../../standards/nearPoint";
import { blank, closing, trail } from "../columns/common";
import { type Column, type Comparison, isBlank, type RecordKind, type Row } from "../kind";
import { sourceOf, sources } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { verdictBy } from "../verdict";

type Meter = Panel["meters"][number];

const meterOf = (row: Row, lineup: Lineup): Meter | undefined =>
  panelOf(lineup, String(row.object))?.meters.find(({ designation }) => designation === row.part);

const ownAccuracy = (row: Row, lineup: Lineup) => {
  const meter = meterOf(row, lineup);
  return meter && { from: "maker" as const, value: meter.accuracy, document: "the meter's class" };
};

const NOT_COMPUTED = "not computed";

const accepted: readonly Comparison[] = [
  { value: "error", limit: "errorMost", unit: "%", sense: "within" },
];
const enough: readonly Comparison[] = [
  { value: "offPoint", limit: "offPointMost", unit: "%", sense: "within" },
];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Meter", role: "key", width: 12 },
  { id: "point", header: "Point", role: "key", width: 8, help: "Percent of full scale." },
  { id: "quantity", header: "Quantity", role: "given", width: 16 },
  { id: "fullScale", header: "Full scale", role: "given", width: 9 },
  { id: "inUnit", header: "Unit", role: "given", width: 7 },
  { id: "pointPercent", header: "Point %", role: "given", width: 7, unit: "%" },
  {
    id: "reference",
    header: "Reference",
    role: "entry",
    width: 10,
    accepts: { type: "number" },
    need: "reading",
    help: "What the reference instrument says is applied, in the meter's unit and on its side of the transformers.",
  },
  {
    id: "shown",
    header: "Meter shows",
    role: "entry",
    width: 10,
    accepts: { type: "number" },
    need: "reading",
  },
  {
    id: "offPoint",
    header: "Off point %",
    role: "computed",
    width: 8,
    unit: "%",
    format: "0.0",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("reference")}),ISNUMBER(${ref("pointPercent")}),N(${ref("fullScale")})>0),${ref("reference")}/${ref("fullScale")}*100-${ref("pointPercent")},"")`,
    value: ({ reference, fullScale, pointPercent }) =>
      typeof reference === "number" &&
      typeof pointPercent === "number" &&
      typeof fullScale === "number" &&
      fullScale > 0
        ? (reference / fullScale) * 100 - pointPercent
        : null,
    working: ({ reference, fullScale, pointPercent, offPoint }) =>
      workedOut(
        offPoint,
        `${onPaper(reference)} ÷ ${onPaper(fullScale)} × 100 − ${onPaper(pointPercent)}`,
        "%",
      ),
  },
  {
    id: "offPointMost",
    header: "Near ± %",
    role: "limit",
    width: 7,
    unit: "%",
    formula: () => String(nearPoint.value),
    value: () => nearPoint.value,
  },
  {
    id: "error",
    header: "Error %",
    role: "computed",
    width: 8,
    unit: "%",
    format: "0.00",
    help: "Of full scale.",
    formula: (ref) =>
      `IF(OR(${blank(ref("reference"))},${blank(ref("shown"))}),"",IF(AND(ISNUMBER(${ref("reference")}),ISNUMBER(${ref("shown")}),N(${ref("fullScale")})>0),(${ref("shown")}-${ref("reference")})/${ref("fullScale")}*100,"${NOT_COMPUTED}"))`,
    value: ({ reference, shown, fullScale }) => {
      if (isBlank(reference) || isBlank(shown)) return null;
      return typeof reference === "number" &&
        typeof shown === "number" &&
        typeof fullScale === "number" &&
        fullScale > 0
        ? ((shown - reference) / fullScale) * 100
        : NOT_COMPUTED;
    },
    working: ({ reference, shown, fullScale, error }) =>
      workedOut(
        error,
        `(${onPaper(shown)} − ${onPaper(reference)}) ÷ ${onPaper(fullScale)} × 100`,
        "%",
      ),
  },
  {
    id: "errorMost",
    header: "Allowed ± %",
    role: "limit",
    width: 8,
    unit: "%",
    own: ownAccuracy,
    value: () => null,
  },
  sources((row, lineup) => [
    ["error", sourceOf(ownAccuracy(row, lineup)) || "none: the lineup lists no such meter"],
    ["point", sourceOf(nearPoint)],
  ]),
  ...trail(),
];

/** Meters and transducers, point by point. */
export const metering: RecordKind = {
  id: "metering",
  title: "Meters and transducers",
  sheet: "Metering",
  table: "GearMetering",
  purpose:
    "Each meter at each of its points: what is applied by a reference instrument, what the meter shows, and the error in percent of full scale.",
  cautions: [
    "Inject on the meter's side of test links only: never open a current transformer's secondary circuit under current, and never feed a voltage transformer from its secondary.",
    "Isolate and prove dead the circuits that are parted, under the site's permit system; close the links again and record it.",
    "Block trips and controls that the meter's outputs would start. Local code, the maker's instruction and licensed practice come first.",
  ],
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, meters }) =>
      meters.flatMap(({ designation: meter, quantity, fullScale, unit, points }) =>
        [...new Set(points)].map(
          (percent): Row => ({
            object: designation,
            part: meter,
            point: `${percent} %`,
            quantity,
            fullScale,
            inUnit: unit,
            pointPercent: percent,
          }),
        ),
      ),
    ),
  accepted,
  enough,
  plot: { value: "error", limit: "errorMost", unit: "%", log: false },
};
