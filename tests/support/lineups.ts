import { readFileSync } from "node:fs";
import { type Lineup, lineupSchema } from "../../src/lineup/lineup";
import { RECORD_KINDS } from "../../src/records/kinds";
import { readLineup } from "../../src/records/readLineup";

export const SAMPLE = "sample-workbooks/harbour-substation.lineup.json";

/** The invented lineup of the samples. */
export function sampleLineup(): Lineup {
  const read = readLineup(readFileSync(SAMPLE, "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  return read.value;
}

/** A limit of the earth bar: of one section it has no like to be compared with. */
export const EARTH_BAR: Lineup["criteria"][number] = {
  from: "project",
  quantity: "ground bus resistance µΩ",
  value: 20_000,
  document: "invented",
};

/** An invented lineup of so many panels, each with a breaker, on sections of ten. */
export const longLineup = (panels: number, changes: Partial<Lineup> = {}): Lineup => ({
  ...lineupSchema.parse({
    note: "Invented for tests.",
    project: {
      name: "Invented",
      site: "Nowhere (invented)",
      specification: "INV-SPEC (invented)",
      drawings: [{ number: "INV-1", revision: "A", title: "Invented" }],
    },
    basis: "NETA",
    ratings: {
      voltagekV: changes.basis === "IEC" ? 12 : 15,
      frequencyHz: 50,
      busbarA: 2000,
      controlV: 110,
    },
    panels: Array.from({ length: panels }, (_, index) => ({
      designation: `=K${String(index + 1).padStart(4, "0")}`,
      type: "feeder",
      section: `Section ${Math.floor(index / 10) + 1}`,
      breaker: {
        medium: "SF6",
        ratedA: 1250,
        contactLimit: 50,
        document: "invented",
        ...(index % 2 === 0 ? { poleSpreadMs: 2 } : {}),
        closingMs: { least: 40, most: 60 },
        openingMs: { least: 20, most: 35 },
        chargingS: 15,
        ...(index % 2 === 0 || changes.basis !== "IEC"
          ? { closingV: { least: 90, most: 125 }, openingV: { least: 70, most: 125 } }
          : {}),
        gas: {
          fillingMPa: 0.55,
          alarmMPa: 0.5,
          lockoutMPa: 0.48,
          pressure: index % 3 === 0 ? "absolute" : "gauge",
        },
      },
      joints: [
        { name: "Busbar", bolt: "M12", torqueNm: 60, document: "invented" },
        { name: "Earth bar", bolt: "M10", torqueNm: 38, document: "invented" },
      ],
    })),
    instruments: [
      { id: "X-1", kind: "Invented", serial: "0", calibrated: "2026-01-01", due: "2027-01-01" },
    ],
  }),
  ...changes,
});

/** The same lineup with transformers, meters, relays and cables in every panel, and indices asked for. */
export const equipped = (lineup: Lineup): Lineup =>
  lineupSchema.parse({
    ...lineup,
    criteria: [
      ...lineup.criteria,
      { from: "project", quantity: "polarization index", value: 1.5, document: "invented" },
      {
        from: "project",
        quantity: "absorption ratio",
        value: 1.2,
        document: "invented",
        applies: [lineup.panels[0]?.section],
      },
      {
        from: "project",
        quantity: "cable sheath MΩ",
        value: 1,
        document: "invented",
        applies: [lineup.panels[0]?.designation],
      },
    ],
    panels: lineup.panels.map((panel, index) => ({
      ...panel,
      currentTransformers: [
        {
          name: "1S1-1S2",
          primaryA: 600,
          secondaryA: 1,
          accuracy: ["0.5", "0.2S", "3", "10P"][index % 4],
          burdenVA: 10,
        },
        { name: "2S1-2S2", primaryA: 600, secondaryA: 1, accuracy: "5P20", kneeV: 100 },
        ...(index % 3 === 0
          ? [
              {
                name: "3S1-3S2",
                primaryA: 600,
                secondaryA: 1,
                accuracy: index % 2 === 0 ? "PX" : "C100",
                ...(index % 2 === 0 ? { kneeV: 100, windingOhm: 4 } : {}),
              },
            ]
          : []),
      ],
      voltageTransformers: [
        {
          name: "a-n",
          primaryV: 6351,
          secondaryV: 63.51,
          accuracy: index % 2 === 0 ? "0.5" : "3P",
          ...(index % 3 === 0 ? { burdenVA: 30 } : {}),
        },
      ],
      meters: [
        { designation: "P1", quantity: "current L1", fullScale: 600, unit: "A", accuracy: 1.5 },
      ],
      protection: [
        {
          relay: "F1",
          element: "51",
          pickup: 1.2,
          unit: "A",
          curve: index % 2 === 0 ? "IEC standard" : "IEEE very",
          setting: 0.2,
        },
        {
          relay: "F1",
          element: "50",
          pickup: 8,
          unit: "A",
          curve: "definite",
          setting: 0.1,
          multiples: [1.2],
        },
      ],
      cables: [
        {
          designation: "W1",
          ratedkV: lineup.ratings.voltagekV,
          ...(index % 2 === 0 ? { wave: "DC" } : {}),
        },
      ],
    })),
  });

/** The same with what few panels have: directional, differential and undervoltage elements, further releases, joints without a torque. */
export const equippedInFull = (lineup: Lineup): Lineup => {
  const whole = equipped(lineup);
  return lineupSchema.parse({
    ...whole,
    criteria: [
      ...whole.criteria,
      {
        from: "maker",
        quantity: "voltage transformer primary insulation MΩ",
        value: 1000,
        document: "invented",
      },
      { from: "maker", quantity: "SF6 moisture ppmv", value: 150, document: "invented" },
      { from: "maker", quantity: "SF6 purity %", value: 98, document: "invented" },
      { from: "project", quantity: "ultrasound dBµV", value: 6, document: "invented" },
    ],
    confirmed: [
      {
        criterion: "IEEE 400.2-2013, dissipation factor of cables in service, PE based insulation",
        by: "A. N. Other",
      },
    ],
    panels: whole.panels.map((panel, index) => ({
      ...panel,
      ...(panel.breaker && {
        breaker: {
          ...panel.breaker,
          ...(index % 4 === 1
            ? {
                secondTripCoil: true,
                undervoltageV: index % 8 === 1 ? RELEASE : { dropoutMost: 75 },
              }
            : {}),
          ...(index % 2 === 1 ? { medium: "vacuum", interrupter: INTERRUPTERS[index % 3] } : {}),
        },
      }),
      joints: [
        ...panel.joints,
        { name: "Earth lugs", bolt: "M10" },
        { name: "Main bus splice", bolt: "1/2", grade: "SAE 5" },
      ],
      protection: index % 3 === 0 ? [...panel.protection, ...FURTHER] : panel.protection,
      ...EQUIPMENT,
      cables: panel.cables.map((cable) => ({
        ...cable,
        insulation: index % 2 === 0 ? "XLPE" : "paper",
        purpose: "maintenance",
      })),
      type: index % 5 === 0 ? "incomer" : index % 5 === 1 ? "bus coupler" : panel.type,
      voltageTransformers: panel.voltageTransformers.map((winding) => ({
        ...winding,
        ...(index % 2 === 0 ? { primaryOhm: 2500, secondaryOhm: 0.12 } : {}),
      })),
      ...(index % 3 === 0 ? { circuit: { typeTestMicroOhm: 80 } } : {}),
    })),
  });
};

const RELEASE = { pickupMost: 95, dropoutLeast: 40, dropoutMost: 75 };
const INTERRUPTERS = [{ ackV: 21 }, { ackV: 21, dckV: 30, distanceM: 2 }, {}];

/** What further records need. */
const EQUIPMENT = {
  earthingSwitch: { designation: "Q8", mostMicroOhm: 85 },
  motion: [
    { quantity: "opening speed m/s", least: 0.9, most: 1.4 },
    { quantity: "contact bounce ms", most: 2 },
    { quantity: "contact wipe mm" },
  ],
  arcSensors: [
    { designation: "S1", unit: "AU-1", trips: "Q0", mostMs: 10 },
    { designation: "S2", unit: "AU-1", trips: "Q0" },
  ],
  batteries: [
    { designation: "GB1", ratedV: 110, ratedAh: 100, capacityPercent: 95, endV: 99 },
    { designation: "GB2", ratedV: 110, ratedAh: 100 },
  ],
  heaters: [{ designation: "EH1", volts: 230, watts: 100 }],
  arresters: [
    { designation: "F1", insulationMOhm: 1000, leakagekV: 12, leakagemA: 1, counter: true },
    { designation: "F2", insulationMOhm: 1000 },
    { designation: "F3" },
  ],
  schemes: [
    { designation: "87B", principle: "differential", spillPercent: 5 },
    { designation: "67N", principle: "directional" },
    { designation: "51", principle: "overcurrent" },
  ],
  relaySettings: [
    { relay: "F1", parameter: "51 pick-up", value: "0.80", unit: "A", tolerancePercent: 2 },
    { relay: "F1", parameter: "51 multiplier", value: "0.2" },
    { relay: "F1", parameter: "51 curve", value: "IEC very inverse" },
  ],
};

const FURTHER = [
  {
    relay: "F2",
    element: "67",
    pickup: 0.5,
    unit: "A",
    curve: "definite",
    setting: 0,
    multiples: [2],
    slopePercent: 30,
    resetPercent: 95,
    document: "Settings order SO-7 rev 2 (invented)",
  },
  {
    relay: "F2",
    element: "27",
    pickup: 80,
    unit: "V",
    curve: "definite",
    setting: 2,
    multiples: [0.8],
    resetPercent: 105,
  },
];

/** Every record left out but that of contacts: a workbook of few sheets, which is quick to build. */
export const CONTACTS_ALONE: Lineup["leaveOut"] = RECORD_KINDS.filter(
  (kind) => kind !== "contact",
).map((kind) => ({ kind, reason: "Takes long." }));
