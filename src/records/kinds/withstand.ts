import { type AirRule, airFactor } from "../../engineering/airFactor";
import { dewMargin } from "../../engineering/dewPoint";
import { busSections } from "../../lineup/busbar";
import { decisive } from "../../lineup/decisive";
import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import type { Told } from "../../messages/told";
import type { Result } from "../../quantities/result";
import { type Criterion, sourceText } from "../../standards/criterion";
import { airFormulas } from "../../standards/iec60060-1.2010";
import { airRule } from "../../standards/iec62271-1.2017";
import { dryMargin, nearSaturation } from "../../standards/practice";
import { tidy } from "../../standards/tidy";
import { withstandTolerance } from "../../standards/withstandTolerance";
import {
  siteShareOf,
  type WithstandTest,
  withstandVoltage,
} from "../../standards/withstandVoltage";
import { blank, closing, gear, PHASES, quoted, trail } from "../columns/common";
import {
  appliedColumn,
  currentColumn,
  discharge,
  durationColumn,
} from "../columns/withstandColumns";
import { figure } from "../figure";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type Own,
  type RecordKind,
  type Row,
} from "../kind";
import { leastOf, limitOf, ownOf, sourceOf, sources } from "../limits";
import { secondsHeld } from "../minutes";
import { exactly } from "../quantity";
import { SECTION, voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const ownDuration = ownOf("withstand duration s");
const ownLevel = ownOf("withstand kV");

/** The level of the main circuit by the standards, as far as it decides. */
const standard = (lineup: Lineup, place: WithstandTest["place"]): Result<Criterion, Told> => {
  const { basis, purpose, editions, ratings, withstand } = lineup;
  return decisive(
    lineup,
    withstandVoltage(ratings.voltagekV, {
      basis,
      purpose,
      editions,
      place,
      wave: withstand.wave,
      part: "main",
    }),
  );
};

/** The share of the plate's level that is tested on site; a plate gives a level for alternating voltage alone. */
const platekV = ({ basis, ratings, withstand }: Lineup): OwnLimit | undefined => {
  const plate = ratings.powerFrequencykV;
  if (plate === undefined || withstand.wave !== "AC") return undefined;
  const share = siteShareOf[basis];
  return {
    from: "maker",
    value: tidy(plate * share.value),
    document: `rating plate, ${share.value * 100} % of ${plate} kV, ${sourceText(share.source)}`,
  };
};

/** What the project or maker asks for on site, else what follows from the plate. */
const ownVoltage: Own = Object.assign(
  (row: Row, lineup: Lineup) => ownLevel(row, lineup) ?? platekV(lineup),
  { quantities: ownLevel.quantities },
);

/** How the plate's level and the standard's stand to each other. */
const crossCheck = (lineup: Lineup): string => {
  const { powerFrequencykV: plate } = lineup.ratings;
  const table = standard({ ...lineup, withstand: { ...lineup.withstand, wave: "AC" } }, "factory");
  if (plate === undefined || !table.ok) return "";
  const { value, source } = table.value;
  return value === plate
    ? `; the table has ${value} kV as well`
    : `; the table has ${value} kV (${sourceText(source)}): the plate decides`;
};

/** The rated level, above which the insulation is overstressed: the plate's, else the standard's where nobody gives a voltage of his own. */
const ratedLevel = (row: Row, lineup: Lineup): CellValue => {
  const { ratings, withstand } = lineup;
  if (withstand.wave === "AC" && ratings.powerFrequencykV !== undefined)
    return ratings.powerFrequencykV;
  if (ownLevel(row, lineup)) return NOT_APPLICABLE;
  return limitOf(standard(lineup, "factory")) ?? NOT_APPLICABLE;
};

/** The rule by which a voltage is corrected to the air: that of the switchgear standard as far as it goes. */
const ruleOf = ({ basis, ratings, withstand }: Lineup): AirRule => {
  if (basis !== "IEC" || ratings.voltagekV > airRule.ratedMostkV) return "g";
  return (withstand.parallelInternal ?? true) ? "parallel" : "switchgear";
};

const NOT_JUDGED = "not judged";

const numberCell = (found: { ok: true; value: number } | { ok: false }) =>
  found.ok ? found.value : NOT_JUDGED;

const tolerance = ({ withstand }: Lineup) => withstandTolerance(withstand.seconds).value;

const airSource = (lineup: Lineup): string =>
  lineup.withstand.gapM === undefined
    ? "not corrected: the project asks for none"
    : ruleOf(lineup) === "g"
      ? sourceText(airFormulas)
      : sourceText(airRule.source);

const accepted: readonly Comparison[] = [];
const enough: readonly Comparison[] = [
  { value: "applied", limit: "leastkV", unit: "kV", sense: "least" },
  {
    value: "applied",
    limit: "mostkV",
    unit: "kV",
    sense: "most",
    tolerance: 0.01,
    excusable: true,
  },
  { value: "duration", limit: "durationLeast", unit: "s", sense: "least" },
  { value: "dewMargin", limit: "dewLeast", sense: "least", excusable: true },
];

const columns: readonly Column[] = [
  { id: "object", header: "Panel or section", role: "key", width: 15 },
  { id: "part", header: "Part", role: "key", width: 13 },
  { id: "phase", header: "Phase", role: "key", width: 7 },
  { id: "ratedkV", header: "Rated kV", role: "given", width: 6, unit: "kV" },
  {
    id: "basekV",
    header: "Site value kV",
    role: "limit",
    width: 9,
    unit: "kV",
    format: "0.0##",
    own: ownVoltage,
    formula: (_ref, lineup) => String(limitOf(standard(lineup, "site")) ?? '""'),
    value: (_row, lineup) => limitOf(standard(lineup, "site")),
  },
  sources((row, lineup) => [
    [
      "voltage",
      `${sourceOf(ownVoltage(row, lineup) ?? standard(lineup, "site"))}${crossCheck(lineup)}`,
    ],
    ["air", airSource(lineup)],
    ["tolerance", sourceText(withstandTolerance(lineup.withstand.seconds).source)],
    ["duration", sourceOf(ownDuration(row, lineup)) || "lineup"],
  ]),
  {
    id: "temperature",
    header: "Air °C",
    takesFirst: "air",
    role: "entry",
    width: 8,
    unit: "°C",
    accepts: { type: "number", least: -45, most: 60 },
    need: "condition",
  },
  {
    id: "pressure",
    header: "Pressure kPa",
    role: "entry",
    width: 9,
    unit: "kPa",
    accepts: { type: "number", least: 40, most: 120 },
    need: "condition",
    needed: (_row, lineup) => lineup.withstand.gapM !== undefined,
    help: "Barometer on site, not reduced to sea level.",
  },
  {
    id: "humidity",
    header: "Humidity %",
    role: "entry",
    width: 10,
    unit: "%",
    accepts: { type: "number", least: 0, most: 100 },
    need: "condition",
  },
  {
    id: "surface",
    header: "Surface °C",
    role: "entry",
    width: 9,
    unit: "°C",
    accepts: { type: "number", least: -45, most: 80 },
    need: "condition",
    needed: ({ dewLeast }) => dewLeast !== NOT_APPLICABLE,
    help: "Of the coldest insulation surface; a test on a surface at or below the dew point is none.",
  },
  {
    id: "dewMargin",
    header: "Above dew K",
    role: "computed",
    width: 9,
    format: "0.0",
    formula: (ref) =>
      `IF(OR(${blank(ref("surface"))},${blank(ref("temperature"))},${blank(ref("humidity"))}),"",IFERROR(${gear("DEWMARGIN", ref("surface"), ref("temperature"), ref("humidity"))},"not judged"))`,
    value: (row) => {
      if ([row.surface, row.temperature, row.humidity].some(isBlank)) return null;
      const surface = exactly(row.surface, "°C");
      const temperature = exactly(row.temperature, "°C");
      const humidity = exactly(row.humidity, "%");
      return surface === undefined || temperature === undefined || humidity === undefined
        ? "not judged"
        : numberCell(dewMargin(surface, temperature, humidity));
    },
    working: ({ surface, temperature, humidity, dewMargin: margin }) => {
      const cold = exactly(surface, "°C");
      return typeof margin === "number" && cold !== undefined
        ? `surface ${figure(cold)} °C − dew point ${figure(cold - margin)} °C (air ${figure(temperature)} °C, ${figure(humidity)} %) = ${figure(margin)} K`
        : "";
    },
  },
  {
    id: "dewLeast",
    header: "Minimum K",
    role: "limit",
    width: 7,
    format: "0.0",
    own: leastOf("surface above dew point K"),
    help: "A surface at or below the dew point is wet. n/a where the air is so dry that the surface's temperature may stay unrecorded.",
    formula: (ref) =>
      `IF(AND(${blank(ref("surface"))},TRIM(${ref("temperature")})<>"",TRIM(${ref("humidity")})<>""),IF(IFERROR(${gear("DEWMARGIN", ref("temperature"), ref("temperature"), ref("humidity"))},0)>=${nearSaturation.value},${quoted(NOT_APPLICABLE)},${dryMargin.value}),${dryMargin.value})`,
    value: ({ surface, temperature, humidity }) => {
      if (!isBlank(surface)) return dryMargin.value;
      const [air, percent] = [exactly(temperature, "°C"), exactly(humidity, "%")];
      const margin =
        air === undefined || percent === undefined ? undefined : dewMargin(air, air, percent);
      return margin?.ok && margin.value >= nearSaturation.value ? NOT_APPLICABLE : dryMargin.value;
    },
  },
  {
    id: "airFactor",
    header: "Air factor",
    role: "computed",
    width: 8,
    format: "0.000",
    help: "Correction to the air of the day; 1 where the project asks for none.",
    formula: (ref, lineup) => {
      const { gapM, wave } = lineup.withstand;
      if (gapM === undefined) return "1";
      return `IF(OR(${["temperature", "pressure", "humidity", "basekV"].map((id) => blank(ref(id))).join(",")}),"",IFERROR(${gear("AIRFACTOR", ref("temperature"), ref("pressure"), ref("humidity"), ref("basekV"), gapM, quoted(wave), quoted(ruleOf(lineup)))},"${NOT_JUDGED}"))`;
    },
    value: (row, lineup) => {
      const { gapM, wave } = lineup.withstand;
      if (gapM === undefined) return 1;
      if ([row.temperature, row.pressure, row.humidity, row.basekV].some(isBlank)) return null;
      const temperature = exactly(row.temperature, "°C");
      const pressure = exactly(row.pressure, "kPa");
      const humidity = exactly(row.humidity, "%");
      const testkV = exactly(row.basekV, "kV");
      if (
        temperature === undefined ||
        pressure === undefined ||
        humidity === undefined ||
        testkV === undefined
      )
        return NOT_JUDGED;
      const rule = ruleOf(lineup);
      return numberCell(
        airFactor({ temperature, pressure, humidity, testkV, gap: gapM, wave, rule }),
      );
    },
    working: ({ temperature, pressure, humidity, airFactor: factor }, lineup) =>
      lineup.withstand.gapM !== undefined && typeof factor === "number"
        ? `${ruleOf(lineup) === "g" ? "k1 · k2 of IEC 60060-1" : "k1 · k2 with m and w of IEC 62271-1"} at ${figure(temperature)} °C, ${figure(pressure)} kPa, ${figure(humidity)} %, ${lineup.withstand.gapM} m = ${figure(factor)}`
        : "",
  },
  {
    id: "required",
    header: "Required kV",
    role: "computed",
    side: "least",
    width: 9,
    unit: "kV",
    format: "0.0##",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("basekV")}),ISNUMBER(${ref("airFactor")})),${ref("basekV")}*${ref("airFactor")},"")`,
    value: (row) =>
      typeof row.basekV === "number" && typeof row.airFactor === "number"
        ? row.basekV * row.airFactor
        : null,
    working: ({ basekV, airFactor: factor, required }) =>
      typeof required === "number"
        ? `${figure(basekV)} kV × ${figure(factor)} = ${figure(required)} kV`
        : "",
  },
  {
    id: "leastkV",
    header: "Minimum kV",
    role: "computed",
    width: 9,
    unit: "kV",
    format: "0.0##",
    help: "Required less the tolerance of the test voltage.",
    formula: (ref, lineup) =>
      `IF(ISNUMBER(${ref("required")}),${ref("required")}*${1 - tolerance(lineup)},"")`,
    value: ({ required }, lineup) =>
      typeof required === "number" ? required * (1 - tolerance(lineup)) : null,
    working: ({ required, leastkV }, lineup) =>
      typeof leastkV === "number"
        ? `${figure(required)} kV − ${tolerance(lineup) * 100} % = ${figure(leastkV)} kV`
        : "",
  },
  {
    id: "mostkV",
    header: "Rated level kV",
    role: "limit",
    width: 9,
    unit: "kV",
    format: "0.0##",
    help: "Above its rated level the insulation is overstressed: the maker is asked before anyone signs.",
    value: ratedLevel,
  },
  {
    id: "durationLeast",
    header: "Required s",
    role: "limit",
    width: 9,
    unit: "s",
    own: ownDuration,
    formula: (_ref, lineup) => String(lineup.withstand.seconds),
    value: (_row, lineup) => lineup.withstand.seconds,
  },
  appliedColumn({ wave: "of the lineup", help: "r.m.s. for AC." }),
  durationColumn(90000),
  currentColumn(),
  discharge,
  ...trail(),
];

/** Withstand of the main circuit on site: each phase in turn, the other two earthed. */
export const withstand: RecordKind<"withstand"> = {
  id: "withstand",
  alsoCalled: ["hi ?pot", "hv", "high voltage", "power frequency", "dielectric", "ac test"],
  role: "withstand",
  phasesToEarth: true,
  step: "withstand",
  sheet: "Withstand",
  table: "GearWithstand",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) => {
    const rows = (object: string, part: string): Row[] =>
      PHASES.map((phase) => ({ object, part, phase, ratedkV: lineup.ratings.voltagekV }));
    return [
      ...busSections(lineup).flatMap((section) => rows(section, "Busbar")),
      ...lineup.panels.flatMap(({ designation, breaker }) =>
        breaker ? rows(designation, "Circuit") : [],
      ),
    ];
  },
  after: [{ kind: "insulation", of: "before" }, { kind: "gas" }],
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
  minutes: ({ duration }) => secondsHeld(duration),
  accepted,
  enough,
  plot: { value: "applied", limit: "required", unit: "kV", log: false },
};
