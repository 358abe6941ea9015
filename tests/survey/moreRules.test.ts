import { describe, expect, it } from "vitest";
import { drawSheet, told } from "./support";

/** One case of what the rules tell besides, and a neighbour that stays quiet. All sheets are invented. */
interface Case {
  readonly name: string;
  /** The sheet with a part left open. */
  readonly sheet: (part: string) => string;
  readonly wrong: string;
  readonly told: readonly string[];
  readonly right: string;
}

const CASES: readonly Case[] = [
  {
    name: "a resistance that is not the voltage through the current of its line",
    sheet: (value) => `
Earth continuity, limit 10 mΩ
Panel | Point | Current (A) | Drop (mV) | Resistance (mΩ)
H1 | Door | 50 | 58 | 1.16
H1 | Truck | 50 | 36 | 0.72
H2 | Door | 50 | 126 | 2.52
H2 | Truck | 50 | 160 | ${value}
H3 | Door | 50 | 45 | 0.9
H3 | Truck | 50 | 177 | 3.54`,
    wrong: "0.31",
    told: ["survey-quotient E6"],
    right: "3.2",
  },
  {
    name: "an index that is the inverse of its two readings",
    sheet: (value) => `
Insulation resistance, 5 kV DC
Panel | Phase | 30 s (GΩ) | 60 s (GΩ) | 60 s / 30 s
W1 | A | 25.5 | 39.5 | 1.55
W1 | B | 31.6 | 52.5 | 1.66
W1 | C | 19.1 | 24.4 | ${value}
W2 | A | 22.9 | 38.5 | 1.68
W2 | B | 25.1 | 35.4 | 1.41`,
    wrong: "0.78",
    told: ["survey-quotient E5"],
    right: "1.28",
  },
  {
    name: "an index below the least one that stands beside it",
    sheet: (index) => `
Polarization index, 5 kV DC, GΩ
Bus | Phase | 1 min | 3 min | 5 min | 10 min | PI | PI least | Result
1 | A | 41.3 | 60.2 | 67.7 | 78.4 | 1.9 | 1.5 | Pass
1 | B | 65 | 94.4 | 108 | 123 | 1.89 | 1.5 | Pass
1 | C | 60.4 | 65.7 | 68.1 | ${index}
2 | A | 34.5 | 51.1 | 57.2 | 66 | 1.91 | 1.5 | Pass`,
    wrong: "71.2 | 1.18 | 1.5 | Pass",
    told: ["survey-named-limit G5"],
    right: "115 | 1.9 | 1.5 | Pass",
  },
  {
    name: "a dew point beyond what the heading says",
    sheet: (dew) => `
SF6, filling 130 kPa. Dew point ≤ -25 °C
Panel | kPa read | Dew pt °C | Result
K1 | 131 | -32.4 | Pass
K2 | 130 | -32.2 | Pass
K3 | 132 | ${dew} | Pass
K4 | 131 | -33.9 | Pass`,
    wrong: "-14.2",
    told: ["survey-named-limit C5"],
    right: "-28.2",
  },
  {
    name: "a level below what its own line asks for",
    sheet: (level) => `
Test log
Panel | Test | Phase | Specified | Measured | Unit | Result
Z1 | Withstand | L1 | 40 | 40 | kV | Pass
Z1 | Withstand | L2 | 40 | 40 | kV | Pass
Z2 | Withstand | L1 | 40 | ${level} | kV | Pass
Z2 | Withstand | L2 | 40 | 40 | kV | Pass`,
    wrong: "32",
    told: ["survey-level E5"],
    right: "40",
  },
  {
    name: "a time off what is expected by more than the heading tolerates",
    sheet: (time) => `
Overcurrent relays, tolerance ± 5 %
Panel | Test | Expected | Measured | Unit | Result
K1 | 2 x | 2.006 | 1.978 | s | ok
K1 | 5 x | 0.856 | 0.847 | s | ok
K2 | 2 x | 2.006 | ${time} | s | ok
K2 | 5 x | 0.856 | 0.851 | s | ok`,
    wrong: "2.306",
    told: ["survey-limit D5"],
    right: "2.03",
  },
  {
    name: "something found where the others found nothing",
    sheet: (found) => `
SF6 gas pressure
Breaker | Pressure (bar) | Leak check
Q1 | 5.1 | none
Q2 | 5.2 | none
Q3 | 5.1 | ${found}
Q4 | 5.0 | none
Q5 | 5.1 | none`,
    wrong: "at lower flange",
    told: ["survey-word C5"],
    right: "none",
  },
  {
    name: "a remark that tells of a discharge, and denies only that it was repeated",
    sheet: (remark) => `
Power frequency withstand 27 kV, 60 s
Panel | Phase | Applied kV | Duration (s) | Result | Remarks
W1 | A | 27 | 60 | Pass |
W1 | B | 27 | 60 | Pass | ${remark}
W2 | A | 27 | 60 | Pass |
W2 | B | 27 | 60 | Pass |`,
    wrong: "flashed over at 24 kV, not repeated",
    told: ["survey-remark F4"],
    right: "no corona heard, no flashover",
  },
  {
    name: "a check that one line lacks",
    sheet: (done) => `
Installation check (mm)
Panel | Level mm | Foundation bolts | Truck | Result
W1 | 0.2 | Done | Free | OK
W2 | 0.4 | Done | Free | OK
W3 | 0.3 | Done | Free | OK
W4 | 0.6 | ${done} | Free | OK
W5 | 0.5 | Done | Free | OK
W6 | 0.4 | Done | Free | OK
W7 | 0.3 | Done | Free | OK`,
    wrong: "",
    told: ["survey-blank C6"],
    right: "Done",
  },
  {
    name: "a torque called for that is none of the other bolts of its sort",
    sheet: (called) => `
Bolted joints
Panel | Joint | Bolt | Required N·m | Applied N·m | Result
W1 | Bars | M12 | 70 | 70 | OK
W2 | Bars | M12 | 70 | 71 | OK
W3 | Bars | M12 | ${called} | OK
W4 | Bars | M12 | 70 | 70 | OK
W5 | Bars | M12 | 70 | 69 | OK
W6 | Bars | M12 | 70 | 70 | OK`,
    wrong: "50 | 50",
    told: ["survey-other-limit D5"],
    right: "70 | 70",
  },
  {
    name: "a pick-up voltage above its share of the control voltage",
    sheet: (volts) => `
Mechanisms, coils 110 V DC: closing 85 to 110 %, opening 70 to 110 %
Panel | Minimum closing voltage V | Minimum opening voltage V | Result
E1 | 85 | 69 | OK
E2 | 89 | ${volts} | OK
E3 | 86 | 58 | OK`,
    wrong: "92",
    told: ["survey-limit C4"],
    right: "72",
  },
  {
    name: "a check that fails by the letters of the sheet's own legend, and is accepted",
    sheet: (mark) => `
Mechanical checks (B = good, M = bad, NA = not applicable)
Point | S1 | S2 | S3 | S4
Anchors | B | B | B | B
Shutters | B | B | ${mark} | B
Doors | B | B | B | NA
Accepted | yes | yes | yes | yes`,
    wrong: "M",
    told: ["survey-word D4"],
    right: "B",
  },
  {
    name: "a copy of the panel above in two readings of three figures each",
    sheet: (pair) => `
Installation, level and plumb
Panel | Level mm | Plumb mm | Result
P1 | 0.32 | 0.81 | OK
P2 | 1.37 | 2.06 | OK
P3 | ${pair} | OK
P4 | 1.41 | 1.72 | OK`,
    wrong: "1.37 | 2.06",
    told: ["survey-copied B5"],
    right: "1.12 | 1.96",
  },
];

const tellsOf = (drawing: string) => told([drawSheet("Sheet", drawing)]);

describe("rules of the survey, more cases", () => {
  it.each(CASES)("tells $name", ({ sheet, wrong, told: expected, right }) => {
    expect(tellsOf(sheet(wrong))).toEqual(expect.arrayContaining([...expected]));
    expect(tellsOf(sheet(right))).toEqual([]);
  });
});

describe("insulation before and after in two tables", () => {
  const tables = (after: readonly number[]) => `
Before HV test, GΩ
Panel | A-E | B-E | C-E
W1 | 31.2 | 28.4 | 33.1
W2 | 30.6 | 27.4 | 35.2
W3 | 29.2 | 31.4 | 38.1



After HV test, GΩ
Panel | A-E | B-E | C-E
W1 | ${after.slice(0, 3).join(" | ")}
W2 | ${after.slice(3, 6).join(" | ")}
W3 | ${after.slice(6).join(" | ")}`;

  it("is asked about where it came back low, and the others did not", () => {
    expect(tellsOf(tables([30.9, 28.1, 33.5, 30.1, 7.4, 34.8, 29, 31.1, 37.5]))).toEqual([
      "survey-drop C12",
    ]);
  });

  it("is not, where the values of the two tables do not go together at all", () => {
    expect(tellsOf(tables([9.4, 61.1, 14.2, 66.1, 7.4, 74.8, 13.1, 72, 18.2]))).toEqual([]);
  });
});

describe("what would be told at every line", () => {
  const lines = Array.from(
    { length: 8 },
    (_, index) => `W${index + 1} | ${24 + index / 10} | soon | soon`,
  );

  it("is told once", () => {
    expect(
      tellsOf(`
Contact resistance
Panel | A (µΩ) | B (µΩ) | C (µΩ)
${lines.map((line) => line.replace("W", "V").replaceAll("soon", "23.4")).join("\n")}
${lines.join("\n")}`).filter((line) => line.startsWith("survey-unreadable")),
    ).toHaveLength(1);
  });

  it("is no second level: a test that a third of the lines have at another voltage", () => {
    const levels = [5, 5, 5, 5, 10, 5, 10, 5, 10, 10];
    const tests = levels.map((level, index) => `W${index} | A-E | ${level} | 31.${index} | Pass`);
    expect(
      tellsOf(`
Insulation resistance
Panel | Connection | Test kV | Reading (GΩ) | Result
${tests.join("\n")}`),
    ).toEqual([]);
  });
});
