import { type BoltGrade, type BoltSize, boltNamed, gradeNamed } from "../../engineering/bolts";
import { boltTorque } from "../../engineering/boltTorque";
import type { Lineup } from "../../lineup/lineup";
import { convert } from "../../quantities/convert";
import { jointTorque } from "../../standards/jointTorque";
import { torqueTolerance } from "../../standards/practice";
import { tidy } from "../../standards/tidy";
import { blank, closing, gear, NOT_COMPUTED, quoted, trail } from "../columns/common";
import { figure } from "../figure";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  type RecordKind,
  type Row,
} from "../kind";
import { mostOf, ownOf, sourceOf, sources } from "../limits";
import { exactly } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

/** One pound-force foot, N·m (NIST SP 811). */
const LBF_FT = 1.3558179483314;

const ownTolerance = mostOf("torque tolerance %");
/** The project's or maker's torque for a panel, where the joint has none of its maker's. */
const ownTorque = ownOf({ name: "torque N·m", of: ({ makersNm }) => typeof makersNm !== "number" });

const computedNm = ({ bolt, grade }: Row) =>
  boltTorque(
    boltNamed(String(bolt ?? "")) as BoltSize,
    gradeNamed(String(grade ?? "")) as BoltGrade,
  );

/** NETA's table, for a joint that neither maker nor project gives a torque for. */
const tabulated = ({ bolt, grade }: Row, { basis }: Lineup) =>
  basis === "NETA" ? jointTorque(boltNamed(String(bolt ?? "")), String(grade ?? "")) : undefined;

const newtonMetres = (poundFeet: number): number => {
  const found = convert(poundFeet, "lbf·ft", "N·m");
  return found.ok ? tidy(found.value) : poundFeet * LBF_FT;
};

/** Where the required torque comes from; a computed one accepts nothing. */
const requiredSource = (row: Row, lineup: Lineup): string => {
  if (typeof row.makersNm === "number")
    return isBlank(row.document) ? "maker's value, document not named" : `${row.document} (maker)`;
  const own = sourceOf(ownTorque(row, lineup));
  const found = tabulated(row, lineup);
  if (own !== "" || found?.ok) return own || sourceOf(found);
  return "none given: ask for the maker's torque, or give the project's in the lineup; a computed one accepts nothing";
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
  { id: "document", header: "Manufacturer's document", role: "given", width: 24 },
  {
    id: "computedNm",
    header: "Computed N·m",
    role: "computed",
    width: 9,
    unit: "N·m",
    format: "0.0",
    help: "From the proof load of a dry steel bolt: a check of the order of magnitude, which accepts nothing.",
    formula: (ref) =>
      `IFERROR(${gear("BOLTTORQUE", `TRIM(${ref("bolt")})`, `TRIM(${ref("grade")})`)},"")`,
    value: (row) => {
      const found = computedNm(row);
      return found.ok ? found.value : null;
    },
    working: ({ bolt, grade, computedNm: value }) =>
      typeof value === "number"
        ? `0.2 × 0.56 × proof load of ${bolt}, ${grade}, × its diameter = ${figure(value)} N·m`
        : "",
  },
  {
    id: "required",
    header: "Required N·m",
    role: "limit",
    width: 9,
    unit: "N·m",
    format: "0.0",
    own: ownTorque,
    help: "The maker's; else the project's; else, in American practice, NETA's table by size and grade. Without any of them the joint is not accepted.",
    value: (row, lineup): CellValue => {
      if (typeof row.makersNm === "number") return row.makersNm;
      const found = tabulated(row, lineup);
      return found?.ok ? newtonMetres(found.value.value) : null;
    },
  },
  {
    id: "requiredLbfFt",
    header: "Required lbf·ft",
    role: "computed",
    width: 9,
    unit: "lbf·ft",
    format: "0.0",
    formula: (ref, { basis }) =>
      basis === "NETA" ? `IF(ISNUMBER(${ref("required")}),${ref("required")}/${LBF_FT},"")` : '""',
    value: ({ required }, { basis }) =>
      basis === "NETA" && typeof required === "number" ? required / LBF_FT : null,
    working: ({ required, requiredLbfFt }) =>
      typeof requiredLbfFt === "number"
        ? `${figure(required)} N·m ÷ ${figure(LBF_FT)} = ${figure(requiredLbfFt)} lbf·ft`
        : "",
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
    ["required", requiredSource(row, lineup)],
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
    help: "In N·m, or as written: 48 lbf·ft. What the wrench was set to or showed, for every bolt of the group. The wrench goes under Instrument: it has a calibration too.",
  },
  {
    id: "deviation",
    header: "Deviation %",
    role: "computed",
    width: 9,
    unit: "%",
    format: "0.0",
    formula: (ref) =>
      `IF(OR(${blank(ref("applied"))},${blank(ref("required"))}),"",IF(N(${ref("required")})>0,IFERROR((${gear("QUANTITY", ref("applied"), quoted("N·m"))}/${ref("required")}-1)*100,"${NOT_COMPUTED}"),"${NOT_COMPUTED}"))`,
    value: ({ applied, required }) => {
      if (isBlank(applied) || isBlank(required)) return null;
      const torque = exactly(applied, "N·m");
      return torque !== undefined && typeof required === "number" && required > 0
        ? (torque / required - 1) * 100
        : NOT_COMPUTED;
    },
    working: ({ applied, required, deviation }) =>
      typeof deviation === "number"
        ? `(${figure(exactly(applied, "N·m"))} N·m ÷ ${figure(required)} N·m − 1) × 100 = ${figure(deviation)} %`
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
export const torque: RecordKind<"torque"> = {
  id: "torque",
  alsoCalled: ["bolts?", "tightening"],
  step: "joints",
  sheet: "Torque",
  table: "GearTorque",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, joints }) =>
      joints.map(
        ({ name, bolt, grade, torqueNm, torqueLbfFt, document }): Row => ({
          object: designation,
          part: name,
          bolt,
          grade,
          makersNm: torqueNm ?? (torqueLbfFt === undefined ? null : newtonMetres(torqueLbfFt)),
          document: document ?? null,
        }),
      ),
    ),
  voidBy: voidBy([], ["Bus joint", "Circuit joint", "Earth connection", "Cable"]),
  accepted,
  enough: [],
  plot: { value: "applied", limit: "required", unit: "N·m", log: false },
};
