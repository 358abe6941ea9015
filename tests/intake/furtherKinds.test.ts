import { expect, test } from "vitest";
import type { Lineup } from "../../src/lineup/lineup";
import { book, placed } from "../support/mesaIntake";
import { bookOf, placedInto } from "../support/sampleIntake";

/**
 * An export in an ordinary layout for each kind of record that came later, for the sample lineup by American
 * practice (all invented): its lines, how many cells it fills, and some of them.
 */
const EXPORTS: Readonly<
  Record<string, { lines: readonly string[]; cells: number; some: readonly string[] }>
> = {
  "main circuit.csv": {
    lines: [
      "Main circuit resistance, bus to cable, 100 A DC (made up)",
      "Panel,A (µΩ),B (µΩ),C (µΩ)",
      "52-F1,142,145.5,143",
      "52-F2,139,141,140.5",
    ],
    cells: 12,
    some: [
      "mainCircuit 52-F1 Main circuit B reading=145.5",
      "mainCircuit 52-F2 Main circuit C testCurrent=100",
    ],
  },
  "motion.csv": {
    lines: [
      "Breaker motion (made up)",
      "Breaker;Closing speed (m/s);Opening speed (m/s)",
      "52-F1;1.12;1.45",
      "52-F2;1.10;1.41",
    ],
    cells: 4,
    some: ["motion 52-F1 Breaker 52 closing speed all reading=1.12"],
  },
  "bottles.csv": {
    lines: [
      "Vacuum interrupter integrity, AC (made up)",
      "Breaker,Pole,Test kV,Seconds,Leakage mA,Breakdown",
      "52-F1,A,27.5,60,0.12,No",
      "52-F1,B,27.5,60,0.13,No",
      "52-F1,C,27.5,60,0.11,No",
    ],
    cells: 12,
    some: [
      "interrupter 52-F1 Breaker 52 A applied=27.5",
      "interrupter 52-F1 Breaker 52 C discharge=No",
    ],
  },
  "battery.txt": {
    lines: [
      "Station battery discharge test (made up)",
      "",
      "Battery: BAT-1",
      "Discharge current: 12.5 A",
      "Duration: 5 h",
      "End voltage: 111.4 V",
      "Earth fault alarm: OK",
      "Charger alarm: OK",
    ],
    cells: 5,
    some: ["battery 52-M1 BAT-1 current=12.5", "battery 52-M1 BAT-1 endVolts=111.4"],
  },
  "ct loops.csv": {
    lines: [
      "CT secondary circuits, loop resistance (made up)",
      "Cubicle,CT,Loop A (Ω),Loop B (Ω),Loop C (Ω)",
      "52-F1,CT-1,0.82,0.84,0.81",
      "52-F2,CT-1,0.79,0.78,0.80",
    ],
    cells: 6,
    some: ["currentLoop 52-F1 CT-1 B loop=0.84"],
  },
  "vt windings.csv": {
    lines: [
      "VT winding resistance (made up)",
      "Panel,VT,Phase,Primary winding (Ω),Secondary winding (Ω)",
      "52-M1,VT-1,A,1850,0.142",
      "52-M1,VT-1,B,1862,0.1435",
      "52-M1,VT-1,C,1848,0.1421",
    ],
    cells: 6,
    some: [
      "voltageWinding 52-M1 VT-1 B windingP=1862",
      "voltageWinding 52-M1 VT-1 A windingS=0.142",
    ],
  },
  "arresters.csv": {
    lines: [
      "Surge arresters (made up)",
      "Panel,Arrester,Phase,Insulation (GΩ),Leakage (mA),Counter before,Counter after",
      "52-F1,SA-1,A,12.5,0.31,4,5",
      "52-F1,SA-1,B,13.1,0.30,4,5",
      "52-F1,SA-1,C,12.8,0.32,3,4",
    ],
    cells: 12,
    some: [
      "arrester 52-F1 SA-1 A insulationRead=12500",
      "arrester 52-F1 SA-1 C leakage=0.32",
      "arrester 52-F1 SA-1 B counterAfter=5",
    ],
  },
  "relay settings.csv": {
    lines: [
      "Relay settings read back (made up)",
      "Panel,Relay,Parameter,As found,As left,Firmware",
      "52-M1,11-M1,51P pick-up,4.0,5.0,V2.1",
      "52-M1,11-M1,50P pick-up,40.0,45.0,V2.1",
    ],
    cells: 6,
    some: ["settings 52-M1 11-M1 51P pick-up asLeft=5.0"],
  },
  "stability.csv": {
    lines: [
      "Bus differential stability, primary injection (made up)",
      "Panel;Scheme;Tried with;Injected A;Spill A",
      "52-M1;87B;Through current;100.5;0.02",
      "52-M1;87B;In-zone current;100.5;4.98",
    ],
    cells: 4,
    some: ["stability 52-M1 87B In-zone current spill=4.98"],
  },
  "arc flash.csv": {
    lines: [
      "Arc flash protection (made up)",
      "Panel,Sensor,Light seen,Breaker tripped,Trip time (ms)",
      "52-F1,AS-F1,yes,yes,38.5",
      "52-F2,AS-F2,yes,yes,39.1",
    ],
    cells: 6,
    some: ["arcProtection 52-F2 AS-F2 reading=39.1"],
  },
  "tan delta.csv": {
    lines: [
      "Cable tan delta (made up)",
      "Panel,Cable,Phase,0.5 U0 (E-3),1.0 U0 (E-3),1.5 U0 (E-3)",
      "52-F1,C1,A,0.41,0.43,0.47",
      "52-F1,C1,B,0.40,0.42,0.45",
      "52-F1,C1,C,0.42,0.44,0.48",
    ],
    cells: 9,
    some: ["dissipation 52-F1 C1 C high=0.48"],
  },
  "space heaters.csv": {
    lines: [
      "Space heaters (made up)",
      "Cubicle,Heater,Supply V,Current A,Thermostat",
      "52-F1,SH-1,121.5,0.82,OK",
      "52-F2,SH-1,121.2,0.81,OK",
    ],
    cells: 6,
    some: ["heater 52-F2 SH-1 current=0.81"],
  },
  "phasing out.csv": {
    lines: [
      "Phasing across the tie (made up)",
      "Panel,Between,Phase,Like phases (V),Unlike phases (V)",
      "52-T,Across 52,A,0.4,120.5",
      "52-T,Across 52,B,0.3,120.1",
      "52-T,Across 52,C,0.5,119.8",
    ],
    cells: 6,
    some: ["phasing 52-T Across 52 B crossV=120.1"],
  },
  "rotation.csv": {
    lines: [
      "Phase rotation checks (made up)",
      "Panel,What is tried,State",
      '52-M1,"Voltage transformers: rotation A-B-C at every terminal that takes it",OK',
      '52-M1,"Voltage transformers: fuses and links back as drawn after the tests",OK',
    ],
    cells: 2,
    some: [],
  },
  "energizing.csv": {
    lines: [
      "First energization (made up)",
      "Panel,What is seen to,State",
      '52-M1,"Before: test earths and short circuits off, counted against the list",OK',
      '52-M1,"Before: covers, barriers and doors closed and locked",OK',
    ],
    cells: 2,
    some: [],
  },
  "pd survey.csv": {
    lines: [
      "Partial discharge survey (made up)",
      "Panel,Method,Background,Level",
      "52-F1,Transient earth voltage,4,7",
      "52-F2,Ultrasound,-2,3",
    ],
    cells: 4,
    some: ["partialDischarge 52-F1 Switchgear Transient earth voltage reading=7"],
  },
};

test.each(Object.entries(EXPORTS))("%s fills its records", (name, { lines, cells, some }) => {
  const found = placed(name, lines);
  expect(found).toHaveLength(cells);
  for (const cell of some) expect(found).toContain(cell);
});

const asked = (): Lineup => {
  const { lineup } = book;
  if (!lineup) throw new Error("the sample has no lineup");
  return {
    ...lineup,
    furtherRecords: [...lineup.furtherRecords, { kind: "thermography" }],
    panels: lineup.panels.map((panel) =>
      panel.breaker
        ? {
            ...panel,
            breaker: {
              ...panel.breaker,
              undervoltageV: { pickupMost: 106, dropoutLeast: 44, dropoutMost: 87 },
            },
          }
        : panel,
    ),
  };
};
const placedThere = placedInto(bookOf(asked()));

/** The same for kinds that the sample lineup has no rows of: breakers with undervoltage releases, and hot spots. */
const ELSEWHERE: typeof EXPORTS = {
  "uv releases.csv": {
    lines: [
      "Undervoltage releases (made up)",
      "Breaker,Pick-up (V),Drop-out (V)",
      "52-M1,98.5,61.2",
      "52-M2,97.9,60.8",
    ],
    cells: 4,
    some: [
      "undervoltage 52-M1 Breaker 52 undervoltage release pickup=98.5",
      "undervoltage 52-M2 Breaker 52 undervoltage release dropout=60.8",
    ],
  },
  "undervoltage trip coil.txt": {
    lines: [
      "Undervoltage release test (made up)",
      "",
      "Panel: 52-F1",
      "Picked up at: 99.1 V",
      "Dropped out at: 62.4 V",
      "Date: 2026-10-07",
    ],
    cells: 2,
    some: [
      "undervoltage 52-F1 Breaker 52 undervoltage release pickup=99.1",
      "undervoltage 52-F1 Breaker 52 undervoltage release dropout=62.4",
    ],
  },
  "uv table.csv": {
    lines: [
      "Test,Undervoltage release",
      "Panel,Picked up at V,Dropped out at V",
      "52-F2,101,60",
      "52-F3,100,59.5",
    ],
    cells: 4,
    some: ["undervoltage 52-F3 Breaker 52 undervoltage release dropout=59.5"],
  },
  "thermography.csv": {
    lines: [
      "Thermographic survey under load (made up)",
      "Panel,Place,Load (A),Hottest (°C),Similar (°C),Ambient (°C)",
      "52-F1,Busbar joints,1010,46.2,45.1,24.8",
      "52-F1,Breaker and contacts,640,51.7,50.9,24.8",
      "52-F1,Cable terminations,640,44.0,43.8,24.8",
    ],
    cells: 12,
    some: [
      "thermography 52-F1 Busbar joints load=1010",
      "thermography 52-F1 Breaker and contacts hottest=51.7",
      "thermography 52-F1 Cable terminations similar=43.8",
      "thermography 52-F1 Cable terminations air=24.8",
    ],
  },
  "infrared scan.csv": {
    lines: [
      "Infrared scan (made up)",
      "Cubicle;Place;Load A;Hottest °F;Similar °F;Air °F",
      "52-F2;Breaker and contacts;610;125.1;123.4;77",
      "52-F2;Cable terminations;610;112.5;112;77",
    ],
    cells: 8,
    some: ["thermography 52-F2 Breaker and contacts load=610"],
  },
};

test.each(Object.entries(ELSEWHERE))("%s fills its records", (name, { lines, cells, some }) => {
  const found = placedThere(name, lines);
  for (const cell of some) expect(found).toContain(cell);
  expect(found).toHaveLength(cells);
});
