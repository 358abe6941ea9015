import { type GasReference, gasPressure } from "../../engineering/gasPressure";
import { decisive } from "../../lineup/decisive";
import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import { type Breaker, breakerOf, deviceName, plateLimit } from "../../lineup/plate";
import { answer } from "../../quantities/result";
import { leakRate } from "../../standards/iec62271-1.2017";
import { gasContacts, gasExcess, gasShortfall } from "../../standards/practice";
import { tidy } from "../../standards/tidy";
import { answered, blank, closing, gear, NOT_CORRECTED, NOT_READ, trail } from "../columns/common";
import { figure } from "../figure";
import {
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type RecordKind,
  type Row,
} from "../kind";
import { limitOf, mostOf, ownOf, plateOr, sourceOf, sources, stricterOf, TO_TYPE } from "../limits";
import { workedOut } from "../onPaper";
import { exactly } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Gas = NonNullable<Breaker["gas"]>;
const gasOf = (row: Row, lineup: Lineup): Gas | undefined =>
  breakerOf(lineup, String(row.object))?.gas;
const plate = (pick: (gas: Gas) => number | undefined) => (row: Row, lineup: Lineup) =>
  plateLimit(lineup, String(row.object), ({ gas }) => gas && pick(gas));
const filling = plateOr(
  plate(({ fillingMPa }) => fillingMPa),
  ownOf("SF6 filling MPa"),
);
const alarm = plateOr(
  plate(({ alarmMPa }) => alarmMPa),
  ownOf("SF6 alarm MPa"),
);
const lockout = plateOr(
  plate(({ lockoutMPa }) => lockoutMPa),
  ownOf("SF6 lockout MPa"),
);
const maximum = stricterOf(
  "most",
  plate(({ maximumMPa }) => maximumMPa),
  mostOf("SF6 maximum MPa"),
);
const toleranceOfProject = mostOf("SF6 tolerance kPa");

const isGauge = (row: Row) => String(row.reference ?? "").toLowerCase() !== "absolute";

/** The plate's or monitor's own tolerance, MPa; none where neither is known. */
const ownTolerance = (row: Row, lineup: Lineup): OwnLimit | undefined => {
  const { tolerancekPa, monitorClass, monitorSpanMPa } = gasOf(row, lineup) ?? {};
  const document = breakerOf(lineup, String(row.object))?.document ?? "breaker's data sheet";
  if (tolerancekPa !== undefined)
    return { from: "maker", value: tidy(tolerancekPa / KILO), document };
  const asked = toleranceOfProject(row, lineup);
  if (asked) return { ...asked, value: tidy(asked.value / KILO) };
  return monitorClass !== undefined && monitorSpanMPa !== undefined
    ? {
        from: "maker",
        value: tidy((monitorClass / 100) * monitorSpanMPa),
        document: `monitor of class ${monitorClass}, ${monitorClass} % of its span of ${monitorSpanMPa} MPa`,
      }
    : undefined;
};

/** kPa to MPa. */
const KILO = 1000;

/** Standard atmosphere that a gauge pressure stands above, MPa. */
const ATMOSPHERE = 0.1013;

const TOLERANCES = { shortfall: gasShortfall, excess: gasExcess } as const;

/**
 * A limit that lies a tolerance from another: the plate's or monitor's own, else a share of the absolute
 * pressure. A share of a gauge pressure would be nothing at low-pressure gear.
 */
const besideLimit = (id: string, header: string, share: keyof typeof TOLERANCES): Column => {
  const of = "filling";
  const { value: fraction } = TOLERANCES[share];
  const [side, sign] = share === "excess" ? [1, "+"] : [-1, "-"];
  return {
    id,
    header,
    role: "limit",
    width: 9,
    unit: "MPa",
    format: "0.000",
    help: "The plate's pressure and the tolerance of gauge, monitor and thermometer.",
    own: Object.assign(
      (row: Row, lineup: Lineup): OwnLimit | undefined => {
        const pressure = plateOf[of](row, lineup);
        if (pressure === undefined) return undefined;
        const most = share === "excess" ? maximum(row, lineup) : undefined;
        if (most !== undefined) return most;
        const tolerance = share === "excess" ? undefined : ownTolerance(row, lineup);
        return tolerance && { ...tolerance, value: tidy(pressure.value + side * tolerance.value) };
      },
      { quantities: share === "excess" ? maximum.quantities : toleranceOfProject.quantities },
    ),
    formula: (ref) =>
      `IF(ISNUMBER(${ref(of)}),${ref(of)}${sign}${fraction}*(${ref(of)}+IF(${ref("reference")}="absolute",0,${ATMOSPHERE})),${ref(of)}&"")`,
    value: (row) => {
      const pressure = row[of];
      return typeof pressure === "number"
        ? pressure + side * (fraction * (pressure + (isGauge(row) ? ATMOSPHERE : 0)))
        : isBlank(pressure)
          ? null
          : (pressure ?? null);
    },
  };
};

const plateOf = { filling, alarm, lockout } as const;

/** Worst first, so that a finding names the lowest pressure that is not reached. */
const accepted: readonly Comparison[] = [
  { value: "corrected", limit: "lockout", unit: "MPa", sense: "least", excusable: true },
  { value: "corrected", limit: "alarm", unit: "MPa", sense: "least", excusable: true },
  { value: "corrected", limit: "fillingLeast", unit: "MPa", sense: "least" },
  { value: "corrected", limit: "fillingMost", unit: "MPa", sense: "most" },
  ...["alarmOff", "lockoutOff"].map(
    (value): Comparison => ({
      value,
      limit: "contactsMost",
      lenient: "contactsWrong",
      unit: "MPa",
      sense: "within",
      excusable: true,
    }),
  ),
  // An open gauge that reads further off than a contact may work: the points have to be those of a compensated monitor.
  {
    value: "gaugeOff",
    limit: "contactsMost",
    unit: "MPa",
    sense: "most",
    when: "gaugeOff",
    excusable: true,
    asks: true,
  },
  { value: "leak", limit: "leakMost", unit: "%", sense: "most", when: "leak" },
];

/** How far an open gauge reads off the plate's pressures for the air of the site, MPa; none for absolute pressures. */
const gaugeOff = (row: Row): number | null => {
  const barometer = exactly(row.pressure, "kPa");
  return isGauge(row) && barometer !== undefined ? Math.abs(ATMOSPHERE - barometer / KILO) : null;
};

const ownLeak = mostOf("SF6 leak rate % a year");

const standardLeak = (lineup: Lineup) => decisive(lineup, answer(leakRate));

const contactPoint = (id: string, header: string, what: "alarm" | "lockout"): Column => ({
  id,
  header,
  role: "entry",
  width: 10,
  unit: "MPa",
  format: "0.00#",
  accepts: { type: "number", least: 0, most: 2 },
  need: "condition",
  unless: what,
  help: `Falling pressure, brought to 20 °C, at which the ${what} contact of the monitor worked; by the maker's test valve or a calibrated rig.`,
});

const limit = (id: keyof typeof plateOf, header: string): Column => ({
  id,
  header,
  role: "limit",
  width: 9,
  unit: "MPa",
  format: "0.00#",
  own: plateOf[id],
  help: "At 20 °C, by the plate; n/a for a sealed compartment that has no such contact.",
  value: (row, lineup) => (gasOf(row, lineup)?.sealed ? NOT_APPLICABLE : (row[id] ?? null)),
});

/** How far from its pressure a contact worked. */
const offPoint = (id: string, header: string, point: "alarm" | "lockout"): Column => ({
  id,
  header,
  role: "computed",
  width: 9,
  unit: "MPa",
  format: "0.000",
  formula: (ref) =>
    `IF(OR(${blank(ref(`${point}At`))},NOT(ISNUMBER(${ref(point)}))),"",IFERROR(${gear("QUANTITY", ref(`${point}At`), '"MPa"')}-${ref(point)},"${NOT_READ}"))`,
  value: (row) => {
    const [at, pressure] = [row[`${point}At`], row[point]];
    if (isBlank(at) || typeof pressure !== "number") return null;
    const worked = exactly(at, "MPa");
    return worked === undefined ? NOT_READ : worked - pressure;
  },
  working: (row) =>
    typeof row[id] === "number"
      ? `${figure(row[`${point}At`])} MPa − ${figure(row[point])} MPa = ${figure(row[id])} MPa`
      : "",
});

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Gas compartment", role: "key", width: 16 },
  {
    id: "reference",
    header: "Pressures are",
    role: "given",
    width: 9,
    help: "Gauge (above the atmosphere) or absolute, as on the plate; the reading likewise.",
  },
  {
    id: "reading",
    header: "Pressure MPa",
    role: "entry",
    width: 10,
    unit: "MPa",
    accepts: { type: "reading" },
    need: "reading",
    help: 'A number in MPa, or as written: "6.5 bar". A monitor that is compensated shows it as at 20 °C: then write 20 as gas temperature and 101.3 as barometer.',
  },
  {
    id: "temperature",
    header: "Gas °C",
    role: "entry",
    takesFirst: "temperature",
    width: 8,
    unit: "°C",
    accepts: { type: "number", least: -50, most: 80 },
    need: "condition",
    help: "Of the gas: let the breaker stand until it has the temperature of its surroundings.",
  },
  {
    id: "pressure",
    header: "Barometer kPa",
    role: "entry",
    width: 10,
    unit: "kPa",
    accepts: { type: "number", least: 50, most: 110 },
    need: "condition",
    needed: isGauge,
    help: "On site, not reduced to sea level; a gauge reads above it.",
  },
  {
    id: "corrected",
    header: "At 20 °C MPa",
    role: "computed",
    width: 9,
    unit: "MPa",
    format: "0.000",
    formula: (ref) =>
      `IF(OR(${blank(ref("reading"))},${blank(ref("temperature"))}),"",IF(${ref("reference")}="absolute",IFERROR(${gear("GASPRESSURE", ref("reading"), ref("temperature"), 20, '"absolute"')},"${NOT_CORRECTED}"),IF(${blank(ref("pressure"))},"",IFERROR(${gear("GASPRESSURE", ref("reading"), ref("temperature"), 20, '"gauge"', ref("pressure"))},"${NOT_CORRECTED}"))))`,
    value: (row) => {
      const gauge = isGauge(row);
      if (isBlank(row.reading) || isBlank(row.temperature)) return null;
      if (gauge && isBlank(row.pressure)) return null;
      const pressure = exactly(row.reading, "MPa");
      const temperature = exactly(row.temperature, "°C");
      const barometer = gauge ? exactly(row.pressure, "kPa") : undefined;
      if (pressure === undefined || temperature === undefined) return NOT_CORRECTED;
      if (gauge && barometer === undefined) return NOT_CORRECTED;
      const reference: GasReference = gauge ? "gauge" : "absolute";
      const brought = gasPressure({ pressure, temperature, to: 20, reference, barometer });
      return brought.ok ? brought.value : NOT_CORRECTED;
    },
    working: ({ reading, temperature, pressure, corrected, reference }) =>
      typeof corrected === "number"
        ? `${figure(reading)} MPa ${reference} at ${figure(temperature)} °C${isBlank(pressure) ? "" : ` and ${figure(pressure)} kPa`}, density kept, is ${figure(corrected)} MPa at 20 °C`
        : "",
  },
  limit("filling", "Filling MPa"),
  besideLimit("fillingLeast", "Minimum MPa", "shortfall"),
  besideLimit("fillingMost", "Maximum MPa", "excess"),
  limit("alarm", "Alarm MPa"),
  limit("lockout", "Lockout MPa"),
  contactPoint("alarmAt", "Alarm came at MPa", "alarm"),
  offPoint("alarmOff", "Alarm off by MPa", "alarm"),
  contactPoint("lockoutAt", "Lockout came at MPa", "lockout"),
  offPoint("lockoutOff", "Lockout off by MPa", "lockout"),
  {
    id: "contactsMost",
    header: "Contacts ± MPa",
    role: "limit",
    width: 9,
    unit: "MPa",
    format: "0.000",
    own: Object.assign(
      (row: Row, lineup: Lineup) =>
        alarm(row, lineup) === undefined ? undefined : ownTolerance(row, lineup),
      { quantities: toleranceOfProject.quantities },
    ),
    help: "How far a contact may work from its pressure; n/a for a sealed compartment without contacts.",
    formula: (ref) =>
      `IF(ISNUMBER(${ref("alarm")}),${gasContacts.value}*(${ref("alarm")}+IF(${ref("reference")}="absolute",0,${ATMOSPHERE})),${ref("alarm")}&"")`,
    value: (row) =>
      typeof row.alarm === "number"
        ? gasContacts.value * (row.alarm + (isGauge(row) ? ATMOSPHERE : 0))
        : isBlank(row.alarm)
          ? null
          : (row.alarm ?? null),
  },
  {
    id: "gaugeOff",
    header: "Open gauge off by MPa",
    role: "computed",
    width: 9,
    unit: "MPa",
    format: "0.000",
    help: "What the air of the site adds to an open gauge. Where it is more than a contact may work off, write the points of a compensated monitor, with 101.3 as barometer.",
    formula: (ref) =>
      `IF(OR(${ref("reference")}="absolute",${blank(ref("pressure"))},AND(${blank(ref("alarmAt"))},${blank(ref("lockoutAt"))})),"",IFERROR(ABS(${ATMOSPHERE}-${gear("QUANTITY", ref("pressure"), '"kPa"')}/${KILO}),""))`,
    value: (row) => (isBlank(row.alarmAt) && isBlank(row.lockoutAt) ? null : gaugeOff(row)),
    working: (row) =>
      workedOut(row.gaugeOff, `${ATMOSPHERE} MPa − ${figure(row.pressure)} kPa ÷ ${KILO}`, "MPa"),
  },
  {
    id: "contactsWrong",
    header: "Contacts fail beyond ± MPa",
    role: "limit",
    width: 9,
    unit: "MPa",
    format: "0.000",
    help: "Between this and the tolerance the gauge that the points were read on decides.",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("gaugeOff")}),ISNUMBER(${ref("contactsMost")})),IF(${ref("gaugeOff")}>${ref("contactsMost")},${ref("gaugeOff")}+${ref("contactsMost")},${ref("contactsMost")}),"")`,
    value: ({ gaugeOff: off, contactsMost }) => {
      if (typeof off !== "number" || typeof contactsMost !== "number") return null;
      return off > contactsMost ? off + contactsMost : contactsMost;
    },
  },
  answered("tight", "Leak search", ["No leak found", "Leak found"], {
    width: 13,
    help: "With a detector at every joint, valve and pipe, as the maker says.",
  }),
  {
    id: "leak",
    header: "Leak rate % a year",
    role: "entry",
    width: 9,
    unit: "%",
    accepts: { type: "number", least: 0, most: 100 },
    help: "Where it was measured, by accumulation under a hood or by the fall of pressure over a long time; may stay blank.",
  },
  {
    id: "leakMost",
    header: "Maximum % a year",
    role: "limit",
    width: 9,
    unit: "%",
    own: ownLeak,
    formula: (_ref, lineup) => String(limitOf(standardLeak(lineup)) ?? '""'),
    value: (_row, lineup) => limitOf(standardLeak(lineup)),
  },
  sources((row, lineup) => [
    ["filling, alarm, lockout", sourceOf(filling(row, lineup)) || TO_TYPE],
    ["below filling, contacts", sourceOf(ownTolerance(row, lineup) ?? gasShortfall)],
    ["above filling", sourceOf(maximum(row, lineup) ?? gasExcess)],
    ["leak rate", sourceOf(ownLeak(row, lineup) ?? standardLeak(lineup))],
  ]),
  ...trail(),
];

/** Pressure of the SF6 of each breaker, brought to 20 °C. */
export const gas: RecordKind<"gas"> = {
  id: "gas",
  alsoCalled: ["sf6"],
  step: "devices",
  sheet: "Gas",
  table: "GearGas",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, breaker }): Row[] =>
      breaker?.gas
        ? [
            {
              object: designation,
              part: deviceName(breaker),
              reference: breaker.gas.pressure,
            },
          ]
        : [],
    ),
  voidBy: voidBy(["Gas compartment"]),
  accepted,
  enough: [],
  plot: { value: "corrected", limit: "filling", unit: "MPa", log: false },
};
