import { type Curve, curves } from "../../engineering/curves";
import { curveTime } from "../../engineering/curveTime";
import type { Panel } from "../../lineup/lineup";
import { sourceText } from "../../standards/criterion";
import { curveSource } from "../../standards/curveSource";
import { answered, blank, closing, gear, NOT_COMPUTED, numberIn, trail } from "../columns/common";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  type RecordKind,
  type Row,
} from "../kind";
import { mostOf, sourceOf, sources } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { exactlyIn } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";
import { changedElement, testedElement } from "./settings";

const DEFINITE = "definite";

const isDefinite = (row: Row) => String(row.curve).toLowerCase() === DEFINITE;
const isSlope = (row: Row) => typeof row.slope === "number";
const isReset = (row: Row) => !isBlank(row.resetLeast) || !isBlank(row.resetMost);
const isTime = (row: Row) => !isBlank(row.multiple);

const ownPercent = mostOf(
  { name: "protection pick-up tolerance %", of: (row) => !isTime(row) && !isReset(row) },
  { name: "protection time tolerance %", of: isTime },
);
const ownSeconds = mostOf({ name: "protection time tolerance s", of: isTime });

/** Elements that operate below their setting (ANSI device numbers): undervoltage, undercurrent, underfrequency. */
const UNDER = /^(?:27|37|80|81[UL])/i;
/** Elements whose direction is tried. */
const DIRECTIONAL = /^(?:21|32|40|67)/;

/** The curve's time, s; nothing where the curve does not hold. */
const expectedTime = (row: Row): CellValue => {
  const curve = Object.keys(curves).find(
    (name) => name.toLowerCase() === String(row.curve).toLowerCase(),
  );
  if (!curve || typeof row.multiple !== "number" || typeof row.setting !== "number") return null;
  const found = curveTime(curve as Curve, row.multiple, row.setting);
  return found.ok ? found.value : null;
};

const numeric = (cell: CellValue | undefined) => (typeof cell === "number" ? cell : 0);

const accepted: readonly Comparison[] = [
  { value: "error", limit: "errorMost", unit: "%", sense: "within", when: "error" },
  { value: "late", limit: "toleranceS", unit: "s", sense: "within", when: "late" },
  { value: "resetRatio", limit: "resetLeast", unit: "%", sense: "least", when: "resetLeast" },
  { value: "resetRatio", limit: "resetMost", unit: "%", sense: "most", when: "resetMost" },
  ...["Pickup", "Setting"].map(
    (what): Comparison => ({
      value: `asLeft${what}`,
      limit: what.toLowerCase(),
      sense: "equal",
      when: `asLeft${what}`,
    }),
  ),
];

const asLeft = (id: string, header: string, help: string): Column => ({
  id,
  header,
  role: "entry",
  width: 9,
  accepts: { type: "number", least: 0, most: 100000 },
  help,
});

/** Whether the settings order that the relay was left to is the one that the lineup names. */
const isSameOrder = ({ asLeftOrder, order }: Row) =>
  String(order ?? "")
    .toLowerCase()
    .includes(String(asLeftOrder).trim().toLowerCase());
const SAME_ORDER = "As approved";
const OTHER_ORDER = "compare the two";

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Relay element", role: "key", width: 14 },
  { id: "point", header: "Point", role: "key", width: 12 },
  { id: "curve", header: "Curve", role: "given", width: 14 },
  { id: "pickup", header: "Pick-up set", role: "given", width: 8 },
  { id: "pickupUnit", header: "Pick-up unit", role: "given", width: 8 },
  {
    id: "setting",
    header: "Time setting",
    role: "given",
    width: 8,
    help: "Multiplier or dial; for a definite time, the delay in s.",
  },
  { id: "multiple", header: "Multiple", role: "given", width: 8 },
  { id: "slope", header: "Slope %", role: "given", width: 7, unit: "%" },
  { id: "order", header: "Settings order", role: "given", width: 22 },
  { id: "directional", header: "Directional", role: "given", width: 9 },
  {
    id: "restraint",
    header: "Restraint",
    role: "entry",
    width: 9,
    accepts: { type: "number", least: 0, most: 100000 },
    need: "condition",
    needed: isSlope,
    help: "Restraining current of a point on the slope, in the unit of the pick-up.",
  },
  {
    id: "inject",
    header: "Inject",
    role: "computed",
    width: 8,
    format: "0.00#",
    help: "In the unit of the pick-up.",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("multiple")}),ISNUMBER(${ref("pickup")})),${ref("multiple")}*${ref("pickup")},"")`,
    value: ({ multiple, pickup }) =>
      typeof multiple === "number" && typeof pickup === "number" ? multiple * pickup : null,
    working: ({ multiple, pickup, pickupUnit, inject }) =>
      workedOut(
        inject,
        `${onPaper(multiple)} × ${onPaper(pickup)} ${pickupUnit}`,
        String(pickupUnit ?? ""),
      ),
  },
  {
    id: "expected",
    header: "Expected",
    role: "computed",
    width: 9,
    format: "0.000",
    help: "Pick-up as set, or operating time in s.",
    formula: (ref) => {
      const timed = `IF(${ref("curve")}="${DEFINITE}",${ref("setting")},IFERROR(${gear("CURVETIME", ref("curve"), ref("multiple"), ref("setting"))},""))`;
      const onSlope = `IF(ISNUMBER(${ref("restraint")}),MAX(N(${ref("pickup")}),${ref("slope")}/100*${ref("restraint")}),"")`;
      const resets = `OR(TRIM(${ref("resetLeast")})<>"",TRIM(${ref("resetMost")})<>"")`;
      return `IF(ISNUMBER(${ref("slope")}),${onSlope},IF(${resets},"",IF(${blank(ref("multiple"))},${ref("pickup")},${timed})))`;
    },
    value: (row) => {
      if (isSlope(row))
        return typeof row.restraint === "number"
          ? Math.max(numeric(row.pickup), (numeric(row.slope) / 100) * row.restraint)
          : null;
      if (isReset(row)) return null;
      if (!isTime(row)) return row.pickup ?? 0;
      return isDefinite(row) ? (row.setting ?? 0) : expectedTime(row);
    },
    working: (row) => {
      if (isSlope(row))
        return workedOut(
          row.expected,
          `greater of ${onPaper(row.pickup)} and ${onPaper(row.slope)} % × ${onPaper(row.restraint)}`,
          String(row.pickupUnit ?? ""),
        );
      if (!isTime(row)) return `pick-up as set: ${onPaper(row.expected)} ${row.pickupUnit ?? ""}`;
      return isDefinite(row)
        ? `definite time: ${onPaper(row.expected)} s`
        : workedOut(
            row.expected,
            `${row.curve} at ${onPaper(row.multiple)} times pick-up, setting ${onPaper(row.setting)}`,
            "s",
          );
    },
  },
  { id: "inUnit", header: "Unit", role: "given", width: 6 },
  {
    id: "tolerancePercent",
    header: "Tolerance %",
    role: "limit",
    width: 8,
    unit: "%",
    own: ownPercent,
    value: (row) => row.tolerancePercent ?? null,
  },
  {
    id: "toleranceS",
    header: "Tolerance s",
    role: "limit",
    width: 8,
    unit: "s",
    own: ownSeconds,
    value: (row) => row.toleranceS ?? null,
  },
  {
    id: "reading",
    header: "Measured",
    role: "entry",
    width: 9,
    unitIn: "inUnit",
    accepts: { type: "number", least: 0, most: 100000 },
    need: "reading",
    above: { value: 0, except: { column: "inUnit", words: ["°"] } },
    help: "In the unit that stands in its row: the pick-up, or the time from injection to the trip contact.",
  },
  {
    id: "error",
    header: "Error %",
    role: "computed",
    width: 8,
    unit: "%",
    format: "0.00",
    help: "Blank where nothing is expected, as of an instantaneous trip: that is judged by the tolerance in s.",
    formula: (ref) =>
      `IF(OR(${blank(ref("reading"))},NOT(N(${ref("expected")})>0)),"",IFERROR((${numberIn(ref("reading"), ref("inUnit"))}-${ref("expected")})/${ref("expected")}*100,"${NOT_COMPUTED}"))`,
    value: ({ reading, inUnit, expected }) => {
      if (isBlank(reading) || !(numeric(expected) > 0)) return null;
      const read = exactlyIn(reading, inUnit);
      return read === undefined
        ? NOT_COMPUTED
        : ((read - numeric(expected)) / numeric(expected)) * 100;
    },
    working: ({ reading, expected, inUnit, error }) =>
      workedOut(
        error,
        `(${onPaper(reading)} − ${onPaper(expected)}) ${inUnit} ÷ ${onPaper(expected)} ${inUnit} × 100`,
        "%",
      ),
  },
  {
    id: "errorMost",
    header: "Allowed ± %",
    role: "limit",
    width: 8,
    unit: "%",
    format: "0.00",
    help: "The greater of the tolerance in % and, for a time, the one in s.",
    formula: (ref) =>
      `IF(AND(N(${ref("expected")})>0,ISNUMBER(${ref("tolerancePercent")})),MAX(${ref("tolerancePercent")},N(${ref("toleranceS")})/${ref("expected")}*100),"")`,
    value: ({ expected, tolerancePercent, toleranceS }) =>
      numeric(expected) > 0 && typeof tolerancePercent === "number"
        ? Math.max(tolerancePercent, (numeric(toleranceS) / numeric(expected)) * 100)
        : null,
    working: ({ expected, tolerancePercent, toleranceS, errorMost }) =>
      typeof toleranceS === "number"
        ? workedOut(
            errorMost,
            `greater of ${onPaper(tolerancePercent)} % and ${onPaper(toleranceS)} s ÷ ${onPaper(expected)} s × 100`,
            "%",
          )
        : "",
  },
  {
    id: "late",
    header: "Late s",
    role: "computed",
    width: 8,
    unit: "s",
    format: "0.000",
    help: "Operating time where none is set.",
    formula: (ref) =>
      `IF(AND(NOT(${blank(ref("multiple"))}),ISNUMBER(${ref("expected")}),N(${ref("expected")})=0,ISNUMBER(${ref("reading")})),${ref("reading")},"")`,
    value: (row) =>
      isTime(row) && row.expected === 0 && typeof row.reading === "number" ? row.reading : null,
    working: ({ late }) => workedOut(late, `${onPaper(late)} s − 0 s`, "s"),
  },
  {
    id: "resetRatio",
    header: "Reset ratio %",
    role: "computed",
    width: 8,
    unit: "%",
    format: "0.0",
    formula: (ref) =>
      `IF(AND(OR(TRIM(${ref("resetLeast")})<>"",TRIM(${ref("resetMost")})<>""),ISNUMBER(${ref("reading")}),N(${ref("pickup")})>0),${ref("reading")}/${ref("pickup")}*100,"")`,
    value: (row) =>
      isReset(row) && typeof row.reading === "number" && numeric(row.pickup) > 0
        ? (row.reading / numeric(row.pickup)) * 100
        : null,
    working: ({ reading, pickup, pickupUnit, resetRatio }) =>
      workedOut(
        resetRatio,
        `${onPaper(reading)} ${pickupUnit ?? ""} ÷ ${onPaper(pickup)} ${pickupUnit ?? ""} × 100`,
        "%",
      ),
  },
  {
    id: "resetLeast",
    header: "Minimum reset %",
    role: "limit",
    width: 8,
    unit: "%",
    value: (row) => row.resetLeast ?? null,
  },
  {
    id: "resetMost",
    header: "Maximum reset %",
    role: "limit",
    width: 8,
    unit: "%",
    value: (row) => row.resetMost ?? null,
  },
  answered("direction", "Direction", ["As set", "Not as set"], {
    asked: "directional",
    needed: ({ directional }) => !isBlank(directional),
    help: "Of a directional element: it operates one way and not the other, as set.",
  }),
  asLeft("asFoundPickup", "As found: pick-up", "What the relay was set to before."),
  asLeft("asFoundSetting", "As found: time setting", "What the relay was set to before."),
  asLeft(
    "asLeftPickup",
    "As left: pick-up",
    "Read back from the relay after the test; it has to be the pick-up set.",
  ),
  asLeft(
    "asLeftSetting",
    "As left: time setting",
    "Read back from the relay after the test; it has to be the time setting.",
  ),
  {
    id: "asLeftOrder",
    header: "As left: settings order",
    role: "entry",
    width: 16,
    accepts: { type: "text" },
    help: "Settings order and revision that the relay was left to, as on its sheet: SO-7 rev 2.",
  },
  {
    id: "orderAgrees",
    header: "Order agrees",
    role: "computed",
    width: 12,
    accepts: { type: "list", values: [SAME_ORDER], right: SAME_ORDER, asked: "asLeftOrder" },
    formula: (ref) =>
      `IF(${blank(ref("asLeftOrder"))},"",IF(ISNUMBER(SEARCH(TRIM(${ref("asLeftOrder")}),${ref("order")})),"${SAME_ORDER}","${OTHER_ORDER}"))`,
    value: (row) => (isBlank(row.asLeftOrder) ? null : isSameOrder(row) ? SAME_ORDER : OTHER_ORDER),
    working: ({ asLeftOrder, order, orderAgrees }) =>
      isBlank(orderAgrees) ? "" : `left to ${asLeftOrder}, the lineup names ${order ?? "none"}`,
  },
  {
    id: "trips",
    header: "Trips and shows",
    role: "entry",
    width: 10,
    accepts: { type: "list", values: ["Yes", "No"], right: "Yes" },
    need: "condition",
    help: "The right contact closed, and the right target or message came up.",
  },
  sources((row, lineup) => {
    const curve = curveSource(String(row.curve ?? ""));
    return [
      [
        "tolerance",
        sourceOf(ownPercent(row, lineup)) ||
          "the lineup's, from the relay's manual or the project; 5 % or 40 ms, whichever is greater, is common practice",
      ],
      ...(!isTime(row) || !curve ? [] : [["time", sourceText(curve)] as const]),
    ];
  }),
  ...trail(),
];

type Element = Panel["protection"][number];

/** The points of an element: pick-up, reset where a ratio is given, slope, and each multiple of its pick-up. */
function rowsFor(object: string, element: Element): Row[] {
  const { relay, element: name, pickup, unit, curve, setting, multiples } = element;
  const isUnder = UNDER.test(name) || (multiples.length > 0 && multiples.every((one) => one < 1));
  const shared: Row = {
    object,
    part: `${relay} ${name}`,
    curve,
    pickup,
    pickupUnit: unit,
    setting,
    order: element.document ?? null,
    multiple: null,
    inUnit: unit,
    tolerancePercent: element.pickupPercent,
    toleranceS: null,
    directional: DIRECTIONAL.test(name) ? "Yes" : null,
  };
  const { resetPercent, slopePercent } = element;
  return [
    { ...shared, point: "Pick-up" },
    ...(resetPercent === undefined
      ? []
      : [
          {
            ...shared,
            point: "Reset",
            ...(isUnder ? { resetMost: resetPercent } : { resetLeast: resetPercent }),
          },
        ]),
    ...(slopePercent === undefined ? [] : [{ ...shared, point: "Slope 1", slope: slopePercent }]),
    ...[...new Set(multiples)].map(
      (multiple): Row => ({
        ...shared,
        point: `${multiple} × pick-up`,
        multiple,
        inUnit: "s",
        tolerancePercent: element.timePercent,
        toleranceS: element.timeS,
      }),
    ),
  ];
}

/** Protection relays: each element's pick-up, and its operating time at each multiple of pick-up. */
export const protection: RecordKind<"protection"> = {
  id: "protection",
  alsoCalled: ["relays?", "secondary injection"],
  step: "devices",
  sheet: "Protection",
  table: "GearProtection",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, protection }) =>
      protection.flatMap((element) => rowsFor(designation, element)),
    ),
  after: [
    { kind: "settings", own: testedElement, other: changedElement },
    { kind: "control", orRemark: true },
  ],
  voidBy: voidBy(["Relay or settings"]),
  accepted,
  enough: [],
  plot: { value: "error", limit: "errorMost", unit: "%", log: false },
};
