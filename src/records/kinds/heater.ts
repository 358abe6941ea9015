import { heaterCurrent } from "../../standards/practice";
import { answered, closing, trail } from "../columns/common";
import { measured, named } from "../columns/measuredColumns";
import type { Column, Comparison, RecordKind, Row } from "../kind";
import { mostOf, sourceOf, sources } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const ownOff = mostOf("heater current %");

const accepted: readonly Comparison[] = [
  { value: "off", limit: "offMost", unit: "%", sense: "within" },
];

/** On another system's voltage a heater is not tried as it will run; mains vary by so much. */
const enough: readonly Comparison[] = [
  { value: "supply", limit: "ratedV", unit: "V", sense: "most", tolerance: 0.15 },
];

const columns: readonly Column[] = [
  ...named("Heater", 14),
  { id: "ratedV", header: "Rated V", role: "given", width: 8, unit: "V" },
  { id: "ratedW", header: "Rated W", role: "given", width: 8 },
  measured("supply", "Supply V", "V", { most: 1000, wave: "any", need: "condition" }),
  measured("current", "Current A", "A", { most: 1000, wave: "any" }),
  {
    id: "expected",
    header: "Expected A",
    role: "computed",
    width: 9,
    unit: "A",
    format: "0.000",
    help: "At the supply as measured, the element being a resistance.",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("supply")}),N(${ref("ratedV")})>0,ISNUMBER(${ref("ratedW")})),${ref("ratedW")}*${ref("supply")}/${ref("ratedV")}/${ref("ratedV")},"")`,
    value: ({ supply, ratedV, ratedW }) =>
      typeof supply === "number" &&
      typeof ratedV === "number" &&
      ratedV > 0 &&
      typeof ratedW === "number"
        ? (ratedW * supply) / ratedV / ratedV
        : null,
    working: ({ supply, ratedV, ratedW, expected }) =>
      workedOut(
        expected,
        `${onPaper(ratedW)} W × ${onPaper(supply)} V ÷ (${onPaper(ratedV)} V)²`,
        "A",
      ),
  },
  {
    id: "off",
    header: "Off %",
    role: "computed",
    width: 8,
    unit: "%",
    format: "0.0",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("current")}),N(${ref("expected")})>0),(${ref("current")}/${ref("expected")}-1)*100,"")`,
    value: ({ current, expected }) =>
      typeof current === "number" && typeof expected === "number" && expected > 0
        ? (current / expected - 1) * 100
        : null,
    working: ({ current, expected, off }) =>
      workedOut(off, `(${onPaper(current)} A ÷ ${onPaper(expected)} A − 1) × 100`, "%"),
  },
  {
    id: "offMost",
    header: "Allowed ± %",
    role: "limit",
    width: 8,
    unit: "%",
    own: ownOff,
    formula: () => String(heaterCurrent.value),
    value: () => heaterCurrent.value,
  },
  answered("switches", "Thermostat", ["As set", "Not as set"], {
    help: "Thermostat or hygrostat switches it on and off, and its failure is shown where that is drawn.",
  }),
  sources((row, lineup) => [["current", sourceOf(ownOff(row, lineup) ?? heaterCurrent)]]),
  ...trail(),
];

/** Space heaters: current against the plate, and what switches them. */
export const heater: RecordKind<"heater"> = {
  id: "heater",
  alsoCalled: ["space heaters?", "anti ?condensation heaters?"],
  step: "functions",
  sheet: "Heaters",
  table: "GearHeater",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation: object, heaters }) =>
      heaters.map(
        ({ designation, volts, watts }): Row => ({
          object,
          part: designation,
          ratedV: volts,
          ratedW: watts,
        }),
      ),
    ),
  minor: () => true,
  voidBy: voidBy([], ["Wiring"]),
  accepted,
  enough,
};
