import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { VT_CLASSES, type VtClassName } from "../../standards/transformerClasses";
import { vtLimit } from "../../standards/vtLimit";
import { closing, gear, PHASES, trail } from "../columns/common";
import { insulationAccepted, insulationEnough, limitSource } from "../columns/insulationColumns";
import {
  burden,
  burdenAccepted,
  plateColumn,
  plateSource,
  polarity,
  ratioColumns,
  secondaryInsulation,
  transformerMinimum,
  transformerTestVoltage,
} from "../columns/transformerColumns";
import type { CellValue, Column, Comparison, RecordKind, Row } from "../kind";
import { limitOf, sourceOf, sources } from "../limits";
import { verdictBy } from "../verdict";

type Winding = Panel["voltageTransformers"][number];

const windingOf = (row: Row, lineup: Lineup): Winding | undefined =>
  panelOf(lineup, String(row.object))?.voltageTransformers.find(({ name }) => name === row.part);

const classOf = (accuracy: CellValue | undefined): VtClassName | undefined =>
  VT_CLASSES.find(
    (name) =>
      name ===
      String(accuracy ?? "")
        .trim()
        .toUpperCase(),
  );

const classLimit = ({ accuracy, percent }: Row) => {
  const name = classOf(accuracy);
  return name && typeof percent === "number" ? vtLimit(name, percent) : undefined;
};

/** The same whatever is applied, so that a reading changes no source. */
const classSource = (accuracy: CellValue | undefined): string => {
  const name = classOf(accuracy);
  return name
    ? `class ${name}, ${sourceOf(vtLimit(name, 100))}`
    : `none known here for class ${accuracy ?? "not given"}`;
};

const accepted: readonly Comparison[] = [
  { value: "error", limit: "errorMost", unit: "%", sense: "within" },
  insulationAccepted,
  burdenAccepted,
];
const enough: readonly Comparison[] = [insulationEnough];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Winding", role: "key", width: 12 },
  { id: "phase", header: "Phase", role: "key", width: 7 },
  { id: "ratedPrimary", header: "Rated primary V", role: "given", width: 9, unit: "V" },
  { id: "ratedSecondary", header: "Rated secondary V", role: "given", width: 9, unit: "V" },
  { id: "accuracy", header: "Class", role: "given", width: 7 },
  {
    id: "primary",
    header: "Primary V",
    role: "entry",
    width: 9,
    unit: "V",
    accepts: { type: "number", least: 0, most: 100000 },
    need: "reading",
    help: "Applied to the primary, never fed back through the secondary; measuring classes give limits from 80 % to 120 % of rated voltage alone.",
  },
  {
    id: "secondary",
    header: "Secondary V",
    role: "entry",
    width: 9,
    unit: "V",
    accepts: { type: "number", least: 0, most: 1000 },
    need: "reading",
  },
  ...ratioColumns("V"),
  {
    id: "errorMost",
    header: "Allowed ± %",
    role: "limit",
    width: 8,
    unit: "%",
    formula: (ref) => `IFERROR(${gear("VTLIMIT", ref("accuracy"), ref("percent"))},"")`,
    value: (row) => {
      const found = classLimit(row);
      return found ? limitOf(found) : null;
    },
  },
  polarity,
  ...secondaryInsulation(),
  {
    id: "fuses",
    header: "Fuses",
    role: "entry",
    width: 12,
    accepts: { type: "list", values: ["To drawing", "Not to drawing"], right: "To drawing" },
    need: "condition",
    help: "Primary and secondary: rating and type as drawn, contacts firm.",
  },
  {
    id: "earth",
    header: "Secondary earth",
    role: "entry",
    width: 11,
    accepts: { type: "list", values: ["One point", "None", "Several"], right: "One point" },
    need: "condition",
    help: "Back in place after the insulation test.",
  },
  burden,
  plateColumn(
    { id: "burdenMost", header: "Rated VA", width: 8, unit: "VA" },
    windingOf,
    ({ burdenVA }) => burdenVA,
  ),
  sources((row, lineup) => [
    ["ratio", classSource(row.accuracy)],
    ["minimum", limitSource(transformerMinimum, row, lineup)],
    ["test V", limitSource(transformerTestVoltage, row, lineup)],
    ["burden", plateSource(row.burdenMost)],
  ]),
  ...trail(),
];

/** Voltage transformers, winding by winding and phase by phase. */
export const voltageTransformer: RecordKind = {
  id: "voltageTransformer",
  title: "Voltage transformers",
  sheet: "Voltage transformers",
  table: "GearVoltageTransformers",
  purpose:
    "Each winding of each phase: ratio and polarity with voltage on the primary, insulation of the secondary, fuses, the one earth of the secondary circuit, and the burden that is connected.",
  cautions: [
    "A voltage transformer fed from its secondary puts full voltage on the primary: pull the secondary fuses and lock them out before anybody touches the primary, and never supply a secondary circuit that is not parted from its transformer.",
    "Isolate, prove dead and earth under the site's permit system; barrier the primary while voltage is on it.",
    "Never short the secondary. Keep an unloaded residual winding's damping as the maker says.",
    "Lift the earths of secondary and primary neutral for the insulation test only, and put them back. Local code, the maker's instruction and licensed practice come first.",
  ],
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, voltageTransformers }) =>
      voltageTransformers.flatMap(({ name, primaryV, secondaryV, accuracy }) =>
        PHASES.map(
          (phase): Row => ({
            object: designation,
            part: name,
            phase,
            ratedPrimary: primaryV,
            ratedSecondary: secondaryV,
            accuracy: classOf(accuracy) ?? accuracy,
          }),
        ),
      ),
    ),
  accepted,
  enough,
  plot: { value: "error", limit: "errorMost", unit: "%", log: false },
};
