import { describe, expect, it } from "vitest";
import { checked, drawSheet, readingsOf, surveyOf, told } from "./support";

/** Habits of relay, cable, gas, bolting and factory people; all sheets are invented. */
describe("what stands above counts where a cell says so", () => {
  const sheet = (mark: string) => `
Feeder cables, insulation before and after VLF, 5 kV DC
Circuit | Phase | IR before GΩ | IR after GΩ | Tech | Date
F10 | A | 51 | 49 | RHS | 2031-05-04
${mark} | B | 48 | 47 | ${mark} | ${mark}
${mark} | C | 50 | 48 | ${mark} | ${mark}
F11 | A | 52 | 51 | RHS | 2031-05-05`;
  it.each(['"', "'''", "ditto", "Idem", "ídem", "dto.", "〃"])("%s", (mark) => {
    const [block] = surveyOf(sheet(mark)).blocks;
    expect(block?.panels).toEqual(["F10", "F11"]);
    const last = block?.entries.find(({ address }) => address === "D5");
    expect(last?.panel).toBe("F10");
    expect(last?.beside.by?.text).toBe("RHS");
    expect(last?.beside.date?.address).toBe("F5");
  });
  it("a mark without a cell above it stands for nothing", () => {
    expect(surveyOf(sheet('"').replace("F10", "")).blocks[0]?.panels).not.toContain("F10");
  });
});

describe("titles", () => {
  it("points of a curve over plain numbers are titles, whatever their unit", () => {
    expect(
      readingsOf(`
Secondary excitation, mA at volts
CT | 10 V | 20 V | 40 V
52-F1 A | 4.1 | 6.2 | 9.8
52-F2 A | 4 | 6.3 | 9.9`).slice(0, 3),
    ).toEqual([
      "excitation; 52-F1 A; 10 V; 4.1 mA; B3",
      "excitation; 52-F1 A; 20 V; 6.2 mA; C3",
      "excitation; 52-F1 A; 40 V; 9.8 mA; D3",
    ]);
  });
  it("what is counted over numbers holds readings: a column a bolt", () => {
    const drawing = (bolt: number) => `
Bolting of the main bus, N·m
Splice | Phase | Required N·m | Bolt 1 | Bolt 2
Cub 1-2 | A | 70 | ${bolt} | 71
Cub 1-2 | B | 70 | 70 | 70
Cub 2-3 | A | 70 | 72 | 71
Cub 2-3 | B | 70 | 71 | 69`;
    expect(readingsOf(drawing(71))[0]).toBe("torque; Cub 1-2; A Bolt 1; 71 N·m; D3");
    expect(told([drawSheet("Sheet", drawing(50))])).toEqual(["survey-limit D3"]);
    expect(told([drawSheet("Sheet", drawing(71))])).toEqual([]);
  });
  it("times beside the times that are expected are those of relays", () => {
    expect(
      readingsOf(`
Time checks
Relay of | Calc. time (s) | Op. time (s)
K01 | 0.61 | 0.622
K02 | 0.42 | 0.431
K03 | 0.93 | 0.941`)[0],
    ).toBe("protection; K01; ; 0.622 s; C3");
  });
  it.each([
    ["Height, mm (2300 ±3)", 2300, 2309],
    ["Out of level, mm, max 2", 1.1, 3.4],
    ["Out of level, mm, max. 2", 1.1, 3.4],
    ["Gap mm ≥ 120", 131, 108],
  ])("a title states its bound: %s", (title, right, wrong) => {
    const sheet = (value: number) => [
      drawSheet(
        "Sheet",
        `
Dimensions
Panel | ${title} | OK
A01 | ${right} | OK
A02 | ${value} | OK
A03 | ${right} | OK`,
      ),
    ];
    expect(told(sheet(right))).toEqual([]);
    expect(told(sheet(wrong))).toEqual(["survey-limit B4"]);
  });
  it("words behind the last title are remarks", () => {
    const sheet = (word: string) => [
      drawSheet(
        "Sheet",
        `
Hipot 27 kV AC, 60 s
Panel | Phase | kV AC | s | Result
W1 | A | 27 | 60 | OK
W1 | B | 27 | 60 | OK | ${word}
W1 | C | 27 | 60 | OK
W2 | A | 27 | 60 | OK`,
      ),
    ];
    expect(told(sheet("flashed over at 22 kV"))).toEqual(["survey-remark F4"]);
    expect(told(sheet("repainted"))).toEqual([]);
  });
});

describe("what belongs to what", () => {
  it("labels in two columns, the second with the units", () => {
    expect(
      readingsOf(`
Routine tests
Panel ||| A01 | A02 | A03
7.1 | Main circuit resistance | L1 µΩ | 61 | 62 | 61.5
| | L2 µΩ | 62 | 63 | 61.5
7.5 | Operating times | close, ms | 51 | 52 | 50
| | open, ms | 33 | 32 | 33
| Tested | | HV | HV | HV
| Date | | 2031-04-04 | 2031-04-04 | 2031-04-04`).slice(0, 2),
    ).toEqual(["contact; A01; L1; 61 µΩ; D3", "contact; A01; L2; 62 µΩ; D4"]);
  });
  it("corrected values between before and after are those of before", () => {
    const sheet = (value: number) =>
      drawSheet(
        "Sheet",
        `
Insulation, GΩ, 5 kV DC, factor 0.76
Panel | Before | Corrected to 20 °C | After
W1 | 20 | 15.2 | 19
W2 | 22 | 16.72 | 23
W3 | 18 | 13.68 | 18.4
W4 | 21 | 15.96 | 20.1
W5 | 25 | ${value} | 20`,
      );
    expect(told([sheet(19)])).toEqual([]);
    expect(told([sheet(32.9)])).toEqual(["survey-correction C7"]);
  });
  it("what lies beyond a bound is turned down", () => {
    const findings = checked([
      drawSheet(
        "Sheet",
        `
Splice resistance, µΩ, 100 A DC. Reject over 12 or 50 % over the lowest
Panel | A | B | C
W1 | 7.1 | 7.2 | 13.9
W2 | 7 | 7.4 | 7.3`,
      ),
    ]).findings;
    expect(findings.map(({ address, expected }) => `${address} ${expected}`)).toEqual([
      "D3 ≤ 12 µΩ",
    ]);
  });
});

describe("a table is read once", () => {
  it("with phases below two of its titles and a blank between them", () => {
    const { blocks } = surveyOf(
      `
Operating times at 110 V DC
Panel | Close, ms ||| Max close ms | Open, ms ||| Max open ms
| R | Y | B | | R | Y | B |
P1 | 57.8 | 57.9 | 57.8 | 80 | 32 | 32.1 | 32.3 | 50
P2 | 59.1 | 58.6 | 58.8 | 80 | 35.3 | 35 | 35.6 | 50
P3 | 53.9 | 54 | 53.9 | 80 | 35.7 | 35.8 | 35.7 | 50`,
      ["B2:D2", "F2:H2"],
    );
    expect(blocks.map(({ range, entries }) => `${range} ${entries.length}`)).toEqual(["A2:I6 18"]);
    expect(blocks[0]?.entries[3]).toMatchObject({ operation: "opening", panel: "P1" });
  });
});

describe("readings as they are written on site", () => {
  it("gigs and megs by their letter", () => {
    expect(
      readingsOf(`
Insulation resistance @ 5 kV DC
Test | 1 min | 10 min
A-GND | 22.4 G | 40.1 G
B-GND | 640 M | 35 G`),
    ).toEqual([
      "insulation; Sheet; 1 min A-GND; 22.4 GΩ; B3",
      "insulation; Sheet; 10 min A-GND; 40.1 GΩ; C3",
      "insulation; Sheet; 1 min B-GND; 640 MΩ; B4",
      "insulation; Sheet; 10 min B-GND; 35 GΩ; C4",
    ]);
  });
  it("volts of a transformer by the letter before the winding", () => {
    expect(
      readingsOf(`
Voltage transformers 11000/110 V
VT of | Ph | V prim | V sec | IR P-E (MΩ)
P1 | R | 1000 | 10.01 | 4444
P1 | Y | 1000 | 10.02 | 5341
P2 | R | 1000 | 9.99 | 5120`).filter((line) => line.endsWith("D3")),
    ).toEqual(["voltageTransformer; P1; R V sec; 10.01 V; D3"]);
  });
  it("a withstand test between insulation before and after, its phases under a word for measured", () => {
    const kinds = surveyOf(`
Isolationsmessung 5 kV DC und Spannungsprüfung
Feld | Messung | Riso vor [GΩ] | Prüfspannung [kV] | Dauer [s] | Überschlag | Riso nach [GΩ]
J1 | L1 gegen Erde | 28 | 28 | 60 | nein | 29
J1 | L2 gegen Erde | 27 | 28 | 60 | nein | 26
J1 | L3 gegen Erde | 29 | 28 | 60 | nein | 28`).blocks[0]?.kinds;
    expect(kinds).toEqual(["insulation", "withstand"]);
  });
});

describe("words that mean one thing or another", () => {
  it("Min over millimetres is a least value, and no time", () => {
    const sheet = (gap: number) => [
      drawSheet(
        "Sheet",
        `
Truck engagement, mm
Panel | Upper A | Upper B | Upper C | Min
P1 | 22 | 21 | 22 | 20
P2 | 21 | 22 | ${gap} | 20
P3 | 22 | 22 | 21 | 20`,
      ),
    ];
    expect(told(sheet(22))).toEqual([]);
    expect(told(sheet(17))).toEqual(["survey-limit D4"]);
  });
  it("a column that is of another size throughout measures something else", () => {
    const sheet = (first: number) => [
      drawSheet(
        "Sheet",
        `
Cable core and sheath
Cable | Core | IR core MΩ | Sheath IR MΩ
C1 | A | ${first} | 45
C1 | B | 8700 | 44
C2 | A | 9100 | 51
C2 | B | 9050 | 48`,
      ),
    ];
    expect(told(sheet(9000))).toEqual([]);
  });
  it("what does not apply says nothing of the other answers", () => {
    const [block] = surveyOf(`
Functional checks
Cubicle | Local close | Remote close
F1 | ok | ok
F2 | ok | n/a
F3 | ok | ok`).blocks;
    expect(block?.columns[2]?.concept).toBe("result");
  });
  it("values with their unit under a title of places are readings", () => {
    expect(
      readingsOf(`
Control wiring megger 1000 V
Circuit | + to E | + to - | Least
Close F1 | 210 M | 240 M | 2 M
Trip F1 | 220 M | 260 M | 2 M`),
    ).toHaveLength(4);
  });
});
