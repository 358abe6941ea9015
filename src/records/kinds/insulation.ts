import { insulationCorrect } from "../../engineering/insulationCorrect";
import { absorptionRatio, polarizationIndex } from "../../engineering/ratios";
import { busSections } from "../../lineup/busbar";
import type { Lineup } from "../../lineup/lineup";
import { deviceName } from "../../lineup/plate";
import { bounded } from "../../quantities/reading/bounded";
import { insulationMinimum } from "../../standards/insulationMinimum";
import { insulationTestVoltage } from "../../standards/insulationTestVoltage";
import {
  fallenInsulation,
  fallingIndex,
  farAboveMinimum,
  indexUpTo,
} from "../../standards/practice";
import { blank, closing, gear, NOT_CORRECTED, PHASES, quoted, trail } from "../columns/common";
import {
  insulationEnough,
  type Limit,
  limitSource,
  testVoltageColumns,
} from "../columns/insulationColumns";
import { ratio, ratioWorking } from "../columns/insulationRatio";
import { figure } from "../figure";
import { type Column, type Comparison, isBlank, type RecordKind, type Row } from "../kind";
import { leastOf, limitOf, ownOf, sourceOf, sources } from "../limits";
import { chargedMinutes } from "../minutes";
import { onPaper, workedOut } from "../onPaper";
import { exactly, quantity } from "../quantity";
import { SECTION, voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const EARTHED = PHASES.map((phase) => `${phase}-E`);
const BETWEEN = ["L1-L2", "L2-L3", "L3-L1"];
const OPEN = PHASES.map((phase) => `${phase} open`);
const [BEFORE, AFTER] = ["before", "after"] as const;
const STAGES = [BEFORE, AFTER] as const;
const ownMinimum = leastOf("insulation minimum MΩ");

const standardMinimum = (row: Row, lineup: Lineup) =>
  insulationMinimum(Number(row.ratedkV), lineup);
const testVoltage: Limit = {
  own: ownOf("insulation test voltage V"),
  standard: (lineup, row) => insulationTestVoltage(Number(row.ratedkV), lineup),
  formula: (ref, lineup) => gear("IRTESTVOLTAGE", ref("ratedkV"), quoted(lineup.basis)),
};

const accepted: readonly Comparison[] = [
  { value: "corrected", limit: "minimum", unit: "MΩ", sense: "least" },
  {
    value: "corrected",
    limit: "fallen",
    unit: "MΩ",
    sense: "least",
    when: "fallen",
    asks: true,
  },
  { value: "falling", limit: "fallingLeast", sense: "least", when: "falling", asks: true },
];
const enough: readonly Comparison[] = [insulationEnough];

/** What a reading before and the one after the withstand test have in common. */
const PLACE = ["object", "part", "combination"] as const;
const placeOf = (row: Row) => PLACE.map((id) => String(row[id] ?? "").toLowerCase()).join("\n");

/** The lowest insulation before the withstand test of each place. */
const lowestBefore = (rows: readonly Row[]): ReadonlyMap<string, number> => {
  const lowest = new Map<string, number>();
  for (const row of rows) {
    const { stage, corrected } = row;
    if (String(stage ?? "").toLowerCase() !== BEFORE) continue;
    if (typeof corrected !== "number" || corrected <= 0) continue;
    lowest.set(placeOf(row), Math.min(corrected, lowest.get(placeOf(row)) ?? corrected));
  }
  return lowest;
};

const columns: readonly Column[] = [
  { id: "object", header: "Panel or section", role: "key", width: 15 },
  { id: "part", header: "Part", role: "key", width: 13 },
  { id: "combination", header: "Combination", role: "key", width: 11 },
  {
    id: "stage",
    header: "Stage",
    role: "key",
    width: 8,
    help: "Before or after the withstand test.",
  },
  { id: "ratedkV", header: "Rated kV", role: "given", width: 6, unit: "kV" },
  ...testVoltageColumns(testVoltage),
  {
    id: "r30s",
    header: "R 30 s MΩ",
    role: "entry",
    width: 12,
    unit: "MΩ",
    accepts: { type: "reading" },
    help: "For the absorption ratio; may stay blank.",
  },
  {
    id: "reading",
    header: "R 1 min MΩ",
    role: "entry",
    width: 13,
    unit: "MΩ",
    accepts: { type: "reading" },
    need: "reading",
    help: 'Number in MΩ, or as written with its unit: "5.2 GΩ", "> 2 TΩ".',
  },
  {
    id: "r10min",
    header: "R 10 min MΩ",
    role: "entry",
    width: 12,
    unit: "MΩ",
    accepts: { type: "reading" },
    help: "For the polarization index; may stay blank.",
  },
  {
    id: "temperature",
    header: "Temperature °C",
    role: "entry",
    takesFirst: "temperature",
    width: 12,
    unit: "°C",
    accepts: { type: "number", least: -40, most: 120 },
    need: "condition",
    needed: (_row, lineup) => lineup.insulation.correction !== "none",
    help: "Of the insulation, not only of the air.",
  },
  {
    id: "humidity",
    header: "Humidity %",
    role: "entry",
    width: 10,
    unit: "%",
    accepts: { type: "number", least: 0, most: 100 },
    need: "trail",
  },
  {
    id: "corrected",
    header: "R corrected MΩ",
    role: "computed",
    width: 14,
    unit: "MΩ",
    format: "#,##0.#",
    formula: (ref, { insulation: { correction, baseC } }) =>
      correction === "none"
        ? `IF(${blank(ref("reading"))},"",IFERROR(${gear("IRCORRECT", ref("reading"), baseC, '"none"', baseC)},"${NOT_CORRECTED}"))`
        : `IF(OR(${blank(ref("reading"))},${blank(ref("temperature"))}),"",IFERROR(${gear("IRCORRECT", ref("reading"), ref("temperature"), quoted(correction), baseC)},"${NOT_CORRECTED}"))`,
    value: (row, { insulation: { correction, baseC } }) => {
      const reading = quantity(row.reading, "MΩ");
      if (isBlank(row.reading)) return null;
      if (correction !== "none" && isBlank(row.temperature)) return null;
      if (!reading) return NOT_CORRECTED;
      const temperature = correction === "none" ? baseC : exactly(row.temperature, "°C");
      if (temperature === undefined) return NOT_CORRECTED;
      const corrected = insulationCorrect(reading.value, temperature, correction, baseC);
      return corrected.ok
        ? bounded({ value: corrected.value, bound: reading.bound })
        : NOT_CORRECTED;
    },
    working: (row, { insulation: { correction, baseC } }) => {
      const reading = quantity(row.reading, "MΩ");
      if (!reading || isBlank(row.corrected) || row.corrected === NOT_CORRECTED) return "";
      if (correction === "none") return `${figure(bounded(reading))} MΩ as read, not corrected`;
      const factor = insulationCorrect(
        1,
        Number(exactly(row.temperature, "°C")),
        correction,
        baseC,
      );
      return factor.ok
        ? `${figure(bounded(reading))} MΩ × ${figure(factor.value)} (${correction}, ${figure(row.temperature)} °C to ${baseC} °C) = ${figure(row.corrected)} MΩ`
        : "";
    },
  },
  {
    id: "minimum",
    header: "Minimum MΩ",
    role: "limit",
    width: 11,
    unit: "MΩ",
    format: "#,##0.#",
    own: ownMinimum,
    formula: (ref, lineup) =>
      `IFERROR(${gear("IRMINIMUM", ref("ratedkV"), quoted(lineup.basis))},"")`,
    value: (row, lineup) => limitOf(standardMinimum(row, lineup)),
  },
  {
    id: "fallen",
    header: "Asks below MΩ",
    role: "computed",
    width: 11,
    unit: "MΩ",
    format: "#,##0.#",
    help: "After the withstand test: a tenth of the reading before it, and at most ten times the minimum. Below it the result waits for an explanation.",
    // AGGREGATE compares names as they are; SUMIFS would read a leading "=" as an operator.
    formula: (ref) => {
      const same = [
        ...PLACE.map((id) => `(${ref.all(id)}=${ref(id)})`),
        `(${ref.all("stage")}="${BEFORE}")`,
        `(${ref.all("corrected")}>0)`,
      ];
      const before = `_xlfn.AGGREGATE(15,6,${ref.all("corrected")}/(${same.join("*")}),1)`;
      return `IF(AND(${ref("stage")}="${AFTER}",ISNUMBER(${ref("corrected")}),ISNUMBER(${ref("minimum")})),IFERROR(MIN(${before}*${fallenInsulation.value},${ref("minimum")}*${farAboveMinimum.value}),""),"")`;
    },
    survey: lowestBefore,
    value: (row, _lineup, lowest) => {
      const before = lowest.get(placeOf(row));
      const { corrected, minimum, stage } = row;
      return String(stage ?? "").toLowerCase() === AFTER &&
        typeof corrected === "number" &&
        typeof minimum === "number" &&
        before !== undefined
        ? Math.min(before * fallenInsulation.value, minimum * farAboveMinimum.value)
        : null;
    },
    working: (row) =>
      workedOut(
        row.fallen,
        `less of ${fallenInsulation.value} × the reading before and ${farAboveMinimum.value} × ${onPaper(row.minimum)} MΩ`,
        "MΩ",
      ),
  },
  sources((row, lineup) => [
    ["minimum", sourceOf(ownMinimum(row, lineup) ?? standardMinimum(row, lineup))],
    ["test V", limitSource(testVoltage, row, lineup)],
    ["index", sourceOf(fallingIndex)],
  ]),
  {
    id: "absorption",
    header: "DAR",
    role: "computed",
    width: 7,
    format: "0.00",
    help: "R 60 s over R 30 s. It informs; it does not accept switchgear.",
    formula: (ref) =>
      `IF(OR(${blank(ref("r30s"))},${blank(ref("reading"))}),"",IFERROR(${gear("ABSORPTION", ref("r30s"), ref("reading"))},"n/a"))`,
    value: ratio(absorptionRatio, "r30s", "reading"),
    working: ratioWorking("absorption", "r30s", "reading"),
  },
  {
    id: "polarization",
    header: "PI",
    role: "computed",
    width: 36,
    format: "0.00",
    help: "R 10 min over R 1 min. It informs; it does not accept switchgear.",
    formula: (ref) =>
      `IF(OR(${blank(ref("reading"))},${blank(ref("r10min"))}),"",IFERROR(${gear("POLARIZATION", ref("reading"), ref("r10min"))},"n/a"))`,
    value: ratio(polarizationIndex, "reading", "r10min"),
    working: ratioWorking("polarization", "reading", "r10min"),
  },
  {
    id: "falling",
    header: "Least index",
    role: "computed",
    width: 8,
    format: "0.00",
    help: `The lesser of DAR and PI, up to ${indexUpTo.value} MΩ: above that both say nothing.`,
    formula: (ref) => {
      const [first, second] = ["absorption", "polarization"].map(ref);
      return `IF(AND(ISNUMBER(${ref("corrected")}),N(${ref("corrected")})<=${indexUpTo.value},OR(ISNUMBER(${first}),ISNUMBER(${second}))),MIN(IF(ISNUMBER(${first}),${first},${second}),IF(ISNUMBER(${second}),${second},${first})),"")`;
    },
    value: ({ corrected, absorption, polarization }) => {
      const indices = [absorption, polarization].filter((one) => typeof one === "number");
      return typeof corrected === "number" && corrected <= indexUpTo.value && indices.length > 0
        ? Math.min(...indices)
        : null;
    },
    working: ({ absorption, polarization, falling }) =>
      typeof falling === "number" &&
      typeof absorption === "number" &&
      typeof polarization === "number"
        ? `less of ${figure(absorption)} and ${figure(polarization)} = ${figure(falling)}`
        : "",
  },
  {
    id: "fallingLeast",
    header: "Asks below",
    role: "limit",
    width: 8,
    help: "An insulation that falls by more than this while the voltage is held is giving way, or wet: the result waits for an explanation.",
    formula: () => String(fallingIndex.value),
    value: () => fallingIndex.value,
  },
  ...trail(),
];

/**
 * Insulation resistance of the main circuit: busbars of each section between phases and to earth,
 * each panel's circuit side to earth, and each breaker across its open poles; before and after the
 * withstand test.
 */
export const insulation: RecordKind<"insulation"> = {
  id: "insulation",
  alsoCalled: ["ir", "megohm"],
  role: "insulation",
  step: "insulation",
  sheet: "Insulation",
  table: "GearInsulation",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) => {
    const row = (object: string, part: string, combination: string, stage: string): Row => ({
      object,
      part,
      combination,
      stage,
      ratedkV: lineup.ratings.voltagekV,
    });
    return STAGES.flatMap((stage) => [
      ...busSections(lineup).flatMap((section) =>
        [...EARTHED, ...BETWEEN].map((combination) => row(section, "Busbar", combination, stage)),
      ),
      ...lineup.panels.flatMap(({ designation, breaker }) =>
        breaker
          ? [
              ...EARTHED.map((combination) => row(designation, "Circuit", combination, stage)),
              ...OPEN.map((combination) =>
                row(designation, deviceName(breaker), combination, stage),
              ),
            ]
          : [],
      ),
    ]);
  },
  after: [{ kind: "withstand", stage: "after" }],
  voidBy: {
    ...voidBy([
      "Circuit joint",
      "Main insulation",
      "Gas compartment",
      "Breaker pole",
      "Current transformer",
    ]),
    "Bus joint": SECTION,
  },
  accepted,
  enough,
  stress: [{ value: "testVoltage", limit: "testVoltageLeast", share: 0.1, givenOnly: true }],
  minutes: ({ reading }) => (isBlank(reading) ? 0 : chargedMinutes(1)),
  plot: { value: "corrected", limit: "minimum", unit: "MΩ", log: true },
};
