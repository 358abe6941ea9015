import type { Lineup } from "../../lineup/lineup";
import { bounded } from "../../quantities/bounded";
import { refuse } from "../../quantities/result";
import { cableMinimum, cableTestVoltage } from "../../standards/cableInsulation";
import { cableMinutes } from "../../standards/cableMinutes";
import { CABLE_WAVES, type CableWave, cableTest, usualCableWave } from "../../standards/cableTest";
import { withstandTolerance } from "../../standards/withstandTolerance";
import { blank, closing, gear, PHASES, quoted, trail } from "../columns/common";
import {
  insulationAccepted,
  insulationColumns,
  insulationEnough,
  type Limit,
  limitSource,
} from "../columns/insulationColumns";
import {
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type RecordKind,
  type Row,
} from "../kind";
import { limitOf, ownOf, sourceOf, sources } from "../limits";
import { onPaper } from "../onPaper";
import { quantity } from "../quantity";
import { verdictBy } from "../verdict";

const NOT_READ = "not read";

const minimum: Limit = { own: "cable insulation MΩ", standard: () => cableMinimum };
const testVoltage: Limit = { own: "cable test voltage V", standard: () => cableTestVoltage };
const ownSheath = ownOf("cable sheath MΩ");
const ownkV = ownOf("cable withstand kV");
const ownMinutes = ownOf("cable withstand min");

const waveOf = (row: Row): CableWave | undefined =>
  CABLE_WAVES.find((wave) => wave === String(row.wave ?? "").toUpperCase());

const noWave = refuse("none", `the wave is none of ${CABLE_WAVES.join(", ")}`);

const standardkV = (row: Row, { basis }: Lineup) => {
  const wave = waveOf(row);
  return wave && typeof row.ratedkV === "number" ? cableTest(row.ratedkV, basis, wave) : noWave;
};
const standardMinutes = (row: Row, { basis }: Lineup) => {
  const wave = waveOf(row);
  return wave ? cableMinutes(basis, wave) : noWave;
};

const accepted: readonly Comparison[] = [
  insulationAccepted,
  { value: "sheath", limit: "sheathLeast", unit: "MΩ", sense: "least", excusable: true },
];
const enough: readonly Comparison[] = [
  insulationEnough,
  {
    value: "applied",
    limit: "required",
    unit: "kV",
    sense: "least",
    tolerance: withstandTolerance(15 * 60).value,
  },
  { value: "minutes", limit: "minutesLeast", unit: "min", sense: "least" },
];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Cable", role: "key", width: 14 },
  { id: "phase", header: "Phase", role: "key", width: 7 },
  { id: "ratedkV", header: "Rated kV", role: "given", width: 6, unit: "kV" },
  { id: "wave", header: "Wave", role: "given", width: 6 },
  ...insulationColumns(
    minimum,
    testVoltage,
    'Core to screen and earth, the other cores earthed, after 1 min: a number in MΩ, or as written: "> 2 GΩ".',
  ),
  {
    id: "sheathRead",
    header: "Sheath MΩ",
    role: "entry",
    width: 11,
    unit: "MΩ",
    accepts: { type: "reading" },
    need: "condition",
    needed: ({ sheathLeast }) => typeof sheathLeast === "number",
    help: "Screen to earth, lifted at both ends, at the direct voltage that the cable's maker gives.",
  },
  {
    id: "sheath",
    header: "R sheath MΩ",
    role: "computed",
    width: 10,
    unit: "MΩ",
    format: "#,##0.##",
    formula: (ref) =>
      `IF(${blank(ref("sheathRead"))},"",IFERROR(${gear("IRCORRECT", ref("sheathRead"), 20, '"none"', 20)},"${NOT_READ}"))`,
    value: (row) => {
      if (isBlank(row.sheathRead)) return null;
      const read = quantity(row.sheathRead, "MΩ");
      return read && read.value >= 0 ? bounded(read) : NOT_READ;
    },
    working: ({ sheathRead, sheath }) =>
      isBlank(sheath) || sheath === NOT_READ
        ? ""
        : `${onPaper(sheathRead)} = ${onPaper(sheath)} MΩ`,
  },
  {
    id: "sheathLeast",
    header: "Least sheath MΩ",
    role: "limit",
    width: 9,
    unit: "MΩ",
    own: ownSheath,
    help: "The maker's or project's own; n/a where neither gives one.",
    value: () => NOT_APPLICABLE,
  },
  {
    id: "required",
    header: "Required kV",
    role: "limit",
    width: 9,
    unit: "kV",
    format: "0.0##",
    own: ownkV,
    formula: (ref, { basis }) =>
      `IFERROR(${gear("CABLETEST", ref("ratedkV"), quoted(basis), ref("wave"))},"")`,
    value: (row, lineup) => limitOf(standardkV(row, lineup)),
  },
  {
    id: "minutesLeast",
    header: "Required min",
    role: "limit",
    width: 9,
    unit: "min",
    own: ownMinutes,
    formula: (ref, { basis }) =>
      CABLE_WAVES.reduceRight((otherwise, wave) => {
        const found = cableMinutes(basis, wave);
        return found.ok
          ? `IF(${ref("wave")}="${wave}",${found.value.value},${otherwise})`
          : otherwise;
      }, '""'),
    value: (row, lineup) => limitOf(standardMinutes(row, lineup)),
  },
  sources((row, lineup) => [
    ["minimum", limitSource(minimum, row, lineup)],
    ["test V", limitSource(testVoltage, row, lineup)],
    ["sheath", sourceOf(ownSheath(row, lineup)) || "none given: not judged by it"],
    ["voltage", sourceOf(ownkV(row, lineup) ?? standardkV(row, lineup))],
    ["duration", sourceOf(ownMinutes(row, lineup) ?? standardMinutes(row, lineup))],
  ]),
  {
    id: "applied",
    header: "Applied kV",
    role: "entry",
    width: 9,
    unit: "kV",
    accepts: { type: "number", least: 0, most: 400 },
    need: "reading",
    help: "Phase to earth; r.m.s. for AC and very low frequency.",
  },
  {
    id: "minutes",
    header: "Held min",
    role: "entry",
    width: 8,
    unit: "min",
    accepts: { type: "number", least: 0, most: 3000 },
    need: "condition",
  },
  {
    id: "current",
    header: "Current mA",
    role: "entry",
    width: 9,
    unit: "mA",
    accepts: { type: "number", least: 0, most: 100000 },
    need: "trail",
    help: "At the end of the test.",
  },
  {
    id: "discharge",
    header: "Discharge",
    role: "entry",
    width: 9,
    accepts: { type: "list", values: ["No", "Yes"], right: "No" },
    need: "condition",
    help: "Did a disruptive discharge occur?",
  },
  ...trail(),
];

/** Cables of each circuit after laying, before they are connected. */
export const cable: RecordKind = {
  id: "cable",
  title: "Medium-voltage cables",
  sheet: "Cables",
  table: "GearCable",
  purpose:
    "Each core of each cable before it is connected: insulation first, the sheath where the project asks for it, then the withstand test by alternating, very-low-frequency or direct voltage.",
  cautions: [
    "Both ends are live during the test: bar, warn and watch the far end too, and keep radio or telephone contact. Isolate, prove dead and earth under the site's permit system first.",
    "No direct voltage on service-aged polymer (XLPE) cable: it leaves charge in the insulation that can break it down in service later. Take very low frequency or power frequency instead.",
    "Part the cable from switchgear, voltage transformers and surge arresters, or agree the lower voltage with their makers.",
    "A cable holds its charge: discharge through a resistor, then earth, for as long as the maker and the local rule say, before anybody touches an end. Local code and licensed practice come first.",
  ],
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, cables }) =>
      cables.flatMap(({ designation: cable, ratedkV, wave }) =>
        PHASES.map(
          (phase): Row => ({
            object: designation,
            part: cable,
            phase,
            ratedkV,
            wave: wave ?? usualCableWave[lineup.basis],
          }),
        ),
      ),
    ),
  accepted,
  enough,
  plot: { value: "insulation", limit: "minimum", unit: "MΩ", log: true },
};
