import { type Curve, curves } from "../../engineering/curves";
import { curveTime } from "../../engineering/curveTime";
import { sourceText } from "../../standards/criterion";
import { curveSource } from "../../standards/curveSource";
import { blank, closing, gear, trail } from "../columns/common";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  type RecordKind,
  type Row,
} from "../kind";
import { sources } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { verdictBy } from "../verdict";

const NOT_COMPUTED = "not computed";
const DEFINITE = "definite";

const isDefinite = (row: Row) => String(row.curve).toLowerCase() === DEFINITE;
const isPickup = (row: Row) => isBlank(row.multiple);

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
  { value: "error", limit: "errorMost", unit: "%", sense: "within" },
];

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
    formula: (ref) =>
      `IF(${blank(ref("multiple"))},${ref("pickup")},IF(${ref("curve")}="${DEFINITE}",${ref("setting")},IFERROR(${gear("CURVETIME", ref("curve"), ref("multiple"), ref("setting"))},"")))`,
    value: (row) => {
      if (isPickup(row)) return row.pickup ?? 0;
      return isDefinite(row) ? (row.setting ?? 0) : expectedTime(row);
    },
    working: (row) => {
      if (isPickup(row)) return `pick-up as set: ${onPaper(row.expected)} ${row.pickupUnit ?? ""}`;
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
  { id: "tolerancePercent", header: "Tolerance %", role: "given", width: 8, unit: "%" },
  { id: "toleranceS", header: "Tolerance s", role: "given", width: 8, unit: "s" },
  {
    id: "reading",
    header: "Measured",
    role: "entry",
    width: 9,
    unitIn: "inUnit",
    accepts: { type: "number", least: 0, most: 100000 },
    need: "reading",
    help: "In the unit that stands in its row: the pick-up, or the time from injection to the trip contact.",
  },
  {
    id: "error",
    header: "Error %",
    role: "computed",
    width: 8,
    unit: "%",
    format: "0.00",
    formula: (ref) =>
      `IF(OR(${blank(ref("reading"))},${blank(ref("expected"))}),"",IF(AND(ISNUMBER(${ref("reading")}),N(${ref("expected")})>0),(${ref("reading")}-${ref("expected")})/${ref("expected")}*100,"${NOT_COMPUTED}"))`,
    value: ({ reading, expected }) => {
      if (isBlank(reading) || isBlank(expected)) return null;
      return typeof reading === "number" && numeric(expected) > 0
        ? ((reading - numeric(expected)) / numeric(expected)) * 100
        : NOT_COMPUTED;
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
    id: "trips",
    header: "Trips and shows",
    role: "entry",
    width: 10,
    accepts: { type: "list", values: ["Yes", "No"], right: "Yes" },
    need: "condition",
    help: "The right contact closed, and the right target or message came up.",
  },
  sources((row) => {
    const curve = curveSource(String(row.curve ?? ""));
    return [
      [
        "tolerance",
        "the lineup's, from the relay's manual or the project; 5 % or 40 ms, whichever is greater, is common practice",
      ],
      ...(isPickup(row) || !curve ? [] : [["time", sourceText(curve)] as const]),
    ];
  }),
  ...trail(),
];

/** Protection relays: each element's pick-up, and its operating time at each multiple of pick-up. */
export const protection: RecordKind = {
  id: "protection",
  title: "Protection relays",
  sheet: "Protection",
  table: "GearProtection",
  purpose:
    "Each element by secondary injection: its pick-up, then its operating time at each multiple of pick-up against its curve or delay, with the contact that closes and what the relay shows.",
  cautions: [
    "Block trips, inter-tripping, busbar and breaker-failure protection before injecting, by the permit and the relay's own test switches; list what was blocked, and put it back.",
    "Short current transformers' secondaries on their side of the test links before a link is opened: never open a secondary under current. Pull the voltage transformer's fuses so that nothing is fed back.",
    "Many times the pick-up soon overheats a relay's inputs: keep within the maker's short-time rating and let them cool.",
    "Settings come from the approved protection study and are put back as found or as approved. Local code, the maker's instruction and licensed practice come first.",
  ],
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, protection }) =>
      protection.flatMap((element) => {
        const { relay, element: name, pickup, unit, curve, setting, multiples } = element;
        const shared = {
          object: designation,
          part: `${relay} ${name}`,
          curve,
          pickup,
          pickupUnit: unit,
          setting,
        };
        return [
          {
            ...shared,
            point: "Pick-up",
            multiple: null,
            inUnit: unit,
            tolerancePercent: element.pickupPercent,
            toleranceS: null,
          },
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
      }),
    ),
  accepted,
  enough: [],
  plot: { value: "error", limit: "errorMost", unit: "%", log: false },
};
