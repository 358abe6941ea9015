import type { Lineup } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { convert } from "../../quantities/convert";
import { readUnit } from "../../quantities/reading/readUnit";
import { UNITS, type Unit } from "../../quantities/units";
import { blank, closing, gear, signed } from "../columns/common";
import { figure } from "../figure";
import {
  type CellValue,
  type Column,
  type Contradiction,
  isBlank,
  type RecordKind,
  type Row,
} from "../kind";
import { exactly } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const SAME = "As ordered";
/** What it says of a parameter that is not left as the order has it. */
export const OTHER = "Not as ordered";
const BY_HAND = "compare by hand";

/** A number without a unit of its own is read as a pure one. */
const PURE: Unit = "%";

/** Part of a number by which two are still the same: what a file's digits leave open. */
const SAME_PART = 1e-9;

const isNumber = (cell: CellValue | undefined): cell is number => typeof cell === "number";

function agreement({ asLeft, ordered, unit, tolerance }: Row): CellValue {
  if (isBlank(asLeft) || isBlank(ordered)) return null;
  if (!isNumber(ordered)) {
    const plain = (cell: CellValue | undefined) => String(cell).trim().toLowerCase();
    return plain(asLeft) === plain(ordered) ? SAME : OTHER;
  }
  const held = exactly(asLeft, String(unit) as Unit);
  if (held === undefined) return BY_HAND;
  const within = (isNumber(tolerance) ? tolerance / 100 : 0) + SAME_PART;
  return Math.abs(held - ordered) <= within * Math.abs(ordered) ? SAME : OTHER;
}

const text = (id: string, header: string, width: number, help: string): Column => ({
  id,
  header,
  role: "entry",
  width,
  accepts: { type: "text" },
  help,
});

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Relay", role: "key", width: 12 },
  { id: "parameter", header: "Parameter", role: "key", width: 26 },
  { id: "ordered", header: "Ordered", role: "given", width: 14 },
  { id: "inUnit", header: "Unit", role: "given", width: 7 },
  { id: "unit", header: "Read in", role: "given", width: 7 },
  { id: "tolerance", header: "Tolerance ± %", role: "given", width: 9, unit: "%" },
  { id: "order", header: "Settings order", role: "given", width: 30 },
  text("asFound", "As found", 14, "What the device held before."),
  {
    ...text(
      "asLeft",
      "As left",
      14,
      'Read back from the device after the last change: a number in the unit of its row, or as the file has it: "800 mA".',
    ),
    need: "reading",
  },
  {
    id: "agrees",
    header: "Agrees",
    role: "computed",
    width: 16,
    accepts: { type: "list", values: [SAME, OTHER], right: SAME },
    formula: (ref) => {
      const held = gear("QUANTITY", ref("asLeft"), ref("unit"));
      const within = `(N(${ref("tolerance")})/100+${SAME_PART})*ABS(${ref("ordered")})`;
      const asNumber = `IFERROR(IF(ABS(${held}-${ref("ordered")})<=${within},"${SAME}","${OTHER}"),"${BY_HAND}")`;
      const asText = `IF(LOWER(TRIM(${ref("asLeft")}))=LOWER(TRIM(${ref("ordered")})),"${SAME}","${OTHER}")`;
      return `IF(OR(${blank(ref("asLeft"))},${blank(ref("ordered"))}),"",IF(ISNUMBER(${ref("ordered")}),${asNumber},${asText}))`;
    },
    value: agreement,
    working: ({ asLeft, ordered, inUnit, agrees }) =>
      isBlank(agrees) ? "" : `as left ${asLeft}, ordered ${ordered} ${inUnit ?? ""}`.trim(),
  },
  text("firmware", "Firmware", 14, "Version that the device shows."),
  text(
    "fileHash",
    "File's hash",
    20,
    "Of the settings file that was read back and is kept: its name and SHA-256.",
  ),
  ...signed("Read back by"),
];

/** The unit that a value is read in; a pure number's where the order names none that is known. */
const readIn = (unit: string | undefined): Unit => {
  const found = unit === undefined ? undefined : readUnit(unit);
  return found?.ok && found.value in UNITS ? found.value : PURE;
};

const PLAIN_NUMBER = /^[+-]?\d+(\.\d+)?$/;

/** What the last word of a parameter's name says that it sets of its element: its pick-up, or its time. */
const SETS: ReadonlyMap<string, "pickup" | "setting"> = new Map([
  ...["pickup", "pick-up", "pu", "threshold"].map((word) => [word, "pickup"] as const),
  ...["multiplier", "tms", "tds", "dial", "delay"].map((word) => [word, "setting"] as const),
]);
/** Words after or before it that add nothing. */
const IDLE: ReadonlySet<string> = new Set(["set", "setting", "value", "current", "voltage"]);
const BETWEEN: ReadonlySet<string> = new Set(["time", "-", ":", ","]);

function setBy(parameter: CellValue | undefined) {
  const words = String(parameter ?? "")
    .toLowerCase()
    .replace("pick up", "pick-up")
    .split(" ");
  while (IDLE.has(words.at(-1) ?? "")) words.pop();
  const tested = SETS.get(words.pop() ?? "");
  while (BETWEEN.has(words.at(-1) ?? "")) words.pop();
  const element = words.join(" ").trim();
  return tested && element !== "" ? { element, tested } : undefined;
}

/** The element of a relay of which a parameter was changed when it was read back; undefined where it was not. */
export const changedElement = (row: Row): string | undefined =>
  isBlank(row.asFound) ||
  isBlank(row.asLeft) ||
  agreement({ ...row, ordered: row.asFound ?? null }) !== OTHER
    ? undefined
    : elementOf(row);

/** The element of a relay that a protection record is of, by its panel and name. */
export const testedElement = ({ object, part }: Row): string => nameOf(object, String(part));

/** The element of a relay that a parameter belongs to, as protection records name it; undefined where its name does not say. */
function elementOf({ object, part, parameter }: Row): string | undefined {
  const set = setBy(parameter);
  return set && nameOf(object, `${part} ${set.element}`);
}

const nameOf = (object: CellValue | undefined, element: string): string =>
  `${object}\u0000${element.toLowerCase()}`;

/** Part of a setting by which it is another: relays keep theirs in fine steps (common practice, no source). */
const STEP = 0.005;

/** A relay left at another setting than its element was tested at: the test shows nothing of what is left. */
function notAsTested(row: Row, tested: Row, lineup: Lineup): Contradiction | undefined {
  const set = setBy(row.parameter);
  const isOfIt = set?.tested === "pickup" ? isBlank(tested.multiple) : !isBlank(tested.multiple);
  if (!set || !isOfIt || isBlank(tested.reading)) return undefined;
  const [unit, inUnit] = [row.unit as Unit, set.tested === "pickup" ? tested.pickupUnit : "s"];
  const left = exactly(row.asLeft, unit);
  const at = tested[set.tested];
  if (left === undefined || !isNumber(at)) return undefined;
  const value = unit === PURE ? left : valueIn(left, unit, inUnit);
  const within = Math.max(STEP, isNumber(row.tolerance) ? row.tolerance / 100 : 0) * Math.abs(at);
  if (value === undefined || Math.abs(value - at) <= within + SAME_PART) return undefined;
  if (isPrimary(value / at, String(row.object), lineup, within / Math.abs(at))) return undefined;
  const said = (number: number) =>
    [figure(number), set.tested === "pickup" ? inUnit : ""].join(" ").trim();
  return { column: "asLeft", why: "setting", found: said(value), other: said(at) };
}

function valueIn(value: number, unit: Unit, other: CellValue | undefined): number | undefined {
  const to = readUnit(String(other ?? ""));
  const found = to.ok ? convert(value, unit, to.value) : to;
  return found.ok ? found.value : undefined;
}

/** A setting in primary values is the tested one times the ratio of a transformer of its panel. */
function isPrimary(times: number, panel: string, lineup: Lineup, within: number): boolean {
  const { currentTransformers = [], voltageTransformers = [] } = panelOf(lineup, panel) ?? {};
  const ratios = [
    ...currentTransformers.map(({ primaryA, secondaryA }) => primaryA / secondaryA),
    ...voltageTransformers.map(({ primaryV, secondaryV }) => primaryV / secondaryV),
  ];
  return ratios.some((ratio) => Math.abs(times / ratio - 1) <= within + SAME_PART);
}

/** Settings of relays as left against the order. */
export const settings: RecordKind<"settings"> = {
  id: "settings",
  alsoCalled: ["relay settings?", "settings? read back"],
  sheet: "Relay settings",
  table: "GearSettingsHeld",
  columns: [...columns, verdictBy(columns, [], []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, relaySettings }) =>
      relaySettings.map(
        ({ relay, parameter, value, unit, tolerancePercent, document }): Row => ({
          object: designation,
          part: relay,
          parameter,
          ordered: PLAIN_NUMBER.test(value) ? Number(value) : value,
          inUnit: unit ?? null,
          unit: readIn(unit),
          tolerance: tolerancePercent ?? null,
          order: document ?? null,
        }),
      ),
    ),
  against: [
    {
      kind: "protection",
      own: elementOf,
      other: ({ object, part, slope, resetLeast, resetMost }) =>
        isNumber(slope) || !isBlank(resetLeast) || !isBlank(resetMost)
          ? undefined
          : testedElement({ object: object ?? null, part: part ?? null }),
      contradiction: notAsTested,
    },
  ],
  // What is read back is what the last injection left. One that was changed is tested at its new value afterwards.
  after: [
    {
      kind: "protection",
      own: (row) =>
        changedElement(row) === undefined ? nameOf(row.object, String(row.part)) : undefined,
      other: ({ object, part, asLeftPickup, asLeftSetting }) =>
        isBlank(asLeftPickup) && isBlank(asLeftSetting)
          ? nameOf(object, String(part).split(" ")[0] ?? "")
          : undefined,
      orRemark: true,
    },
  ],
  voidBy: voidBy(["Relay or settings"]),
  accepted: [],
  enough: [],
};
