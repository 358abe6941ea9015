import { describe, expect, it } from "vitest";
import { checked, drawSheet, readingsOf, surveyOf } from "./support";

/** Every workbook here is invented; how people write several things into one cell is common practice, no source. */
const toldOf = (drawing: string) =>
  checked([drawSheet("Sheet", drawing)]).findings.map(
    ({ weight, rule, address }) => `${weight} ${rule} ${address}`,
  );

describe("cells that hold several things", () => {
  it("reads three phases of one cell, whatever parts them", () => {
    for (const [first, second, third] of [
      ["42.1 / 39.9 / 41.3", "43.1 / 43.0 / 40.3", "34.9 / 35.2 / 36.7"],
      ["42.1/39.9/41.3", "43.1/43.0/40.3", "34.9/35.2/36.7"],
      ["R 42.1 Y 39.9 B 41.3", "R 43.1 Y 43.0 B 40.3", "R 34.9 Y 35.2 B 36.7"],
    ])
      expect(
        readingsOf(`
Contact resistance, µΩ at 100 A
Breaker | Reading R / Y / B | Result
52-1 | ${first} | Pass
52-2 | ${second} | Pass
52-3 | ${third} | Pass`),
      ).toEqual([
        "contact; 52-1; L1; 42.1 µΩ; B3",
        "contact; 52-1; L2; 39.9 µΩ; B3",
        "contact; 52-1; L3; 41.3 µΩ; B3",
        "contact; 52-2; L1; 43.1 µΩ; B4",
        "contact; 52-2; L2; 43 µΩ; B4",
        "contact; 52-2; L3; 40.3 µΩ; B4",
        "contact; 52-3; L1; 34.9 µΩ; B5",
        "contact; 52-3; L2; 35.2 µΩ; B5",
        "contact; 52-3; L3; 36.7 µΩ; B5",
      ]);
  });

  it("tells of the one phase beyond a bound that the heading gives without a unit, and of one left out", () => {
    expect(
      toldOf(`
Contact resistance, µΩ at 100 A, 60 max
Breaker | A / B / C | Result
52-1 | 42.1 / 39.9 / 61.3 | Pass
52-2 | 43.1 / 43.0 / 40.3 | Pass
52-3 | 34.9 / / 36.7 | Pass`),
    ).toEqual(["stop survey-limit B3", "stop survey-missing B5"]);
  });

  it("reads a panel and what is measured of it from one cell, and leaves ratios and dates whole", () => {
    expect(
      readingsOf(`
Insulation resistance of control wiring, 500 V DC
Panel / circuit | Reading (MΩ) | Result
H1 / close | 410 | Pass
H1 / trip | 380 | Pass
H2 / close | 520 | Pass`),
    ).toEqual([
      "control; H1; close; 410 MΩ; B3",
      "control; H1; trip; 380 MΩ; B4",
      "control; H2; close; 520 MΩ; B5",
    ]);
    const { blocks } = surveyOf(`
Current transformers, ratio
Panel | Ratio | Primary (A) | Secondary (A) | Error %
W1 | 600/5 | 600 | 4.99 | -0.2
W2 | 600/5 | 600 | 5.01 | 0.2`);
    expect(blocks[0]?.columns.map(({ title }) => title)).toContain("Ratio");
    expect(blocks[0]?.entries[0]?.beside.ratio?.text).toBe("600/5");
  });
});

describe("titles that no list holds", () => {
  it("takes a line of words for titles where the lines under it fill its columns with numbers", () => {
    expect(
      readingsOf(`
Earthing of doors and frames, limit 10 mΩ
Cubicle | Upper flap | Lower flap | Rear sheet
W1 | 1.4 | 2.1 | 1.9
W2 | 1.2 | 2.4 | 1.7
W3 | 1.6 | 2.2 | 1.8`),
    ).toContain("earthing; W2; Lower flap; 2.4 mΩ; C4");
  });

  it("takes no line of a list of words and numbers for titles", () => {
    expect(
      surveyOf(`
Deliveries
Seal | Lock | Frame
4 | 12 | 7
9 | 3 | 2`).blocks,
    ).toEqual([]);
  });

  it("knows the phase in a title beside words that its neighbours share", () => {
    expect(
      readingsOf(`
Contact resistance
Breaker | Ductor A (µΩ) | Ductor B (µΩ) | Ductor C (µΩ)
52-1 | 42.1 | 39.9 | 41.3
52-2 | 43.1 | 43.4 | 40.3`),
    ).toContain("contact; 52-2; L2; 43.4 µΩ; C4");
  });
});

describe("bounds in running words", () => {
  it("reads a band in percent, and two bounds in brackets behind the value that they are for", () => {
    for (const heading of [
      "Bolts of the busbar, 70 N·m ±10 %",
      "Bolts of the busbar, 70 N·m (63-77)",
    ])
      expect(
        toldOf(`
${heading}
Panel | Bolt | Torque (N·m)
W1 | 1 | 71
W1 | 2 | 62
W2 | 1 | 77
W2 | 2 | 78`),
        heading,
      ).toEqual(["stop survey-limit C4", "stop survey-limit C6"]);
  });

  it("takes one minute for a time, and the alarm pressure for the least", () => {
    expect(
      toldOf(`
Insulation resistance, GΩ, 5 kV DC, 1 min
Panel | A-E | B-E
W1 | 31 | 28
W2 | 44 | 39`),
    ).toEqual([]);
    expect(
      toldOf(`
SF6 pressure: filling 1.50 bar, alarm 1.30 bar, lockout 1.20 bar
Panel | Pressure (bar) | Result
W1 | 1.51 | OK
W2 | 1.28 | OK
W3 | 1.50 | OK`),
    ).toEqual(["stop survey-limit B4"]);
  });
});

describe("marks of one letter", () => {
  const ticked = (mark: string, odd: string) => `
Checks of erection
Item | Check | W1 | W2 | W3 | W4
1 | Base level | ${mark} | ${mark} | ${mark} | ${mark}
2 | Braces removed | ${mark} | ${odd} | ${mark} | ${mark}
3 | Covers refitted | ${mark} | ${mark} | ${mark} | ${mark}`;

  it("is told of a no among yeses, and of nothing where a cross stands for done", () => {
    expect(toldOf(ticked("Y", "N"))).toEqual(["stop survey-word D4"]);
    expect(toldOf(ticked("Y", "Y"))).toEqual([]);
    expect(toldOf(ticked("x", "x"))).toEqual([]);
  });
});

describe("a heading with several bounds", () => {
  it("gives each column the band of what it is about", () => {
    expect(
      toldOf(`
Torque: busbar joints, M12: 70 N·m ± 10 % / earth bar, M10: 40 N·m ± 10 %
Panel | Busbar N·m | Earth bar N·m | Result
K1 | 71 | 39 | OK
K2 | 70 | 41 | OK
K3 | 51 | 40 | OK
K4 | 69 | 41 | OK`),
    ).toEqual(["stop survey-limit B5"]);
  });

  it("holds none of them against values that it does not name", () => {
    expect(
      toldOf(`
Torque, M12: 70 N·m ± 10 % / M10: 40 N·m ± 10 %
Panel | Joint 1 N·m | Joint 2 N·m | Result
K1 | 71 | 39 | OK
K2 | 70 | 41 | OK
K3 | 72 | 40 | OK`),
    ).toEqual([]);
  });
});
