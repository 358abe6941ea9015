import type { Lineup } from "../../src/lineup/lineup";
import type { CellValue, Row } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { type Plan, planFor } from "../../src/sheets/plan/plan";
import { between, pick, random, shown, spread } from "./random";

export type Filler = (row: Row, next: () => number) => Record<string, CellValue>;

const DAY = 46_340;
const signed = (day: number) => ({ date: day, by: "A. N. Other" });
const trail = (day: number) => ({ date: day, by: "A. N. Other", instrument: "X-1" });

/** When the usual inspection points are held, in days from the tests. */
const HELD: Readonly<Record<string, number>> = {
  "Drawings, procedures and calibration": -25,
  "Busbar joints before they are covered": -9,
  "Withstand test": 2,
  "Function tests": 0,
};

/** Latest revisions of the sample's drawings. */
const REVISIONS: Readonly<Record<string, string>> = {
  "INV-E-1001": "D",
  "INV-E-1010": "B",
  "INV-E-1044": "C",
  "INV-SPEC-011 (invented)": "C",
};
const isClearance = (part: CellValue | undefined) => String(part).startsWith("Clearance");

/** Entries of a sound lineup: every row passes. */
export const SOUND: Readonly<Record<string, Filler>> = {
  GearDocuments: ({ part }) => ({
    approved: REVISIONS[String(part)] ?? "A",
    found: REVISIONS[String(part)] ?? "A",
    ...signed(DAY - 30),
  }),
  GearPermits: ({ part }) => ({
    number: `P ${part}`,
    from: DAY - 30,
    to: DAY + 12,
    ...signed(DAY - 20),
  }),
  GearHandling: (_row, next) => ({
    mass: 800,
    gear: "Crane 1",
    capacity: shown(between(next, 2000, 3000), 0),
    gearDue: DAY + 100,
    condition: "Sound",
    indicator: pick(next, ["Not tripped", "None fitted"]),
    ...signed(DAY - 28),
  }),
  GearInspection: ({ part }) => {
    const held = DAY + (HELD[String(part)] ?? -1);
    return { requested: held - 3, released: "Released", date: held, by: "I. N. Spector" };
  },
  GearInstallation: () => ({ state: "OK", ...signed(DAY - 12) }),
  GearDimensions: ({ part }) => ({
    ...(isClearance(part) ? { reading: 2065, least: 1800 } : { reading: 1, most: 2 }),
    document: "invented",
    ...trail(DAY - 12),
  }),
  GearFunction: () => ({ state: "OK", ...signed(DAY) }),
  GearInsulation: (row, next) => ({
    testVoltage: 5000,
    reading: shown(spread(next, 90_000, 400_000), 0),
    temperature: shown(between(next, 15, 30), 1),
    humidity: shown(between(next, 30, 60), 0),
    ...trail(DAY + (row.stage === "after" ? 4 : 0)),
  }),
  GearWithstand: (_row, next) => ({
    temperature: shown(between(next, 18, 24), 1),
    pressure: shown(between(next, 99, 103), 1),
    humidity: shown(between(next, 30, 60), 0),
    surface: shown(between(next, 19, 22), 1),
    applied: null,
    duration: 60,
    current: shown(between(next, 5, 20), 1),
    discharge: "No",
    ...trail(DAY + 2),
  }),
  GearContact: (_row, next) => ({
    testCurrent: 100,
    reading: shown(between(next, 28, 36), 1),
    temperature: shown(between(next, 15, 30), 1),
    ...trail(DAY - 2),
  }),
  GearTorque: (row) => ({
    applied: row.bolt === "M12" ? 60 : 38,
    marked: "Yes",
    rechecked: "Yes",
    ...trail(DAY - 10),
  }),
  GearControl: (_row, next) => ({
    continuity: "OK",
    ferrules: "OK",
    testVoltage: 1000,
    reading: shown(spread(next, 50, 2000), 0),
    applied: 1.2,
    duration: 60,
    discharge: "No",
    ...trail(DAY - 5),
  }),
  GearMechanism: () => ({
    closingLow: 85,
    closingHigh: 126,
    openingLow: 65,
    openingHigh: 126,
    charged: 11,
    counterBefore: 20,
    counterAfter: 32,
    made: 12,
    ...trail(DAY - 4),
  }),
  GearTiming: (row, next) => {
    const [least, most] = row.operation === "closing" ? [56, 57] : [27, 28];
    const time = () => shown(between(next, least, most), 1);
    return { controlV: 110, l1: time(), l2: time(), l3: time(), ...trail(DAY - 4) };
  },
  GearGas: (_row, next) => ({
    reading: shown(between(next, 0.55, 0.565), 3),
    temperature: shown(between(next, 18, 22), 1),
    pressure: shown(between(next, 100, 102), 1),
    alarmAt: 0.505,
    lockoutAt: 0.478,
    tight: "No leak found",
    ...trail(DAY - 6),
  }),
  GearEarthing: (_row, next) => ({
    testCurrent: 30,
    reading: shown(between(next, 0.01, 0.28), 3),
    ...trail(DAY - 9),
  }),
  GearCurrentTransformers: (row, next) => ({
    primary: row.ratedPrimary ?? null,
    secondary: shown(Number(row.ratedSecondary) * between(next, 0.9995, 1.0005), 5),
    polarity: "As marked",
    winding: shown(between(next, 2.8, 3.2), 3),
    temperature: 20,
    testVoltage: 1000,
    insulationRead: shown(spread(next, 600, 5000), 0),
    burden: 5,
    ...trail(DAY - 8),
  }),
  GearExcitation: (row, next) => ({
    kneeLeast: row.kneeLeast ?? 100,
    ...curveThrough(between(next, 125, 150)),
    ...trail(DAY - 8),
  }),
  GearIndexCurve: ({ object }, next) => {
    const whole = between(next, 1500, 3000);
    const min1 = shown(whole, 0);
    // Each point has a scatter of its own.
    const own = (by: number) => (whole * 7919 * by) % 1;
    return {
      testVoltage: 5000,
      s15: shown(min1 * (0.57 + 0.06 * own(10)), 0),
      s30: shown(min1 * (0.72 + 0.06 * own(11)), 0),
      min1,
      min5: shown(min1 * (1.5 + 0.2 * own(12)), 0),
      min10: shown(min1 * between(next, 1.8, 2.4), 0),
      temperature: 20,
      // Before the gear was dried: the insulation of the days after is that of dry gear. A curve takes most of an hour.
      ...trail(DAY - 1 - (Number(String(object).replace(/\D/g, "")) % 4)),
    };
  },
  GearVoltageTransformers: (row, next) => ({
    primary: row.ratedPrimary ?? null,
    secondary: shown(Number(row.ratedSecondary) * between(next, 0.998, 1.002), 3),
    polarity: "As marked",
    testVoltage: 1000,
    insulationRead: shown(spread(next, 600, 5000), 0),
    fuses: "To drawing",
    earth: "One point",
    burden: shown(between(next, 8, 14), 1),
    ...trail(DAY - 8),
  }),
  GearMetering: (row, next) => {
    const reference = (Number(row.pointPercent) / 100) * Number(row.fullScale);
    return {
      reference,
      shown: shown(reference + between(next, -0.008, 0.008) * Number(row.fullScale), 2),
      ...trail(DAY - 7),
    };
  },
  GearProtection: (row, next) => ({
    reading: shown(measuredBy(row) * between(next, 0.98, 1.02), 4),
    trips: "Yes",
    ...trail(DAY - 5),
  }),
  GearCable: (row, next) => ({
    testVoltage: 5000,
    insulationRead: shown(spread(next, 6000, 60_000), 0),
    sheathRead: shown(spread(next, 20, 400), 0),
    applied: row.wave === "AC" ? 6 : row.wave === "DC" ? 24 : 21,
    minutes: row.wave === "AC" ? 1440 : 30,
    current: shown(between(next, 0.5, 2), 2),
    discharge: "No",
    // Tests of half an hour a phase: a quarter of the panels a day.
    ...trail(DAY + 5 + (Number(String(row.object).replace(/\D/g, "")) % 4)),
  }),
  GearUndervoltage: () => ({ pickup: 85, dropout: 60, ...trail(DAY - 4) }),
  GearCircuit: (_row, next) => ({
    testCurrent: 100,
    reading: shown(between(next, 80, 90), 1),
    temperature: 20,
    ...trail(DAY - 2),
  }),
  GearInterrupter: (row) => ({
    wave: "AC",
    applied: row.acLevel ?? 21,
    duration: 60,
    gap: "In full",
    discharge: "No",
    ...trail(DAY - 4),
  }),
  GearArrester: () => ({
    insulationRead: 5200,
    leakAt: 12,
    leakage: 0.4,
    earth: "Connected",
    counts: "Counts",
    ...trail(DAY - 3),
  }),
  GearVoltageWinding: () => ({
    testVoltage: 5000,
    primaryRead: 8000,
    temperature: 20,
    windingP: 2540,
    windingS: 0.121,
    ...trail(DAY - 3),
  }),
  GearCurrentLoop: () => ({
    loop: 3.2,
    earth: "One point",
    demagnetized: "Demagnetized",
    links: "As drawn",
    ...trail(DAY - 3),
  }),
  GearPhasing: () => ({ sameV: 1.2, crossV: 110, ...trail(DAY + 9) }),
  GearRotation: ({ part }) => ({ state: "OK", ...asked(part), ...signed(DAY + 9) }),
  GearStability: (row) => ({
    injected: 600,
    shown: 596,
    angle: 1,
    ...(row.asksSpill ? { spill: 6 } : {}),
    polarity: "As drawn",
    ...(row.asksstays ? { stays: "Did not operate" } : { trips: "Tripped the breaker" }),
    ...trail(DAY - 1),
  }),
  GearSettingsHeld: ({ ordered }) => ({ asLeft: ordered ?? null, ...signed(DAY - 1) }),
  GearArcProtection: () => ({
    lit: "Seen by the unit",
    tripped: "As drawn",
    supervised: "Fault shown",
    reading: 7.5,
    ...trail(DAY - 1),
  }),
  GearBattery: () => ({
    current: 10,
    hours: 9.8,
    endVolts: 99.2,
    earthAlarm: "Given",
    chargerAlarm: "Given",
    ...trail(DAY - 3),
  }),
  GearHeater: () => ({ supply: 230, current: 0.43, switches: "As set", ...trail(DAY - 1) }),
  GearGasQuality: () => ({ moisture: 62, purity: 99.2, ...trail(DAY - 3) }),
  GearDissipation: () => ({
    low: 1.1,
    rated: 1.2,
    high: 1.6,
    deviation: 0.02,
    screen: "Continuous",
    ...trail(DAY + 8),
  }),
  GearPartialDischarge: () => ({ background: 1, reading: 2, ...trail(DAY + 10) }),
  GearThermography: ({ ratedA }) => ({
    load: Number(ratedA) / 2,
    hottest: 34,
    similar: 33,
    air: 27,
    ...trail(DAY + 10),
  }),
  GearEnergization: ({ part }) => ({ state: "OK", ...asked(part), ...signed(DAY + 9) }),
  GearMotion: ({ quantity }) => ({
    reading: quantity === "contact bounce" ? 1.2 : 1.1,
    ...trail(DAY - 4),
  }),
};

/** The remark that an item asks for. */
const asked = (item: Row[string] | undefined): Record<string, string> =>
  /in the remarks/.test(String(item)) ? { remarks: "T. Aylward (invented), order 7" } : {};

/** What a relay in order would measure: its pick-up, its delay, or its curve's time by the published formula. */
function measuredBy({ multiple, pickup, curve, setting }: Row): number {
  if (typeof multiple !== "number") return Number(pickup);
  if (curve === "definite") return Number(setting);
  return curve === "IEC standard"
    ? (Number(setting) * 0.14) / (multiple ** 0.02 - 1)
    : Number(setting) * (19.61 / (multiple ** 2 - 1) + 0.491);
}

/** A wall of an excitation curve: ten points through a knee at about this voltage. */
export function curveThrough(knee: number, end = 1.35): Record<string, number> {
  const shares = Array.from({ length: 10 }, (_, at) => 0.1 * (end / 0.1) ** (at / 9));
  // No two cores of a make take the same currents.
  const size = 0.95 + 0.1 * ((knee * 7.13) % 1);
  return Object.fromEntries(
    shares.flatMap((share, at) => [
      [`v${at + 1}`, shown(knee * share, 2)],
      [`a${at + 1}`, shown(size * (0.01 * share ** 0.7 + 0.02 * share ** 14), 7)],
    ]),
  );
}

/** A plan whose rows carry entries, as a workbook that has been filled in. */
export function filledPlan(
  lineup: Lineup,
  start: number,
  fill: Readonly<Record<string, Filler>> = SOUND,
): Plan {
  const next = random(start);
  const plan = planFor(lineup);
  return {
    ...plan,
    sheets: plan.sheets.map((sheet) => {
      const filler = fill[sheet.table];
      return filler
        ? { ...sheet, rows: sheet.rows.map((row) => ({ ...row, ...filler(row, next) })) }
        : sheet;
    }),
  };
}

/** Entries over all that may be typed: blanks, impossible values, conditions outside the tables. */
export const WILD: Record<string, Filler> = {
  GearDocuments: ({ part }, next) => ({
    approved: part === "INV-1" ? "A" : pick(next, ["A", "A", "B", null]),
    found: pick(next, ["A", "A", "a", "B", null]),
  }),
  GearPermits: (_row, next) => ({
    number: pick(next, ["P-1", "P-1", "P-1", null]),
    from: pick(next, [DAY - 3, DAY - 3, DAY, null]),
    to: pick(next, [DAY, DAY, DAY + 2, null]),
    date: pick(next, [DAY - 4, DAY, DAY, DAY, DAY + 1, null]),
  }),
  GearHandling: (_row, next) => ({
    mass: pick(next, [800, 800, 1200, null]),
    capacity: pick(next, [600, 800, 1000, 3000, 3000, null]),
    gearDue: pick(next, [DAY, DAY, DAY, DAY - 9, null]),
    date: pick(next, [DAY, DAY, DAY, DAY + 1, null]),
    condition: pick(next, ["Sound", "Sound", "Sound", "Damaged", null]),
    indicator: pick(next, ["Not tripped", "Not tripped", "None fitted", "Tripped", null]),
  }),
  GearInspection: (_row, next) => ({
    released: pick(next, ["Released", "Waived in writing", "Not released", null]),
  }),
  GearInstallation: (_row, next) => ({ state: state(next) }),
  GearDimensions: (_row, next) => ({
    reading: pick(next, [null, ...many(() => shown(between(next, 0, 3000), 0))]),
    least: pick(next, [null, null, 800, 1800]),
    most: pick(next, [null, null, 2000, 2500]),
  }),
  GearFunction: (_row, next) => ({ state: state(next) }),
  GearInsulation: (_row, next) => ({
    testVoltage: pick(next, [5000, 5000, 5000, 2500, 1000, null]),
    r30s: pick(next, [null, shown(spread(next, 100, 1e6), 1)]),
    reading: pick(next, [null, 0, ...many(() => shown(spread(next, 10, 2e6), 2))]),
    r10min: pick(next, [null, shown(spread(next, 10, 1e5), 1)]),
    temperature: pick(next, [null, -20, 120, ...many(() => shown(between(next, -10, 105), 1))]),
  }),
  GearWithstand: (_row, next) => ({
    temperature: pick(next, [null, ...many(() => shown(between(next, -5, 40), 1))]),
    pressure: pick(next, [null, ...many(() => shown(between(next, 70, 104), 1))]),
    humidity: pick(next, [null, ...many(() => shown(between(next, 5, 100), 0))]),
    surface: pick(next, [null, ...many(() => shown(between(next, -5, 40), 1))]),
    applied: pick(next, [null, ...many(() => shown(between(next, 20, 32), 1))]),
    duration: pick(next, [null, 59, 60, 60, 61]),
    discharge: pick(next, ["No", "No", "No", "Yes", null]),
  }),
  GearContact: (_row, next) => ({
    testCurrent: pick(next, [null, 40, 100, 100, 200]),
    reading: pick(next, [null, 0, ...many(() => shown(spread(next, 15, 120), 1))]),
    temperature: pick(next, [null, ...many(() => shown(between(next, -20, 60), 1))]),
  }),
  GearTorque: (_row, next) => ({
    applied: pick(next, [null, 0, ...many(() => shown(between(next, 30, 75), 1))]),
    marked: pick(next, ["Yes", "Yes", "Yes", "Yes", "No", null]),
    rechecked: pick(next, ["Yes", "Yes", "Yes", "Yes", "No", null]),
  }),
  GearControl: (_row, next) => ({
    continuity: pick(next, ["OK", "OK", "OK", "OK", "OK", "Not OK", null]),
    ferrules: pick(next, ["OK", "OK", "OK", "OK", "OK", "Not OK", null]),
    testVoltage: pick(next, [null, 250, 500, 500, 1000]),
    reading: pick(next, [null, 0, ...many(() => shown(spread(next, 0.1, 5000), 2))]),
    applied: pick(next, [null, 0.9, 1, 1.2, 1.2, 1.5]),
    duration: pick(next, [null, 0.5, 1, 60, 60]),
    discharge: pick(next, ["No", "No", "No", "No", "Yes", null]),
  }),
  GearMechanism: (_row, next) => ({
    closingLow: pick(next, [null, ...many(() => shown(between(next, 80, 92), 1)), 95]),
    closingHigh: pick(next, [118, 121, ...many(() => 126)]),
    openingLow: pick(next, [60, 65, 70, 77, 80]),
    openingHigh: pick(next, [null, 120, ...many(() => 126)]),
    charged: pick(next, [null, 9, 12, 15, 16]),
    counterBefore: pick(next, [null, 20, 20, 20]),
    counterAfter: pick(next, [null, 30, 30, 31]),
    made: pick(next, [null, 10, 10, 11]),
  }),
  GearTiming: (row, next) => {
    const time = () =>
      pick(next, [
        null,
        0,
        ...many(() => shown(between(next, 48, 50), 1) - (row.operation === "closing" ? 0 : 21)),
        ...many(() => shown(between(next, 48, 50), 1) - (row.operation === "closing" ? 0 : 21)),
        shown(between(next, 15, 70), 1),
      ]);
    return {
      controlV: pick(next, [null, 90, 104.5, ...many(() => shown(between(next, 106, 114), 1))]),
      l1: time(),
      l2: time(),
      l3: time(),
    };
  },
  GearGas: (_row, next) => ({
    reading: pick(next, [null, 0, ...many(() => shown(between(next, 0.42, 0.65), 3))]),
    temperature: pick(next, [null, -60, ...many(() => shown(between(next, -10, 40), 1))]),
    pressure: pick(next, [null, ...many(() => shown(between(next, 85, 104), 1))]),
    alarmAt: pick(next, [null, 0.48, ...many(() => 0.505)]),
    lockoutAt: pick(next, [null, 0.5, ...many(() => 0.475)]),
    tight: pick(next, [null, "Leak found", ...many(() => "No leak found")]),
    leak: pick(next, [null, null, 0.1, 0.5, 0.6]),
  }),
  GearEarthing: (_row, next) => ({
    testCurrent: pick(next, [null, 0, 10, 30, 30, 30, 100]),
    reading: pick(next, [null, 0, -0.1, ...many(() => shown(spread(next, 0.005, 8), 3))]),
  }),
  GearCurrentTransformers: (row, next) => {
    const share = pick(next, [0.02, 0.3, 1, 1, 1, 1, 1.08, 1.2, 1.4]);
    return {
      primary: pick(next, [null, 0, ...many(() => shown(600 * share, 1))]),
      secondary: pick(next, [
        null,
        ...many(() => shown(Number(row.ratedSecondary) * share * between(next, 0.99, 1.01), 4)),
      ]),
      polarity: pick(next, [...Array<string>(9).fill("As marked"), "Reversed", null]),
      winding: pick(next, [null, 0, ...many(() => shown(between(next, 2.6, 3.6), 3))]),
      temperature: pick(next, [null, ...many(() => shown(between(next, 10, 35), 1))]),
      testVoltage: pick(next, [250, ...many(() => 500)]),
      insulationRead: pick(next, [null, ...many(() => shown(spread(next, 0.5, 5000), 2))]),
      burden: pick(next, [null, ...many(() => shown(between(next, 2, 11), 1))]),
    };
  },
  // Whole curves or none: the judge's native formula takes every point of the row.
  GearExcitation: (_row, next) =>
    pick<Record<string, CellValue>>(next, [
      {},
      ...many(() => curveThrough(between(next, 80, 150), pick(next, [1.35, 1.35, 1.35, 0.6]))),
    ]),
  GearIndexCurve: (_row, next) => ({
    testVoltage: pick(next, [1000, ...many(() => 5000)]),
    s30: pick(next, [null, 0, ...many(() => shown(spread(next, 500, 4000), 1))]),
    min1: pick(next, [null, 0, ...many(() => shown(spread(next, 1500, 6000), 1))]),
    min10: pick(next, [null, ...many(() => shown(spread(next, 2000, 12_000), 1))]),
    temperature: pick(next, [null, ...many(() => 20)]),
  }),
  GearVoltageTransformers: (row, next) => {
    const share = pick(next, [0.02, 0.5, 0.8, 1, 1, 1, 1.2, 1.3]);
    return {
      primary: pick(next, [null, 0, ...many(() => shown(6351 * share, 0))]),
      secondary: pick(next, [
        null,
        ...many(() => shown(Number(row.ratedSecondary) * share * between(next, 0.99, 1.01), 3)),
      ]),
      polarity: pick(next, [...Array<string>(9).fill("As marked"), "Reversed", null]),
      testVoltage: pick(next, [250, ...many(() => 500)]),
      insulationRead: pick(next, [null, ...many(() => shown(spread(next, 0.5, 5000), 2))]),
      fuses: pick(next, [...Array<string>(9).fill("To drawing"), "Not to drawing", null]),
      earth: pick(next, [...Array<string>(9).fill("One point"), "None", "Several", null]),
      burden: pick(next, [null, ...many(() => shown(between(next, 5, 32), 1))]),
    };
  },
  GearMetering: (row, next) => {
    const reference = shown((Number(row.pointPercent) + between(next, -6, 6)) * 6, 1);
    return {
      reference: pick(next, [null, ...many(() => reference)]),
      shown: pick(next, [null, ...many(() => shown(reference + between(next, -12, 12), 1))]),
    };
  },
  GearProtection: (row, next) => ({
    reading: pick(next, [
      null,
      0,
      ...many(() => shown(measuredBy(row) * between(next, 0.9, 1.1), 4)),
    ]),
    trips: pick(next, [...Array<string>(9).fill("Yes"), "No", null]),
  }),
  GearCable: (row, next) => ({
    testVoltage: pick(next, [500, ...many(() => 1000)]),
    insulationRead: pick(next, [null, 0, ...many(() => shown(spread(next, 0.5, 60_000), 2))]),
    sheathRead: pick(next, [null, ...many(() => shown(spread(next, 0.5, 400), 2))]),
    applied: pick(next, [null, ...many(() => shown(between(next, 4, 30), 1))]),
    minutes: pick(next, [null, 10, ...many(() => (row.wave === "AC" ? 1440 : 30))]),
    discharge: pick(next, [...Array<string>(9).fill("No"), "Yes", null]),
  }),
};

const state = (next: () => number) => pick(next, ["OK", "OK", "Not OK", "Not applicable", null]);

const many = <T>(make: () => T): T[] => Array.from({ length: 8 }, make);

/** Entries that stray from sound ones: numbers beside them, the other words of a list, and what else may stand in a cell. */
export const straying =
  (table: string, odd: readonly CellValue[]): Filler =>
  (row, next) => {
    const columns = KINDS.find((kind) => kind.table === table)?.columns ?? [];
    return Object.fromEntries(
      Object.entries(SOUND[table]?.(row, next) ?? {}).map(([id, cell]): [string, CellValue] => {
        const accepts = columns.find((column) => column.id === id)?.accepts;
        const words = accepts?.type === "list" ? accepts.values : [];
        const beside = typeof cell === "number" ? [cell * 0.1, cell * 30] : words;
        return [id, next() < 0.8 ? cell : pick<CellValue>(next, [...beside, ...odd])];
      }),
    );
  };

/** Tables whose entries stray from what is sound. */
export const STRAYING = [
  "GearUndervoltage",
  "GearCircuit",
  "GearInterrupter",
  "GearMotion",
  "GearArrester",
  "GearVoltageWinding",
  "GearCurrentLoop",
  "GearPhasing",
  "GearRotation",
  "GearStability",
  "GearSettingsHeld",
  "GearArcProtection",
  "GearBattery",
  "GearHeater",
  "GearGasQuality",
  "GearDissipation",
  "GearPartialDischarge",
  "GearEnergization",
  "GearThermography",
];
for (const table of STRAYING) Object.assign(WILD, { [table]: straying(table, [null, 0]) });

/** Remarks beside any row, of which only the first takes a pass back; drawn apart, so that they change no other entry. */
const REMARKS = ["Flashover at 20 kV", "No flashover", "Repeated after cleaning"];
for (const [table, filler] of Object.entries(WILD)) {
  const draw = random(table.length);
  WILD[table] = (row, next) => ({
    ...filler(row, next),
    remarks: draw() < 0.3 ? pick(draw, REMARKS) : null,
  });
}
