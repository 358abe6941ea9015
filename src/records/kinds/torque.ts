import type { BoltGrade, BoltSize } from "../../engineering/bolts";
import { boltTorque } from "../../engineering/boltTorque";
import type { Lineup } from "../../lineup/lineup";
import { ownCriterion } from "../../lineup/ownCriterion";
import { torqueTolerance } from "../../standards/torqueTolerance";
import { blank, closing, gear, trail } from "../columns/common";
import { figure } from "../figure";
import { type Column, type Comparison, isBlank, type RecordKind, type Row } from "../kind";
import { sourceOf, sources } from "../limits";
import { verdictBy } from "../verdict";

const NOT_COMPUTED = "not computed";

const ownTolerance = (row: Row, lineup: Lineup) =>
  ownCriterion(lineup, "torque tolerance %", String(row.object));

const fallback = (row: Row) =>
  boltTorque(String(row.bolt) as BoltSize, String(row.grade) as BoltGrade);

/** Where the required torque comes from: the maker's document, or the computed fallback, which says so. */
const requiredSource = (row: Row): string => {
  if (typeof row.makersNm === "number")
    return isBlank(row.document) ? "maker's value, document not named" : `${row.document} (maker)`;
  return `computed fallback from ISO 898-1 proof load, nut factor 0.2 dry (practice); NOT the maker's: ask for the maker's torque`;
};

const accepted: readonly Comparison[] = [
  { value: "deviation", limit: "tolerance", unit: "%", sense: "within" },
];

const yes = (id: string, header: string, help: string): Column => ({
  id,
  header,
  role: "entry",
  width: 9,
  accepts: { type: "list", values: ["Yes", "No"], right: "Yes" },
  need: "condition",
  help,
});

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Joint group", role: "key", width: 22 },
  { id: "bolt", header: "Bolt", role: "given", width: 6 },
  { id: "grade", header: "Grade", role: "given", width: 6 },
  { id: "makersNm", header: "Maker's N·m", role: "given", width: 9, unit: "N·m" },
  { id: "document", header: "Maker's document", role: "given", width: 24 },
  {
    id: "required",
    header: "Required N·m",
    role: "limit",
    width: 9,
    unit: "N·m",
    format: "0.0",
    help: "The maker's; where the lineup gives none, computed for a dry steel bolt as a fallback.",
    formula: (ref) =>
      `IF(ISNUMBER(${ref("makersNm")}),${ref("makersNm")},IFERROR(${gear("BOLTTORQUE", ref("bolt"), ref("grade"))},""))`,
    value: (row) => {
      if (typeof row.makersNm === "number") return row.makersNm;
      const computed = fallback(row);
      return computed.ok ? computed.value : null;
    },
  },
  {
    id: "tolerance",
    header: "Tolerance ± %",
    role: "limit",
    width: 9,
    unit: "%",
    own: ownTolerance,
    formula: () => String(torqueTolerance.value),
    value: () => torqueTolerance.value,
  },
  sources((row, lineup) => [
    ["required", requiredSource(row)],
    ["tolerance", sourceOf(ownTolerance(row, lineup) ?? torqueTolerance)],
  ]),
  {
    id: "applied",
    header: "Applied N·m",
    role: "entry",
    width: 9,
    unit: "N·m",
    accepts: { type: "number", least: 0, most: 2000 },
    need: "reading",
    help: "What the wrench was set to or showed, for every bolt of the group. The wrench goes under Instrument: it has a calibration too.",
  },
  {
    id: "deviation",
    header: "Deviation %",
    role: "computed",
    width: 9,
    unit: "%",
    format: "0.0",
    formula: (ref) =>
      `IF(OR(${blank(ref("applied"))},${blank(ref("required"))}),"",IF(AND(ISNUMBER(${ref("applied")}),ISNUMBER(${ref("required")})),(${ref("applied")}/${ref("required")}-1)*100,"${NOT_COMPUTED}"))`,
    value: ({ applied, required }) => {
      if (isBlank(applied) || isBlank(required)) return null;
      return typeof applied === "number" && typeof required === "number"
        ? (applied / required - 1) * 100
        : NOT_COMPUTED;
    },
    working: ({ applied, required, deviation }) =>
      typeof deviation === "number"
        ? `(${figure(applied)} N·m ÷ ${figure(required)} N·m − 1) × 100 = ${figure(deviation)} %`
        : "",
  },
  yes("marked", "Marked", "Is every bolt marked across head and joint, so that a turn would show?"),
  yes(
    "rechecked",
    "Re-checked",
    "Has a second pass, where the maker allows it, found every bolt at its torque?",
  ),
  ...trail(),
];

/** Torque of bolted joints: busbars, cable lugs, earth bars, by panel and group of joints. */
export const torque: RecordKind = {
  id: "torque",
  title: "Torque of bolted joints",
  sheet: "Torque",
  table: "GearTorque",
  purpose:
    "Each group of joints tightened to the maker's torque with a calibrated wrench, marked and re-checked. Where the maker's torque is not known, a computed one stands in as a fallback and says so.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system before a compartment is opened.",
    "The maker's torque, washers, lubrication and sequence come first: a computed torque knows nothing of soft conductors, plating or cast inserts.",
    "Do not tighten again a joint that the maker says to leave; renew what the maker says not to use twice.",
    "Count tools, bolts and washers out again before closing.",
  ],
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, joints }) =>
      joints.map(
        ({ name, bolt, grade, torqueNm, document }): Row => ({
          object: designation,
          part: name,
          bolt,
          grade,
          makersNm: torqueNm ?? null,
          document: document ?? null,
        }),
      ),
    ),
  accepted,
  enough: [],
  plot: { value: "applied", limit: "required", unit: "N·m", log: false },
};
