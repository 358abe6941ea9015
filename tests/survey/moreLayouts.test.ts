import { describe, expect, it } from "vitest";
import { surveyBook } from "../../src/survey/surveyBook";
import { drawSheet, readingsOf, surveyOf } from "./support";

/** More layouts as people keep them, all invented: what of them is read as readings, the first few of each. */
interface Layout {
  readonly name: string;
  readonly drawing: string;
  readonly merges?: readonly string[];
  readonly readings: readonly string[];
}

const LAYOUTS: readonly Layout[] = [
  {
    name: "panels across with their phases below, and bounds in the labels of the lines",
    drawing: `
Breaker | 52-1 ||| 52-2 ||
Phase | A | B | C | A | B | C
Contact resistance, µΩ @ 100 A (max 60) | 35 | 35.1 | 36.3 | 41.5 | 41.9 | 44.2
Hipot, kV AC | 27 | 27 | 27 | 27 | 27 | 25
P/F | P | P | P | P | P | P`,
    merges: ["B1:D1", "E1:G1"],
    readings: [
      "contact; 52-1; A; 35 µΩ; B3",
      "withstand; 52-1; A; 27 kV; B4",
      "contact; 52-1; B; 35.1 µΩ; C3",
    ],
  },
  {
    name: "panels across with voltage and current each, the points down",
    drawing: `
Magnetising curve, core 2S
Point | J01 || J02 |
| U [V] | I [mA] | U [V] | I [mA]
1 | 20 | 1.9 | 20 | 1.8
2 | 60 | 4.3 | 60 | 4.4
3 | 100 | 6.9 | 100 | 7.1`,
    merges: ["B2:C2", "D2:E2"],
    readings: [
      "excitation; J01; 1 J01 I [mA]; 1.9 mA; C4",
      "excitation; J02; 1 J02 I [mA]; 1.8 mA; E4",
      "excitation; J01; 2 J01 I [mA]; 4.3 mA; C5",
    ],
  },
  {
    name: "panels across that are called by what they are for",
    drawing: `
Insulation before HV, 5 kV DC, 1 min, GΩ
Measured | Incomer | Ring A | Metering
R to earth | 31.2 | 28.4 | 41.1
Y to earth | 30.2 | 29.4 | 40.1
B to earth | 33.2 | 27.4 | 39.1
Least allowed | 1 | 1 | 1
Date | 2031-05-04 | 2031-05-04 | 2031-05-04
Result | OK | OK | OK`,
    readings: [
      "insulation; Incomer; L1-E; before; 31.2 GΩ; B3",
      "insulation; Incomer; L2-E; before; 30.2 GΩ; B4",
      "insulation; Incomer; L3-E; before; 33.2 GΩ; B5",
    ],
  },
  {
    name: "a list of checks with the panels across, in letters that the sheet explains",
    drawing: `
Erection checks
Point | A1 | A2 | A3
Fixing to floor | F | F | F
Shutters | F | NF | F
Labels | F | F | F
F = works, NF = does not work
Accepted | yes | yes | yes`,
    readings: ["installation; A1; Fixing to floor; F; B3", "installation; A1; Shutters; F; B4"],
  },
  {
    name: "connections with before or after in one cell, and bounds under a title nobody lists",
    drawing: `
Cell: | W1
Insulation, 5 kV DC, 1 min | Measured | Prescribed | Verdict
R – earth, before | 25.8 GΩ | ≥ 2 GΩ | ok
S – earth, before | 22.4 GΩ | ≥ 2 GΩ | ok
R – earth, after | 24.5 GΩ | ≥ 2 GΩ | ok`,
    readings: [
      "insulation; W1; R – earth; before; 25.8 GΩ; B3",
      "insulation; W1; S – earth; before; 22.4 GΩ; B4",
      "insulation; W1; R – earth; after; 24.5 GΩ; B5",
    ],
  },
  {
    name: "times as titles, which are no phases",
    drawing: `
Main bus, insulation against time, 5 kV DC, GΩ
Bus | Phase | 30 s | 1 min | 2 min | 3 min | 10 min | PI
Bus 1 | A-Gnd | 33.1 | 41.3 | 53 | 60.2 | 78.4 | 1.9
Bus 2 | A-Gnd | 42.6 | 51.3 | 59.6 | 65 | 98 | 1.91`,
    readings: [
      "indexCurve; Bus 1; A-Gnd 30 s; 33.1 GΩ; C3",
      "indexCurve; Bus 1; A-Gnd 1 min; 41.3 GΩ; D3",
    ],
  },
  {
    name: "a resistance that every line works out from voltage and current",
    drawing: `
Earth continuity, max 5 milli ohm
Bay | Point | mV drop | A | milli ohm
B1 | Door | 32 | 30 | =C3/D3 -> 1.07
B1 | Truck | 51 | 30 | =C4/D4 -> 1.7
B2 | Door | 44 | 30 | =C5/D5 -> 1.47`,
    readings: ["earthing; B1; Door; 1.07 mΩ; E3", "earthing; B1; Truck; 1.7 mΩ; E4"],
  },
  {
    name: "voltages of releases, which are no withstand test",
    drawing: `
Drives: pick-up voltage of the coils, 110 V DC
Bay | Closing coil V | Opening coil V
J1 | 78 | 61
J2 | 79 | 60
J3 | 77 | 62`,
    readings: ["mechanism; J1; ; closing; 78 V; B3", "mechanism; J1; ; opening; 61 V; C3"],
  },
  {
    name: "banners in the column of the panels",
    drawing: `
Tightening torques
Cubicle | Joint | Bolt | Required N·m | Applied N·m
Cubicle 101 ||||
| Bars A | M12 | 70 | 70
| Bars B | M12 | 70 | 71
Cubicle 102 ||||
| Bars A | M12 | 70 | 69
| Bars B | M12 | 70 | 70`,
    readings: [
      "torque; Cubicle 101; Bars A M12; 70 N·m; E4",
      "torque; Cubicle 101; Bars B M12; 71 N·m; E5",
      "torque; Cubicle 102; Bars A M12; 69 N·m; E7",
    ],
  },
  {
    name: "insulation of the main circuits with the cables off",
    drawing: `
Insulation resistance, 5 kV DC. Cables off.
Panel | A-E (GΩ) | B-E (GΩ)
W1 | 31 | 28
W2 | 44 | 39`,
    readings: ["insulation; W1; L1-E; 31 GΩ; B3"],
  },
];

describe("more layouts of somebody's own", () => {
  it.each(LAYOUTS)("reads $name", ({ drawing, merges, readings }) => {
    expect(readingsOf(drawing, merges).slice(0, readings.length)).toEqual(readings);
  });
});

describe("a table with lines that sum up or sign off", () => {
  it("takes the highest values at its foot for no limits", () => {
    const { blocks } = surveyOf(`
Contact resistance
Panel | A (µΩ) | B (µΩ) | C (µΩ)
W1 | 34 | 33 | 34
W2 | 35 | 57 | 33
W3 | 33 | 32 | 31
Maximum | =MAX(B3:B5) -> 35 | =MAX(C3:C5) -> 57 | =MAX(D3:D5) -> 34`);
    expect(blocks.flatMap(({ entries }) => entries.flatMap(({ limits }) => limits))).toEqual([]);
  });

  it("keeps the line of names at its foot", () => {
    const { blocks } = surveyOf(`
Contact resistance, µΩ
Panel | C1 | C2 | C3
Pole A | 34 | 33 | 34
Pole B | 35 | 37 | 33
Pole C | 33 | 32 | 31
Operator | L. Example | M. Example | L. Example`);
    expect(blocks[0]?.entries.map(({ beside }) => beside.by?.text).slice(0, 3)).toEqual([
      "L. Example",
      "L. Example",
      "L. Example",
    ]);
  });
});

/** Thirty sheets of sixty lines each. */
const manySheets = () => {
  const lines = Array.from(
    { length: 60 },
    (_, line) =>
      `W${Math.floor(line / 3) + 1} | ${"ABC"[line % 3]}-E | ${20 + ((line * 7) % 31) / 10} | 5 | Pass | 2031-04-02 | N. Example`,
  );
  return [
    "Insulation resistance",
    "Panel | Connection | Reading (GΩ) | Minimum (GΩ) | Result | Date | Tested by",
    ...lines,
  ];
};

describe("thirty sheets", () => {
  it("are recognised in less than a second of one core", () => {
    const drawing = manySheets();
    const sheets = Array.from({ length: 30 }, (_, index) => drawSheet(`Sheet ${index}`, drawing));
    const seconds = [1, 2, 3].map(() => {
      const started = process.cpuUsage();
      expect(surveyBook({ sheets }).blocks.length).toBe(30);
      return process.cpuUsage(started).user / 1e6;
    });
    expect(Math.min(...seconds)).toBeLessThan(1);
  });
});
