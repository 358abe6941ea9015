import { describe, expect, it } from "vitest";
import { drawSheet, told } from "./support";

/** One case of what the rules tell, and a neighbour that stays quiet. All sheets are invented. */
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
    name: "a mean that is not that of its line",
    sheet: (mean) => `
Contact resistance, µΩ, 100 A
Panel | A | B | C | Mean
W1 | 35.1 | 36.2 | 34.3 | 35.2
W2 | 36.1 | 37.3 | 35.2 | 36.2
W3 | 33.1 | 36.1 | 34.9 | ${mean}
W4 | 38.1 | 37.2 | 39.3 | 38.2
W5 | 37.1 | 35.5 | 38.4 | 37`,
    wrong: "43.7",
    told: ["survey-worked-out E5"],
    right: "34.7",
  },
  {
    name: "a spread of the closing times alone",
    sheet: (spread) => `
Operating times, ms
Panel | Closing A | Closing B | Closing C | Opening A | Opening B | Opening C | Diff. closing
W1 | 55.1 | 55.9 | 55.6 | 35.2 | 35.6 | 35.1 | 0.8
W2 | 56.1 | 57.4 | 56.9 | 36.1 | 36.3 | 36.2 | 1.3
W3 | 54.7 | 55.2 | 55.6 | 34.9 | 35.3 | 35 | ${spread}
W4 | 57.2 | 56.8 | 57 | 35.7 | 35.3 | 35.4 | 0.4`,
    wrong: "1.9",
    told: ["survey-worked-out H5"],
    right: "0.9",
  },
  {
    name: "a total under a table that is not that of its lines",
    sheet: (sum) => `
Earth bonds, mΩ
Panel | Door | Truck
W1 | 1.2 | 2.4
W2 | 1.4 | 2.2
W3 | 1.1 | 2.7
Mean | 1.23 | ${sum}`,
    wrong: "2.73",
    told: [],
    right: "2.43",
  },
  {
    name: "means under a table, one of which is not that of its lines",
    sheet: (mean) => `
Contact resistance, µΩ
Panel | A | B | C
W1 | 35.1 | 36.2 | 34.3
W2 | 36.1 | 37.3 | 35.2
W3 | 33.1 | 36.1 | 34.9
Mean | 34.8 | 36.5 | ${mean}`,
    wrong: "38.4",
    told: ["survey-worked-out D6"],
    right: "34.8",
  },
  {
    name: "a digit lost in a coil's resistance that is like that of all the others",
    sheet: (ohms) => `
Mechanism
Panel | Closing coil Ω | Motor s
W1 | 121 | 8.1
W2 | 119 | 8.3
W3 | 120 | 7.9
W4 | 122 | 8.2
W5 | ${ohms} | 8.1
W6 | 118 | 8`,
    wrong: "12.1",
    told: ["survey-off-series B7"],
    right: "124",
  },
  {
    name: "an alarm that came off the pressure at which all others came",
    sheet: (bar) => `
Gas density monitors
Panel | Alarm || Result
| set (bar) | came at |
W1 | 0.4 | 0.402 | OK
W2 | 0.4 | 0.398 | OK
W3 | 0.4 | 0.401 | OK
W4 | 0.4 | ${bar} | OK
W5 | 0.4 | 0.403 | OK
W6 | 0.4 | 0.399 | OK`,
    wrong: "0.33",
    told: ["survey-off-series C7"],
    right: "0.396",
  },
  {
    name: "an index that is not its two readings, in a card of three lines",
    sheet: (index) => `
Polarization index, 5 kV DC
Test | 1 min (GΩ) | 10 min (GΩ) | PI
A-GND | 20 | 40.2 | 2.01
B-GND | 22 | 41.8 | ${index}
C-GND | 25 | 45 | 1.8`,
    wrong: "3.31",
    told: ["survey-quotient D4"],
    right: "1.9",
  },
  {
    name: "an error against what was applied",
    sheet: (error) => `
Panel meters, by secondary injection
Panel | Meter | Applied | Reading | Error % | Allowed %
P1 | Ammeter | 200 | 201 | 0.5 | 1.5
P2 | Ammeter | 200 | 199.2 | -0.4 | 1.5
P3 | Ammeter | 200 | 200.2 | ${error} | 1.5
P4 | Ammeter | 200 | 201.6 | 0.8 | 1.5
P5 | Ammeter | 11 | 11 | 0 | 1.5`,
    wrong: "1.4",
    told: ["survey-worked-out E5"],
    right: "0.1",
  },
  {
    name: "a panel called otherwise in the one line that another lacks",
    sheet: (name) => `
Contact resistance, µΩ
Panel | Phase | Reading
P1 | A | 35.1
P1 | B | 36.2
P1 | C | 34.3
P2 | A | 36.1
P2 | B | 37.3
P2 | C | 35.2
P3 | A | 33.1
${name} | B | 36.1
P3 | C | 34.9`,
    wrong: "P13",
    told: ["missing-row C9", "survey-name A10"],
    right: "P3",
  },
  {
    name: "a panel that is called otherwise in one table",
    sheet: (name) => `
Insulation, GΩ, 5 kV DC
Panel | A-E | B-E | C-E
F01 | 31.2 | 28.4 | 33.1
F02 | 30.6 | 27.4 | 35.2
F03 | 29.2 | 31.4 | 38.1
F04 | 33.3 | 29.9 | 36.7


Contact resistance, µΩ
Panel | A | B | C
F01 | 35.1 | 36.2 | 34.3
F02 | 36.1 | 37.3 | 35.2
${name} | 33.1 | 36.1 | 34.9
F04 | 35.8 | 36.4 | 34.2`,
    wrong: "F30",
    told: ["survey-name A13"],
    right: "F03",
  },
  {
    name: "a letter for a digit in the name of a panel",
    sheet: (name) => `
Insulation, GΩ, 5 kV DC
Panel | Phase | Reading
K01 | A | 31.2
K01 | B | 28.4
K01 | C | 33.1
K02 | A | 30.6
${name} | B | 27.4
K02 | C | 35.2`,
    wrong: "KO2",
    told: ["survey-name A7"],
    right: "K02",
  },
  {
    name: "a temperature far off those of the other lines",
    sheet: (air) => `
Insulation, GΩ, 5 kV DC
Panel | Reading | Air °C
W1 | 31.2 | 19
W2 | 28.4 | 20
W3 | 33.1 | ${air}
W4 | 30.6 | 21`,
    wrong: "72",
    told: ["survey-temperature C5"],
    right: "22",
  },
  {
    name: "a humidity above 100 %",
    sheet: (share) => `
Insulation, GΩ, 5 kV DC
Panel | Reading | RH %
W1 | 31.2 | 48
W2 | 28.4 | 47
W3 | 33.1 | ${share}
W4 | 30.6 | 49`,
    wrong: "480",
    told: ["survey-temperature C5"],
    right: "100",
  },
  {
    name: "a word among results that says neither passed nor failed",
    sheet: (word) => `
Contact resistance, µΩ
Panel | Reading | Result
W1 | 35.1 | Pass
W2 | 36.2 | Pass
W3 | 34.3 | ${word}
W4 | 36.1 | Pass
W5 | 37.3 | Pass`,
    wrong: "see John",
    told: ["survey-odd-result C5"],
    right: "N/A",
  },
];

describe("what is told besides, and what stays quiet beside it", () => {
  it.each(CASES)("$name", ({ sheet, wrong, told: expected, right }) => {
    expect(told([drawSheet("Sheet", sheet(wrong))])).toEqual(expected);
    expect(told([drawSheet("Sheet", sheet(right))])).toEqual([]);
  });

  it("two of another size are no slips: breakers of two ratings", () => {
    const ohms = [35, 36, 34, 35.5, 62, 61, 34.5, 36];
    expect(
      told([
        drawSheet(
          "Sheet",
          `
Contact resistance, µΩ
Panel | Reading
${ohms.map((value, index) => `W${index + 1} | ${value}`).join("\n")}`,
        ),
      ]),
    ).toEqual([]);
  });

  it("a form without a tester takes no label below for his name", () => {
    const form = (name: string, tester: string) =>
      drawSheet(
        name,
        `
Panel | ${name} | | Date | 2031-05-04
Duty | Feeder | | Operator | ${tester}
Bridge | MB-2 | | Room | 20 °C / 47 %

Contact resistance
Pole | µΩ
L1 | 34.1
L2 | 35.2
L3 | 33.9`,
      );
    const sheets = (tester: string) => [
      form("C21", "S. Vann"),
      form("C22", tester),
      form("C23", "S. Vann"),
    ];
    const blank = (tester: string) =>
      told(sheets(tester)).filter((line) => line.startsWith("survey-blank-label"));
    expect(blank("")).toEqual(["survey-blank-label C22!E2"]);
    expect(blank("S. Vann")).toEqual([]);
  });
});

describe("readings that stand twice", () => {
  const table = (names: readonly string[]) =>
    `Panel | A | B | C
${names.map((name, index) => `${name} | 35.${index + 1} | 36.${index + 4} | 34.${index + 2}`).join("\n")}`;
  const title = "\n\n\nContact resistance, µΩ, ";

  it("of the same panels, as a summary has them, are told of nobody", () => {
    const names = ["W1", "W2", "W3", "W4"];
    const sheet = `Contact resistance, µΩ, 100 A\n${table(names)}${title}summary\n${table(names)}`;
    expect(told([drawSheet("Sheet", sheet)])).toEqual([]);
  });

  it("of other panels, line by line, are told once", () => {
    const sheet = `Contact resistance, µΩ, 100 A\n${table(["W1", "W2", "W3", "W4"])}${title}100 A\n${table(["V1", "V2", "V3", "V4"])}`;
    expect(told([drawSheet("Sheet", sheet)])).toEqual(["survey-copied A10"]);
  });
});
