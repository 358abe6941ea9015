import type { Lineup } from "../../../src/lineup/lineup";
import { evaluate } from "../../../src/records/evaluate";
import type { CellValue, Row } from "../../../src/records/kind";
import { KINDS } from "../../../src/records/kinds";
import { type Plan, planFor } from "../../../src/sheets/plan/plan";
import { type Filler, SOUND } from "../../support/fill";
import { between, random, shown, spread } from "../../support/random";
import { COVERS } from "../sampleExports";

/**
 * What the invented crew recorded on the mesa lineup: a sound entry for every row before energization, and a
 * handful that are not sound.
 */
const DAY = 46_300; // 2026-10-05

const CREW = "Crew M (invented)";

/** Which instrument of the lineup a record is made with. */
const INSTRUMENTS: Readonly<Record<string, string>> = {
  GearDimensions: "LG-1",
  GearTorque: "TQ-1",
  GearEarthing: "DLRO-1",
  GearContact: "DLRO-1",
  GearCircuit: "DLRO-1",
  GearInsulation: "MEG-1",
  GearWithstand: "HIPOT-1",
  GearControl: "MEG-1; HIPOT-1",
  GearMechanism: "BA-1",
  GearTiming: "BA-1",
  GearMotion: "BA-1",
  GearUndervoltage: "BA-1",
  GearInterrupter: "HIPOT-1",
  GearBattery: "DM-1",
  GearCurrentTransformers: "RT-1",
  GearExcitation: "RT-1",
  GearCurrentLoop: "RT-1",
  GearVoltageTransformers: "RT-1",
  GearVoltageWinding: "RT-1",
  GearArrester: "MEG-1",
  GearMetering: "RT-1",
  GearProtection: "RT-1",
  GearStability: "RT-1",
  GearArcProtection: "RT-1",
  GearCable: "VLF-1",
  GearDissipation: "VLF-1",
  GearHeater: "DM-1",
};

/**
 * Days after the first, by record: installation and what is done dead, then insulation, withstand and the rest; the
 * battery is discharged on a day on which nothing else wants it.
 */
const WHEN: Readonly<Record<string, number>> = {
  GearDocuments: -21,
  GearPermits: -1,
  GearHandling: -20,
  GearInstallation: -9,
  GearDimensions: -9,
  GearTorque: -7,
  GearEarthing: -6,
  GearContact: -3,
  GearCircuit: -2,
  GearControl: -4,
  GearBattery: -3,
  GearMechanism: -5,
  GearTiming: -5,
  GearMotion: -5,
  GearUndervoltage: -5,
  GearCurrentTransformers: -4,
  GearExcitation: -4,
  GearCurrentLoop: -4,
  GearVoltageTransformers: -4,
  GearVoltageWinding: -4,
  GearWithstand: 2,
  GearInterrupter: 2,
  GearProtection: 1,
  GearSettingsHeld: 1,
  GearStability: 3,
  GearArcProtection: 3,
  GearCable: 6,
  GearDissipation: 6,
  GearFunction: 3,
};

/** Records that are kept under voltage, of which nothing is recorded yet. */
const LATER: ReadonlySet<string> = new Set([
  "GearPhasing",
  "GearRotation",
  "GearEnergization",
  "GearPartialDischarge",
]);

const HELD: Readonly<Record<string, number>> = {
  "Drawings, procedures and calibration": -21,
  "Busbar joints before they are covered": -7,
  "Release for the withstand test": 1,
  "Withstand test": 2,
  "Function tests": 3,
};

/** Where the mesa lineup asks for other values than a board of 12 kV and 110 V. */
const OWN: Readonly<Record<string, Filler>> = {
  GearDocuments: ({ approved }) => ({ found: approved ?? null }),
  GearPermits: ({ part }) => ({
    number: part === "Permit to work" ? "INV-PTW-31" : "INV-HVT-9",
    from: DAY - 21,
    to: DAY + 20,
  }),
  GearHandling: () => ({
    gear: "Bridge crane INV-C-1",
    capacity: 5000,
    gearDue: DAY + 90,
    condition: "Sound",
    indicator: "Not tripped",
  }),
  GearDimensions: ({ part }, next): Record<string, CellValue> => {
    if (String(part).startsWith("Clearance in front"))
      return { reading: shown(between(next, 1840, 1980), 0) };
    return String(part).startsWith("Clearance")
      ? {
          reading: shown(between(next, 920, 990), 0),
          least: 914,
          document: "E-120 rev 2 (invented)",
        }
      : { reading: shown(between(next, 0.3, 1.4), 1), most: 2, document: "INV-EM-15 (invented)" };
  },
  GearTorque: ({ required }, next) => ({
    applied: shown(Number(required) * between(next, 1, 1.03), 1),
    marked: "Yes",
    rechecked: "Yes",
  }),
  GearEarthing: ({ part }, next) => ({
    testCurrent: 10,
    reading:
      part === "Earth bar"
        ? shown(between(next, 0.0011, 0.0014), 5)
        : shown(between(next, 0.004, 0.02), 4),
  }),
  GearContact: ({ part, ratedA }, next) => ({
    testCurrent: 100,
    reading: String(part).startsWith("Joint")
      ? shown(between(next, 4.4, 5.6), 1)
      : shown(between(next, 24, 29) * (ratedA === 2000 ? 0.9 : 1), 1),
    temperature: 22,
  }),
  GearCircuit: (_row, next) => ({
    testCurrent: 100,
    reading: shown(between(next, 80, 86), 1),
    temperature: 22,
  }),
  GearInsulation: (_row, next) => ({
    testVoltage: 5000,
    reading: shown(spread(next, 60_000, 240_000), 0),
    temperature: shown(between(next, 21.6, 22.4), 1),
    humidity: shown(between(next, 33, 36), 0),
  }),
  GearWithstand: (_row, next) => ({
    temperature: 22,
    pressure: 92.1,
    humidity: 34,
    surface: 21.6,
    applied: shown(between(next, 27, 27.2), 1),
    duration: 60,
    current: shown(between(next, 2, 6), 1),
    discharge: "No",
  }),
  GearMechanism: () => ({
    closingLow: 100,
    closingHigh: 140,
    openingLow: 70,
    openingHigh: 140,
    charged: 7.5,
    counterBefore: 20,
    counterAfter: 32,
    made: 12,
  }),
  GearTiming: ({ operation }, next) => {
    const middle = operation === "closing" ? 61 : 34;
    const time = () => shown(middle + between(next, -0.6, 0.6), 1);
    return { controlV: 125, l1: time(), l2: time(), l3: time() };
  },
  GearMotion: ({ least, most }, next) => ({
    reading: shown(
      (typeof least === "number" ? 0.5 * (least + Number(most)) : 0.6 * Number(most)) *
        between(next, 0.95, 1.05),
      2,
    ),
  }),
  GearInterrupter: (_row, next) => ({
    wave: "AC",
    applied: 27,
    duration: 60,
    current: shown(between(next, 0.2, 0.5), 2),
    gap: "In full",
    discharge: "No",
  }),
  GearCurrentTransformers: (
    { ratedPrimary, ratedSecondary, burdenMost, windingMost, ...row },
    next,
  ) => ({
    method: "Current",
    primary: ratedPrimary ?? null,
    secondary: shown(Number(ratedSecondary) * between(next, 0.9985, 1.0015), 4),
    polarity: "As marked",
    // Measured at 22 °C, a fifth below what the plate gives for 75 °C.
    winding: shown(
      (typeof windingMost === "number" ? windingMost : 0.4) * between(next, 0.76, 0.81),
      4,
    ),
    temperature: 22,
    testVoltage: 1000,
    insulationRead: shown(spread(next, 2000, 9000), 0),
    burden:
      typeof burdenMost === "number"
        ? shown(burdenMost * burdenShare(row) + between(next, -0.3, 0.3), 1)
        : null,
  }),
  GearExcitation: ({ classVolts }, next) =>
    curveOf(Number(classVolts) * between(next, 0.8, 0.87), between(next, 0.9, 1.1)),
  GearCurrentLoop: ({ loopMost, ratedSecondary, ...row }, next) => ({
    loop: shown(
      (Number(loopMost) * burdenShare(row) + between(next, -0.5, 0.5)) /
        Number(ratedSecondary) ** 2,
      2,
    ),
    earth: "One point",
    demagnetized: "Demagnetized",
    links: "As drawn",
  }),
  GearVoltageTransformers: ({ ratedPrimary, ratedSecondary }, next) => ({
    primary: ratedPrimary ?? null,
    secondary: shown(Number(ratedSecondary) * between(next, 0.999, 1.001), 2),
    polarity: "As marked",
    testVoltage: 1000,
    insulationRead: shown(spread(next, 2000, 9000), 0),
    fuses: "To drawing",
    earth: "One point",
    burden: shown(between(next, 40, 90), 0),
  }),
  GearVoltageWinding: (_row, next) => ({
    testVoltage: 5000,
    primaryRead: shown(spread(next, 8000, 20_000), 0),
    temperature: 22,
    windingP: shown(between(next, 1300, 1340), 0),
    windingS: shown(between(next, 0.09, 0.093), 4),
  }),
  GearArrester: (_row, next) => ({
    insulationRead: shown(spread(next, 4000, 12_000), 0),
    earth: "Connected",
  }),
  GearBattery: () => ({
    current: 12.5,
    hours: 8.1,
    endVolts: 106.2,
    earthAlarm: "Given",
    chargerAlarm: "Given",
  }),
  GearProtection: ({ expected }, next) => ({
    reading: shown(Number(expected) * between(next, 0.985, 1.015), 4),
    trips: "Yes",
  }),
  GearStability: ({ asksSpill, asksstays }) => ({
    injected: 1000,
    shown: 996,
    angle: 0.5,
    ...(asksSpill ? { spill: 9 } : {}),
    polarity: "As drawn",
    ...(asksstays ? { stays: "Did not operate" } : { trips: "Tripped the breaker" }),
  }),
  GearArcProtection: (_row, next) => ({
    lit: "Seen by the unit",
    tripped: "As drawn",
    supervised: "Fault shown",
    reading: shown(between(next, 6.2, 8.4), 1),
  }),
  GearCable: (_row, next) => ({
    testVoltage: 5000,
    insulationRead: shown(spread(next, 9000, 40_000), 0),
    applied: 21,
    minutes: 30,
    current: shown(between(next, 0.4, 1.2), 2),
    discharge: "No",
  }),
  GearDissipation: (_row, next) => {
    const low = shown(between(next, 1, 1.3), 2);
    return {
      low,
      rated: shown(low + between(next, 0.05, 0.15), 2),
      high: shown(low + between(next, 0.3, 0.6), 2),
      deviation: shown(between(next, 0.01, 0.04), 3),
      screen: "Continuous",
    };
  },
  GearHeater: (_row, next) => ({
    supply: 121,
    current: shown(between(next, 1.02, 1.07), 2),
    switches: "As set",
  }),
};

/** What the circuit of a core and phase takes of its rated burden: the same in every record of it, 0.3 to 0.6. */
function burdenShare({ object, part, phase }: Row): number {
  const letters = [...`${object} ${part} ${phase}`];
  const sum = letters.reduce((all, letter) => (all * 31 + letter.charCodeAt(0)) % 997, 7);
  return 0.3 + (0.3 * sum) / 997;
}

/** Ten points of an excitation curve with its knee at this voltage, as a relaying core of 5 A takes them. */
function curveOf(knee: number, size: number): Record<string, number> {
  const shares = Array.from({ length: 10 }, (_, at) => 0.1 * 13.5 ** (at / 9));
  return Object.fromEntries(
    shares.flatMap((share, at) => [
      [`v${at + 1}`, shown(knee * share, 1)],
      [`a${at + 1}`, shown(size * (0.05 * share ** 0.7 + 0.1 * share ** 14), 5)],
    ]),
  );
}

/** Rows, by table and keys, that are not sound: what stands there instead. */
export const MESA_FAULTS: Readonly<Record<string, Readonly<Record<string, CellValue>>>> = {
  "GearContact 52-F2 Breaker 52 B": { reading: 62.4 },
  "GearInsulation 52-F4 Circuit B-E after": { reading: 3200 },
  "GearWithstand 52-F6 Circuit C": { applied: null },
  "GearTorque 52-F1 Ground bus": { marked: "No" },
  "GearTiming 52-M2 Breaker 52 opening": { l3: 38.1 },
  "GearCurrentTransformers 52-F5 CT-1 B": { polarity: "Reversed" },
  "GearProtection 52-F3 11-F3 51P 5 × pick-up": { reading: 4.61 },
  "GearHeater T-AUX SH-1": { current: 0 },
  "GearSettingsHeld 52-F6 11-F6 51P pick-up": { asLeft: 6 },
  "GearDocuments Lineup E-110": { found: "1" },
};

/** What a faulty pole shows in the path that it is part of. */
const MESA_ECHOES: typeof MESA_FAULTS = { "GearCircuit 52-F2 Main circuit B": { reading: 112.4 } };

const keysOf = (table: string, row: Row) =>
  [
    table,
    row.object,
    row.part,
    row.parameter ?? row.point ?? row.combination ?? row.pole ?? row.phase,
    row.stage,
  ]
    .filter((key) => key !== undefined && key !== null)
    .join(" ");

/** Cable tests of half an hour a phase: three cables a day, with what is set up and discharged between. */
const CABLE_TABLES: ReadonlySet<string> = new Set(["GearCable", "GearDissipation"]);
const CABLES_A_DAY = 3;

/** Who, when and with what, as far as the record asks; the panels in their order. */
const trail = (table: string, row: Row, panels: readonly string[]): Row => ({
  date:
    DAY +
    (row.stage === "after" ? 3 : row.part === COVERS ? 0 : (WHEN[table] ?? 0)) +
    (CABLE_TABLES.has(table) ? Math.floor(panels.indexOf(String(row.object)) / CABLES_A_DAY) : 0),
  by: CREW,
  ...(INSTRUMENTS[table] ? { instrument: INSTRUMENTS[table] } : {}),
});

const inspected = ({ part }: Row): Row => {
  const held = DAY + (HELD[String(part)] ?? 0);
  return {
    requested: held - 4,
    released: "Released",
    date: held,
    by: "Client's witness (invented)",
  };
};

/** The plan of the mesa lineup with what was recorded on it; without the rows that are not sound where none are given. */
export function mesaPlan(
  lineup: Lineup,
  odd: typeof MESA_FAULTS = { ...MESA_FAULTS, ...MESA_ECHOES },
): Plan {
  const next = random(1515);
  const plan = planFor(lineup);
  const panels = lineup.panels.map(({ designation }) => designation);
  const entered = (table: string, row: Row): Row => {
    if (LATER.has(table)) return {};
    if (table === "GearInspection") return inspected(row);
    const sound = OWN[table] ?? SOUND[table];
    if (!sound) return {};
    const keys = keysOf(table, row);
    return { ...sound(row, next), ...trail(table, row, panels), ...odd[keys] };
  };
  return {
    ...plan,
    sheets: plan.sheets.map((sheet) => {
      const kind = KINDS.find(({ table }) => table === sheet.table);
      if (!kind) return sheet;
      const evaluated = evaluate(kind, sheet.rows, lineup);
      return {
        ...sheet,
        rows: sheet.rows.map((row, at) => ({
          ...row,
          ...entered(sheet.table, evaluated[at] ?? row),
        })),
      };
    }),
  };
}
