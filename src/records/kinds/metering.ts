import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { nearPoint } from "../../standards/practice";
import { blank, closing, NOT_COMPUTED, numberIn, trail } from "../columns/common";
import { type Column, type Comparison, isBlank, type RecordKind, type Row } from "../kind";
import { mostOf, ownOf, sourceOf, sources, stricterOf } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { exactlyIn } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Meter = Panel["meters"][number];

const meterOf = (row: Row, lineup: Lineup): Meter | undefined =>
  panelOf(lineup, String(row.object))?.meters.find(({ designation }) => designation === row.part);

const ownAccuracy = stricterOf(
  "most",
  (row, lineup) => {
    const meter = meterOf(row, lineup);
    return meter && { from: "maker", value: meter.accuracy, document: "the meter's class" };
  },
  mostOf("meter error %"),
);
const ownNear = ownOf("meter point %");

const READING = "reading";
const FULL_SCALE = "full scale";
/** A class as fine as this is one of the reading, as digital meters have it; a coarser one of full scale (IEC, memory). */
const FINE = 0.5;

/** What a meter's class is a percentage of: as the lineup says, else by what is usual of its class. */
const classOf = ({ accuracy, accuracyOf }: Meter, { basis }: Lineup): string =>
  accuracyOf ?? (basis === "IEC" && accuracy <= FINE ? READING : FULL_SCALE);

/** What the error is a percentage of. */
const whole = ({ of, reference, fullScale }: Row) =>
  String(of ?? "").toLowerCase() === READING ? reference : fullScale;

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
  { id: "of", header: "Class is of", role: "given", width: 10 },
  { id: "inUnit", header: "Unit", role: "given", width: 7 },
  { id: "pointPercent", header: "Point %", role: "given", width: 7, unit: "%" },
  {
    id: "reference",
    header: "Reference",
    role: "entry",
    width: 10,
    accepts: { type: "number" },
    unitIn: "inUnit",
    need: "reading",
    help: "What the reference instrument says is applied, in the meter's unit and on its side of the transformers.",
  },
  {
    id: "shown",
    header: "Meter shows",
    role: "entry",
    width: 10,
    accepts: { type: "number" },
    unitIn: "inUnit",
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
      `IF(AND(NOT(${blank(ref("reference"))}),ISNUMBER(${ref("pointPercent")}),N(${ref("fullScale")})>0),IFERROR(${numberIn(ref("reference"), ref("inUnit"))}/${ref("fullScale")}*100-${ref("pointPercent")},""),"")`,
    value: ({ reference, inUnit, fullScale, pointPercent }) => {
      const applied = exactlyIn(reference, inUnit);
      return applied !== undefined &&
        typeof pointPercent === "number" &&
        typeof fullScale === "number" &&
        fullScale > 0
        ? (applied / fullScale) * 100 - pointPercent
        : null;
    },
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
    own: ownNear,
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
    help: "Of full scale or of the reading, as the meter's class is.",
    formula: (ref) => {
      const [applied, shown] = ["reference", "shown"].map((id) => numberIn(ref(id), ref("inUnit")));
      const of = `IF(${ref("of")}="${READING}",${applied},${ref("fullScale")})`;
      return `IF(OR(${blank(ref("reference"))},${blank(ref("shown"))}),"",IFERROR(IF(N(${of})>0,(${shown}-${applied})/${of}*100,"${NOT_COMPUTED}"),"${NOT_COMPUTED}"))`;
    },
    value: (row) => {
      if (isBlank(row.reference) || isBlank(row.shown)) return null;
      const [reference, shown, of] = [row.reference, row.shown, whole(row)].map((cell) =>
        exactlyIn(cell, row.inUnit),
      );
      return reference !== undefined && shown !== undefined && of !== undefined && of > 0
        ? ((shown - reference) / of) * 100
        : NOT_COMPUTED;
    },
    working: (row) =>
      workedOut(
        row.error,
        `(${onPaper(row.shown)} − ${onPaper(row.reference)}) ÷ ${onPaper(whole(row))} × 100`,
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
    ["point", sourceOf(ownNear(row, lineup) ?? nearPoint)],
  ]),
  ...trail(),
];

/** Meters and transducers, point by point. */
export const metering: RecordKind<"metering"> = {
  id: "metering",
  alsoCalled: ["meters?"],
  step: "devices",
  sheet: "Metering",
  table: "GearMetering",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, meters }) =>
      meters.flatMap((one) =>
        [...new Set(one.points)].map(
          (percent): Row => ({
            object: designation,
            part: one.designation,
            point: `${percent} %`,
            quantity: one.quantity,
            fullScale: one.fullScale,
            of: classOf(one, lineup),
            inUnit: one.unit,
            pointPercent: percent,
          }),
        ),
      ),
    ),
  voidBy: voidBy(["Meter"], ["Current transformer", "Voltage transformer"]),
  accepted,
  enough,
  plot: { value: "error", limit: "errorMost", unit: "%", log: false },
};
