import { decisive } from "../../lineup/decisive";
import type { Lineup } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import type { Told } from "../../messages/told";
import { storedWords } from "../../messages/told";
import { answer, type Result, refuse } from "../../quantities/result";
import { cableTestVoltage, cableTypicalMinimum } from "../../standards/cableInsulation";
import {
  CABLE_WAVES,
  type CableTest,
  type CableWave,
  cableTests,
  usualCableWave,
} from "../../standards/cableTest";
import { sourceText } from "../../standards/criterion";
import type { Chosen } from "../../standards/editions";
import { perMillimetre, sheathMinutes, sheathMost } from "../../standards/iec60229.2007";
import { afterLaying } from "../../standards/iec60502-2.2014";
import { cableFloor, cableOverstress, cableTypical } from "../../standards/practice";
import { withstandTolerance } from "../../standards/withstandTolerance";
import { closing, gear, PHASES, quoted, trail } from "../columns/common";
import {
  asRead,
  insulationAccepted,
  insulationColumns,
  insulationEnough,
  type Limit,
  limitSource,
} from "../columns/insulationColumns";
import { appliedColumn, currentColumn, discharge } from "../columns/withstandColumns";
import {
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type RecordKind,
  type Reference,
  type Row,
} from "../kind";
import { leastOf, ownOf, sourceOf, sources } from "../limits";
import { chargedMinutes } from "../minutes";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

/** The cable of a row, by what the lineup says of it. */
const cableOf = (row: Row, lineup: Lineup) =>
  panelOf(lineup, String(row.object))?.cables.find(({ designation }) => designation === row.part);

/** What a cable goes by: the lineup's standards, and the purpose of its own test. */
const chosenFor = (row: Row, lineup: Lineup): Chosen => ({
  basis: lineup.basis,
  editions: lineup.editions,
  purpose: cableOf(row, lineup)?.purpose ?? lineup.purpose,
});

const ratedkV = (row: Row) => (typeof row.ratedkV === "number" ? row.ratedkV : Number.NaN);

const minimum: Limit = {
  own: leastOf("cable insulation MΩ"),
  standard: (lineup, row) => cableTypicalMinimum(ratedkV(row), chosenFor(row, lineup)),
  formula: (ref, { basis }) =>
    basis === "NETA"
      ? `IFERROR(${gear("IRMINIMUM", ref("ratedkV"), quoted(basis))},"")`
      : String(cableTypical.value),
  floor: () => cableFloor,
};
const testVoltage: Limit = {
  own: ownOf("cable test voltage V"),
  standard: (lineup, row) => cableTestVoltage(ratedkV(row), chosenFor(row, lineup)),
  formula: (ref, { basis }) =>
    `IFERROR(${gear("IRTESTVOLTAGE", ref("ratedkV"), quoted(basis))},"")`,
};
const ownSheath = leastOf("cable sheath MΩ");
const ownkV = ownOf("cable withstand kV");
const ownMinutes = ownOf("cable withstand min");

const waveOf = (row: Row): CableWave | undefined =>
  CABLE_WAVES.find((wave) => wave === String(row.wave ?? "").toUpperCase());

const noWave = refuse("none", ({ records }: Told) => records.noWave(CABLE_WAVES));

/** The tests of a cable by the standards, any of which serves, as far as they decide. */
const testsOf = (row: Row, lineup: Lineup): Result<readonly CableTest[], Told> => {
  const wave = waveOf(row);
  if (!wave) return noWave;
  const u0kV = cableOf(row, lineup)?.u0kV;
  const found = cableTests({ ratedkV: ratedkV(row), u0kV }, wave, chosenFor(row, lineup));
  if (!found.ok) return found;
  const deciding = found.value.map(({ kV }) => decisive(lineup, answer(kV)));
  return deciding.find(({ ok }) => !ok) ? (deciding[0] as Result<never>) : found;
};

/** Where the voltage or duration of the tests comes from, or why there is none. */
const testSource = (row: Row, lineup: Lineup, pick: "kV" | "minutes"): string => {
  const found = testsOf(row, lineup);
  return found.ok
    ? found.value.map((test) => sourceText(test[pick].source)).join(" or ")
    : found.say(storedWords());
};

const testAt = (row: Row, lineup: Lineup, at: 0 | 1): CableTest | undefined => {
  const found = testsOf(row, lineup);
  return found.ok ? found.value[at] : undefined;
};

const TOLERANCE = withstandTolerance(15 * 60).value;

/** Whether a second test that serves as well was the one that was made: its voltage was reached. */
const isOther = ({ otherkV, applied }: Row): boolean =>
  typeof otherkV === "number" &&
  typeof applied === "number" &&
  applied >= otherkV * (1 - TOLERANCE);

/** The durations are the same for cables of all voltages; the tables know this one. */
const ANY_KV = 15;

const minutesOf = (wave: CableWave | undefined, lineup: Lineup): number | null => {
  const found = wave && cableTests({ ratedkV: ANY_KV }, wave, lineup);
  return found?.ok ? (found.value[0]?.minutes.value ?? null) : null;
};

/** Durations of the usual tests by wave, min, as a formula. */
const usualMinutes = (ref: Reference, lineup: Lineup): string =>
  CABLE_WAVES.reduceRight(
    (otherwise, wave) =>
      `IF(${ref("wave")}="${wave}",${minutesOf(wave, lineup) ?? '""'},${otherwise})`,
    '""',
  );

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
    tolerance: TOLERANCE,
  },
  {
    value: "applied",
    limit: "required",
    unit: "kV",
    sense: "most",
    tolerance: cableOverstress.value,
  },
  { value: "minutes", limit: "minutesLeast", unit: "min", sense: "least" },
  {
    value: "sheathApplied",
    limit: "sheathkV",
    unit: "kV",
    sense: "least",
    tolerance: 0.01,
    excusable: true,
  },
  {
    value: "sheathApplied",
    limit: "sheathkV",
    unit: "kV",
    sense: "most",
    tolerance: cableOverstress.value,
    excusable: true,
  },
  {
    value: "sheathHeld",
    limit: "sheathMinutesLeast",
    unit: "min",
    sense: "least",
    excusable: true,
  },
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
  asRead("sheath", "R sheath MΩ", "sheathRead"),
  {
    id: "sheathLeast",
    header: "Minimum sheath MΩ",
    role: "limit",
    width: 9,
    unit: "MΩ",
    own: ownSheath,
    help: "The maker's or project's own; n/a where neither gives one.",
    value: () => NOT_APPLICABLE,
  },
  {
    id: "sheathkV",
    header: "Sheath test kV DC",
    role: "limit",
    width: 9,
    unit: "kV",
    own: ownOf("cable sheath kV"),
    help: "By the thickness of the oversheath; n/a where nobody gives it.",
    value: (row, lineup) => {
      const thickness = cableOf(row, lineup)?.sheathMm;
      return thickness === undefined
        ? NOT_APPLICABLE
        : Math.min(thickness * perMillimetre.value, sheathMost.value);
    },
  },
  {
    id: "sheathApplied",
    header: "Sheath applied kV",
    role: "entry",
    width: 9,
    unit: "kV",
    wave: "DC",
    accepts: { type: "number", least: 0, most: 30 },
    need: "condition",
    unless: "sheathkV",
    help: "Direct voltage, screen to earth, lifted at both ends.",
  },
  {
    id: "sheathMinutesLeast",
    header: "Sheath minimum min",
    role: "limit",
    width: 9,
    unit: "min",
    own: ownOf("cable sheath min"),
    value: ({ sheathkV }) => (sheathkV === NOT_APPLICABLE ? NOT_APPLICABLE : sheathMinutes.value),
  },
  {
    id: "sheathHeld",
    header: "Sheath held min",
    role: "entry",
    width: 8,
    unit: "min",
    accepts: { type: "number", least: 0, most: 60 },
    need: "condition",
    unless: "sheathMinutesLeast",
  },
  {
    id: "usualkV",
    header: "Usual kV",
    role: "given",
    width: 7,
    unit: "kV",
    help: "By the cable's own U0, or its row of the table.",
    value: (row, lineup) => testAt(row, lineup, 0)?.kV.value ?? null,
  },
  {
    id: "otherkV",
    header: "Or kV",
    role: "given",
    width: 7,
    unit: "kV",
    help: "A second test that serves as well, for its own time: AC at U for 5 min instead of U0 for 24 h.",
    value: (row, lineup) => testAt(row, lineup, 1)?.kV.value ?? null,
  },
  {
    id: "required",
    header: "Required kV",
    role: "limit",
    width: 9,
    unit: "kV",
    format: "0.0##",
    own: ownkV,
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("otherkV")}),ISNUMBER(${ref("applied")}),N(${ref("applied")})>=N(${ref("otherkV")})*${1 - TOLERANCE}),${ref("otherkV")},IF(ISNUMBER(${ref("usualkV")}),${ref("usualkV")},""))`,
    value: (row) => (isOther(row) ? (row.otherkV ?? null) : (row.usualkV ?? null)),
  },
  {
    id: "minutesLeast",
    header: "Required min",
    role: "limit",
    width: 9,
    unit: "min",
    own: ownMinutes,
    formula: (ref, lineup) =>
      `IF(AND(ISNUMBER(${ref("otherkV")}),${ref("required")}=${ref("otherkV")}),${afterLaying.ACu.minutes},${usualMinutes(ref, lineup)})`,
    value: (row, lineup) =>
      typeof row.otherkV === "number" && row.required === row.otherkV
        ? afterLaying.ACu.minutes
        : minutesOf(waveOf(row), lineup),
  },
  sources((row, lineup) => [
    ["minimum", limitSource(minimum, row, lineup)],
    ["test V", limitSource(testVoltage, row, lineup)],
    ["sheath", sourceOf(ownSheath(row, lineup)) || "none given: not judged by it"],
    [
      "sheath kV",
      row.sheathkV === NOT_APPLICABLE ? "thickness not given" : sourceText(perMillimetre.source),
    ],
    ["voltage", sourceOf(ownkV(row, lineup)) || testSource(row, lineup, "kV")],
    ["duration", sourceOf(ownMinutes(row, lineup)) || testSource(row, lineup, "minutes")],
  ]),
  appliedColumn({
    wave: "any",
    help: "Phase to earth; r.m.s. for AC and very low frequency.",
  }),
  {
    id: "minutes",
    header: "Held min",
    role: "entry",
    width: 8,
    unit: "min",
    accepts: { type: "number", least: 0, most: 3000 },
    need: "condition",
  },
  currentColumn("At the end of the test."),
  discharge,
  ...trail(),
];

/** A test of a core by a source on site takes no longer, min: common practice, no source. */
const LONGEST_HELD = 120;

/** Cables of each circuit after laying, before they are connected. */
export const cable: RecordKind<"cable"> = {
  id: "cable",
  phasesToEarth: true,
  step: "cables",
  sheet: "Cables",
  table: "GearCable",
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
  voidBy: voidBy(["Cable"]),
  // A day's soak at the system's voltage keeps nobody, and its phases are held together.
  watched: ({ minutes }) => (typeof minutes === "number" ? minutes : 0),
  minutes: ({ minutes, insulationRead }) =>
    (typeof minutes === "number" && minutes <= LONGEST_HELD ? minutes : 0) +
    (isBlank(insulationRead) ? 0 : chargedMinutes(1)),
  accepted,
  enough,
  stress: [{ value: "applied", limit: "required", share: 0.05 }],
  plot: { value: "insulation", limit: "minimum", unit: "MΩ", log: true },
};
