import { decisive } from "../../lineup/decisive";
import type { Lineup, Panel } from "../../lineup/lineup";
import type { Told } from "../../messages/told";
import { answer, type Result } from "../../quantities/result";
import { controlMinimum, controlSeconds, controlTestVoltage } from "../../standards/controlWiring";
import type { Criterion } from "../../standards/criterion";
import { withstandTolerance } from "../../standards/withstandTolerance";
import { withstandVoltage } from "../../standards/withstandVoltage";
import { answered, closing, NOT_OK, OK, trail } from "../columns/common";
import {
  asRead,
  insulationEnough,
  type Limit,
  limitSource,
  minimumColumn,
  testVoltageColumns,
} from "../columns/insulationColumns";
import { appliedColumn, discharge, durationColumn } from "../columns/withstandColumns";
import type { Column, Comparison, RecordKind, Row } from "../kind";
import { leastOf, limitOf, ownOf, sourceOf, sources } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const ownWithstand = ownOf("control wiring withstand kV");
const ownSeconds = leastOf("control wiring withstand duration s");

const minimum: Limit = {
  own: leastOf("control wiring insulation MΩ"),
  standard: (lineup) => answer(controlMinimum(lineup)),
};
const testVoltage: Limit = {
  own: ownOf("control wiring test voltage V"),
  standard: (lineup) => controlTestVoltage(lineup, lineup.ratings.controlWireV),
};
const standard = (lineup: Lineup) =>
  decisive(
    lineup,
    withstandVoltage(lineup.ratings.voltagekV, {
      basis: lineup.basis,
      place: "site",
      wave: "AC",
      part: "control",
    }),
  );
const standardSeconds = (lineup: Lineup) => decisive(lineup, answer(controlSeconds[lineup.basis]));

/** A limit that follows from the lineup alone, as a formula. */
const constant = (found: Result<Criterion, Told>): string => String(limitOf(found) ?? '""');

const accepted: readonly Comparison[] = [
  { value: "insulation", limit: "minimum", unit: "MΩ", sense: "least" },
];
const enough: readonly Comparison[] = [
  insulationEnough,
  {
    value: "applied",
    limit: "required",
    unit: "kV",
    sense: "least",
    tolerance: withstandTolerance(1).value,
  },
  { value: "duration", limit: "durationLeast", unit: "s", sense: "least" },
];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Control circuit", role: "key", width: 20 },
  answered("continuity", "Continuity", [OK, NOT_OK], {
    help: "Each conductor from terminal to terminal, first of all, with everything isolated.",
  }),
  answered("ferrules", "Ferrules as drawn", [OK, NOT_OK], {
    help: "Each end numbered as on the latest approved schematic.",
  }),
  ...testVoltageColumns(testVoltage, {
    most: 5000,
    help: "500 V, or 1000 V where every device left connected allows it.",
  }),
  {
    id: "reading",
    header: "R 1 min MΩ",
    role: "entry",
    width: 13,
    unit: "MΩ",
    accepts: { type: "reading" },
    need: "reading",
    help: 'All conductors of the circuit together to earth: a number in MΩ, or as written: "> 2 GΩ".',
  },
  asRead("insulation", "R MΩ", "reading"),
  minimumColumn(minimum),
  {
    id: "required",
    header: "Required kV",
    role: "limit",
    width: 9,
    unit: "kV",
    format: "0.0##",
    own: ownWithstand,
    formula: (_ref, lineup) => constant(standard(lineup)),
    value: (_row, lineup) => limitOf(standard(lineup)),
  },
  {
    id: "durationLeast",
    header: "Required s",
    role: "limit",
    width: 9,
    unit: "s",
    own: ownSeconds,
    formula: (_ref, lineup) => constant(standardSeconds(lineup)),
    value: (_row, lineup) => limitOf(standardSeconds(lineup)),
  },
  sources((row, lineup) => [
    ["minimum", limitSource(minimum, row, lineup)],
    ["test V", limitSource(testVoltage, row, lineup)],
    ["voltage", sourceOf(ownWithstand(row, lineup) ?? standard(lineup))],
    ["duration", sourceOf(ownSeconds(row, lineup) ?? standardSeconds(lineup))],
  ]),
  appliedColumn(
    { wave: "AC", help: "r.m.s., power frequency, after the insulation was found good." },
    5,
  ),
  durationColumn(600),
  discharge,
  ...trail(),
];

/** The control circuits that a panel has by what stands in it. */
const circuits = ({ type, breaker, currentTransformers, voltageTransformers }: Panel): string[] => [
  ...(breaker ? ["Closing", "Tripping", "Spring charging"] : []),
  "Heating and lighting",
  ...(currentTransformers.length > 0 ? ["Current circuits"] : []),
  ...(voltageTransformers.length > 0 || type === "metering" ? ["Voltage circuits"] : []),
];

/** Continuity, ferrules, insulation and withstand of control wiring, circuit by circuit. */
export const controlWiring: RecordKind<"control"> = {
  id: "control",
  alsoCalled: ["(?:auxiliary|secondary) (?:wiring|circuits?)"],
  step: "devices",
  sheet: "Control wiring",
  table: "GearControl",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap((panel) =>
      circuits(panel).map(
        (part): Row => ({
          object: panel.designation,
          part,
        }),
      ),
    ),
  voidBy: voidBy([], ["Wiring"]),
  accepted,
  enough,
  stress: [{ value: "applied", limit: "required", share: 0.5 }],
  plot: { value: "insulation", limit: "minimum", unit: "MΩ", log: true },
};
