import { describe, expect, it } from "vitest";
import { SURVEY_RULES } from "../../src/survey/rules";
import { ANSWERS, checked, drawSheet, told } from "./support";

/**
 * One case of every rule that is told at its cell, and a neighbour that stays quiet. All sheets are invented.
 * Least values of insulation resistance by rated voltage: ANSI/NETA ATS, Table 100.1, 5 GΩ at 15 kV (from memory).
 */
interface Case {
  readonly name: string;
  /** The sheet with a part left open. */
  readonly sheet: (part: string) => string;
  readonly wrong: string;
  readonly told: readonly string[];
  readonly right: string;
}

const insulation = (line: string) => `
Insulation resistance, 5 kV DC, 1 min
Panel | Connection | Reading (GΩ) | Result | Date | Tested by
W1 | A-E | 31 | Pass | 2031-04-01 | N. Example
W1 | B-E | 33.5 | Pass | 2031-04-01 | N. Example
W2 | A-E | 36 | Pass | 2031-04-02 | N. Example
${line}
W3 | A-E | 41 | Pass | 2031-04-03 | N. Example
W3 | B-E | 43.5 | Pass | 2031-04-03 | N. Example`;

const withMinimum = (line: string) => `
Insulation resistance
Panel | Connection | Reading (GΩ) | Minimum (GΩ) | Result
W1 | A-E | 31 | 2 | Pass
W1 | B-E | 33.5 | 2 | Pass
W2 | A-E | 36 | 2 | Pass
${line}
W3 | A-E | 41 | 2 | Pass
W3 | B-E | 43.5 | 2 | Pass`;

const withstand = (line: string) => `
Power frequency withstand 27 kV, 60 s
Panel | Phase | Applied kV | Duration (s) | Flashover | Result
W1 | A | 27 | 60 | no | Pass
W1 | B | 27 | 60 | no | Pass
${line}
W2 | B | 27 | 60 | no | Pass`;

const corrected = (line: string) => `
Insulation resistance
Panel | Connection | Reading (GΩ) | Temperature (°C) | Corrected to 20 °C (GΩ)
W1 | A-E | 31 | 30 | 62
W1 | B-E | 33 | 30 | 66
W2 | A-E | 35 | 20 | 35
${line}
W3 | A-E | 39 | 10 | 19.5`;

const contact = (line: string) => `
Contact resistance
Panel | A (µΩ) | B (µΩ) | C (µΩ) | Test current (A) | Maximum (µΩ)
W1 | 24 | 26 | 25 | 200 | 60
W2 | 23 | 27 | 26 | 200 | 60
W3 | 25 | 24 | 27 | 200 | 60
${line}`;

const spread = (cell: string) => `
Contact resistance
Panel | A (µΩ) | B (µΩ) | C (µΩ) | Spread %
W1 | 30 | 31 | 36 | =(MAX(B3:D3)/MIN(B3:D3)-1)*100 -> 20
W2 | 31 | 32 | 36 | =(MAX(B4:D4)/MIN(B4:D4)-1)*100 -> 16.129
W3 | 32 | 33 | 36 | ${cell}
W4 | 33 | 34 | 36 | =(MAX(B6:D6)/MIN(B6:D6)-1)*100 -> 9.0909
W5 | 34 | 35 | 36 | =(MAX(B7:D7)/MIN(B7:D7)-1)*100 -> 5.8824`;

const typedSpread = (cell: string) => spread(cell).replace(/=[^>]*-> /g, "");

const curve = (reading: string) => `
Polarization index, 5 kV DC
Time | W1 (GΩ) | W2 (GΩ)
30 s | 10 | 12
1 min | 14 | 16
2 min | ${reading} | 19
10 min | 24 | 30`;

const staged = (lines: string) => `
Insulation resistance (GΩ)
Panel | Connection | Stage | Reading (GΩ) | Date
${lines}`;

const primary = (formula: string) => `
Current transformers, primary injection
Panel | Core | Primary (A) | Secondary (A) | Error (%)
W1 | metering | 600 | 1.001 | =ROUND((D3*600-C3)/C3*100,2) -> 0.1
W1 | protection | 600 | 0.999 | =ROUND((D4*600-C4)/C4*100,2) -> -0.1
W2 | metering | 200 | 1.002 | =ROUND((D5*200-C5)/C5*100,2) -> 0.2
W2 | protection | 200 | 0.998 | =ROUND((D6*200-C6)/C6*100,2) -> -0.2
W3 | metering | 200 | 1.001 | =ROUND((D7*200-C7)/C7*100,2) -> 0.1
W3 | protection | 200 | 1.002 | ${formula}`;

const bilingual = (word: string) => `
Essai diélectrique 27 kV, 60 s
Cellule | Phase | kV | s | Claquage انهيار | Résultat النتيجة
W1 | A | 27 | 60 | Non لا | Conforme مطابق
W1 | B | 27 | 60 | Non لا | Conforme مطابق
W2 | A | 27 | 60 | ${word} | Conforme مطابق
W2 | B | 27 | 60 | Non لا | Conforme مطابق`;

const joints = (line: string) => `
Busbar joints, 50 ft-lb by the drawing, accept 45 to 55
From | To | A (ft-lb) | B (ft-lb) | C (ft-lb) | OK?
Cub 1 | Cub 2 | 50 | 51 | 50 | OK
Cub 2 | Cub 3 | 51 | 50 | 52 | OK
${line}
Cub 4 | Cub 5 | 50 | 50 | 51 | OK`;

const ticked = (mark: string) => `
Installation checks, ✓ done, ✗ not done
Check | P1 | P2 | P3 | All done?
Floor bolts tight | ✓ | ✓ | ✓ | yes
Vents clear | ✓ | ${mark} | ✓ | yes
Shutters move freely | ✓ | ✓ | ✓ | yes
Covers on | ✓ | ✓ | ✓ | yes
Earth bar joined | ✓ | ✓ | ✓ | yes`;

const CASES: readonly Case[] = [
  {
    name: "a cross among ticks in a line that says that all is done",
    sheet: ticked,
    wrong: "✗",
    told: ["stop survey-word C4"],
    right: "✓",
  },
  {
    name: "an error worked out from the cell above, where each line has its own rated current in the formula",
    sheet: primary,
    wrong: "=ROUND((D7*200-C7)/C7*100,2) -> 0.1",
    told: ["query survey-formula E8"],
    right: "=ROUND((D8*200-C8)/C8*100,2) -> 0.2",
  },
  {
    name: "a discharge said in two languages",
    sheet: bilingual,
    wrong: "Oui نعم",
    told: ["stop survey-discharge E5"],
    right: "Non لا",
  },
  {
    name: "a torque outside two bounds that the heading gives after the value called for",
    sheet: joints,
    wrong: "Cub 3 | Cub 4 | 50 | 44 | 51 | OK",
    told: ["stop survey-limit D5"],
    right: "Cub 3 | Cub 4 | 50 | 45 | 51 | OK",
  },
  {
    name: "a reading outside the criterion, marked as passed",
    sheet: insulation,
    wrong: "W2 | B-E | 4.9 | Pass | 2031-04-02 | N. Example",
    told: ["stop survey-limit C6"],
    right: "W2 | B-E | 5 | Pass | 2031-04-02 | N. Example",
  },
  {
    name: "a reading outside the criterion that the line itself fails is a note",
    sheet: insulation,
    wrong: "W2 | B-E | 4.9 | Fail | 2031-04-02 | N. Example",
    told: ["note survey-limit C6"],
    right: "W2 | B-E | 5.1 | Pass | 2031-04-02 | N. Example",
  },
  {
    name: "a limit of the workbook's own counts before the criterion",
    sheet: withMinimum,
    wrong: "W2 | B-E | 1.99 | 2 | Pass",
    told: ["stop survey-limit C6"],
    right: "W2 | B-E | 2 | 2 | Pass",
  },
  {
    name: "what is known to be below a bound fails, what is known to be above one does not",
    sheet: withMinimum,
    wrong: "W2 | B-E | <1.9 | 2 | Pass",
    told: ["stop survey-limit C6"],
    right: "W2 | B-E | >1 | 2 | Pass",
  },
  {
    name: "a line marked as failed for nothing",
    sheet: insulation,
    wrong: "W2 | B-E | 38.5 | Fail | 2031-04-02 | N. Example",
    told: ["query survey-verdict D6"],
    right: "W2 | B-E | 38.5 | Pass | 2031-04-02 | N. Example",
  },
  {
    name: "a reading that is not there in a line that is done",
    sheet: insulation,
    wrong: "W2 | B-E | | Pass | 2031-04-02 | N. Example",
    told: ["stop survey-missing C6"],
    right: "W2 | B-E | n/a | n/a | 2031-04-02 | N. Example",
  },
  {
    name: "words where a reading belongs",
    sheet: insulation,
    wrong: "W2 | B-E | see email | Pass | 2031-04-02 | N. Example",
    told: ["query survey-unreadable C6"],
    right: "W2 | B-E | 38.5 GΩ | Pass | 2031-04-02 | N. Example",
  },
  {
    name: "a line not yet done is counted, and not told as missing",
    sheet: withMinimum,
    wrong: "W2 | B-E | | 2 |",
    told: ["note survey-open A2"],
    right: "W2 | B-E | 38 | 2 | Pass",
  },
  {
    name: "a date in the future",
    sheet: insulation,
    wrong: "W2 | B-E | 38.5 | Pass | 2031-06-03 | N. Example",
    told: ["stop survey-future E6"],
    right: "W2 | B-E | 38.5 | Pass | 2031-06-02 | N. Example",
  },
  {
    name: "a date of another year",
    sheet: insulation,
    wrong: "W2 | B-E | 38.5 | Pass | 2030-04-02 | N. Example",
    told: ["query survey-far-date E6"],
    right: "W2 | B-E | 38.5 | Pass | 2030-12-02 | N. Example",
  },
  {
    name: "a word where a date belongs",
    sheet: insulation,
    wrong: "W2 | B-E | 38.5 | Pass | soon | N. Example",
    told: ["query survey-no-date E6"],
    right: "W2 | B-E | 38.5 | Pass | 2 April 2031 | N. Example",
  },
  {
    name: "nobody named in one line",
    sheet: insulation,
    wrong: "W2 | B-E | 38.5 | Pass | 2031-04-02 |",
    told: ["query survey-blank F6"],
    right: "W2 | B-E | 38.5 | Pass | 2031-04-02 | O. Example",
  },
  {
    name: "a reading a thousand times off",
    sheet: insulation,
    wrong: "W2 | B-E | 38500 | Pass | 2031-04-02 | N. Example",
    told: ["query survey-unit-slip C6"],
    right: "W2 | B-E | 385 | Pass | 2031-04-02 | N. Example",
  },
  {
    name: "a limit looser than everywhere else",
    sheet: withMinimum,
    wrong: "W2 | B-E | 38.5 | 0.2 | Pass",
    told: ["query survey-other-limit D6"],
    right: "W2 | B-E | 38.5 | 2000 MΩ | Pass",
  },
  {
    name: "a limit tighter than everywhere else is a note",
    sheet: withMinimum,
    wrong: "W2 | B-E | 38.5 | 20 | Pass",
    told: ["note survey-other-limit D6"],
    right: "W2 | B-E | 38.5 | 2 | Pass",
  },
  {
    name: "the same panel and connection twice",
    sheet: withMinimum,
    wrong: "W2 | A-E | 38.5 | 2 | Pass",
    told: ["query survey-repeated C6"],
    right: "W2 | C-E | 38.5 | 2 | Pass",
  },
  {
    name: "a test level below the heading's",
    sheet: withstand,
    wrong: "W2 | A | 26 | 60 | no | Pass",
    told: ["stop survey-level C5"],
    right: "W2 | A | 26.8 | 60 | no | Pass",
  },
  {
    name: "a stress above the heading's level",
    sheet: withstand,
    wrong: "W2 | A | 28.5 | 60 | no | Pass",
    told: ["query survey-level C5"],
    right: "W2 | A | 27.2 | 60 | no | Pass",
  },
  {
    name: "a level held for too short a time",
    sheet: withstand,
    wrong: "W2 | A | 27 | 45 | no | Pass",
    told: ["stop survey-duration D5"],
    right: "W2 | A | 27 | 75 | no | Pass",
  },
  {
    name: "a disruptive discharge in a line that passes",
    sheet: withstand,
    wrong: "W2 | A | 27 | 60 | yes at 24 kV | Pass",
    told: ["stop survey-discharge E5"],
    right: "W2 | A | 27 | 60 | yes at 24 kV | Fail",
  },
  {
    name: "a test current below that of the other lines",
    sheet: contact,
    wrong: "W4 | 24 | 26 | 26 | 20 | 60",
    told: ["stop survey-level E6"],
    right: "W4 | 24 | 26 | 26 | 200 | 60",
  },
  {
    name: "a pole apart from the others",
    sheet: contact,
    wrong: "W4 | 24 | 26 | 41 | 200 | 60",
    told: ["query survey-apart D6"],
    right: "W4 | 24 | 26 | 36 | 200 | 60",
  },
  {
    name: "poles that do not close together",
    sheet: (time) => `
Breaker timing
Breaker | Closing A (ms) | Closing B (ms) | Closing C (ms)
52-W1 | 60 | 61 | ${time}
52-W2 | 60 | 61 | 62`,
    // A quarter of a cycle at 60 Hz is 4.17 ms (IEC 62271-100, from memory).
    wrong: "66",
    told: ["query survey-apart D3"],
    right: "64",
  },
  {
    name: "a corrected value that does not follow from its reading",
    sheet: corrected,
    wrong: "W2 | B-E | 37 | 30 | 80",
    told: ["query survey-correction E6"],
    right: "W2 | B-E | 37 | 30 | 74",
  },
  {
    name: "a reading divided by its factor",
    sheet: corrected,
    wrong: "W2 | B-E | 37 | 30 | 18.5",
    told: ["query survey-correction E6"],
    right: "W2 | B-E | 37 | 10 | 18.5",
  },
  {
    name: "a formula that takes another line",
    sheet: spread,
    wrong: "=(MAX(B4:D4)/MIN(B4:D4)-1)*100 -> 12.5",
    told: ["query survey-formula E5"],
    right: "=(MAX(B5:D5)/MIN(B5:D5)-1)*100 -> 12.5",
  },
  {
    name: "a typed value in a computed column",
    sheet: spread,
    wrong: "12.5",
    told: ["query survey-typed-over E5"],
    right: "=(MAX(B5:D5)/MIN(B5:D5)-1)*100 -> 12.5",
  },
  {
    name: "a typed spread that does not follow from its line",
    sheet: typedSpread,
    wrong: "2.5",
    told: ["query survey-worked-out E5"],
    right: "12.5",
  },
  {
    name: "an insulation reading that falls with time",
    sheet: curve,
    wrong: "9",
    told: ["query survey-falls B5"],
    right: "17",
  },
  {
    name: "a counter that runs back",
    sheet: (count) => `
Operating mechanism
Breaker | Closing coil current (A) | Counter before | Counter after
52-W1 | 1.6 | 12 | 32
52-W2 | 1.7 | 14 | ${count}`,
    wrong: "4",
    told: ["query survey-counter D4"],
    right: "14",
  },
  {
    name: "insulation that is far lower after the withstand test",
    sheet: (after) =>
      staged(
        `W1 | A-E | before | 30 | 2031-04-01\nW1 | A-E | after | ${after} | 2031-04-03\nW2 | A-E | before | 36 | 2031-04-01\nW2 | A-E | after | 35 | 2031-04-03`,
      ),
    wrong: "9.9",
    told: ["query survey-drop D4"],
    right: "10",
  },
  {
    name: "a test after that is dated before the one before",
    sheet: (date) =>
      staged(
        `W1 | A-E | before | 30 | 2031-04-02\nW1 | A-E | after | 29 | ${date}\nW2 | A-E | before | 36 | 2031-04-02\nW2 | A-E | after | 35 | 2031-04-03`,
      ),
    wrong: "2031-04-01",
    told: ["query survey-stage-order E4"],
    right: "2031-04-02",
  },
  {
    name: "one panel stressed before its insulation was tested",
    sheet: (date) => `
Log of tests
Date | Panel | Test | Value | Unit
2031-04-01 | W1 | Insulation resistance | 31 | GΩ
2031-04-02 | W1 | Withstand | 27 | kV
2031-04-01 | W2 | Insulation resistance | 32 | GΩ
2031-04-02 | W2 | Withstand | 27 | kV
2031-04-01 | W3 | Insulation resistance | 33 | GΩ
2031-04-02 | W3 | Withstand | 27 | kV
${date} | W4 | Insulation resistance | 34 | GΩ
2031-04-02 | W4 | Withstand | 27 | kV`,
    wrong: "2031-04-03",
    told: ["query survey-stage-order A10"],
    right: "2031-04-02",
  },
  {
    name: "a whole panel's readings that are another's",
    sheet: (line) => `
Insulation resistance
Panel | A-E (GΩ) | B-E (GΩ) | C-E (GΩ)
W1 | 31.2 | 28.4 | 30.7
W2 | 44.1 | 39.3 | 41.8
${line}`,
    wrong: "W3 | 31.2 | 28.4 | 30.7",
    told: ["query survey-copied B5"],
    right: "W3 | 31.2 | 28.4 | 30.8",
  },
  {
    name: "a connection that one panel lacks",
    sheet: (line) => `
Insulation resistance
Panel | Connection | Reading (GΩ)
W1 | A-E | 31
W1 | B-E | 28
W2 | A-E | 44
W2 | B-E | 39
W3 | A-E | 42
W3 | B-E | 37
W4 | A-E | 45
W4 | B-E | 38
W5 | A-E | 43${line}`,
    wrong: "",
    told: ["query missing-row C11"],
    right: "\nW5 | B-E | 36",
  },
  {
    name: "a word that stands out in a column of one word",
    sheet: (word) => `
Current transformers, polarity
CT | Ratio | Primary (A) | Secondary (A) | Polarity
T1 | 600/5 | 120 | 1.00 | correct
T2 | 600/5 | 120 | 1.01 | correct
T3 | 600/5 | 120 | 1.02 | ${word}
T4 | 600/5 | 120 | 0.99 | correct
T5 | 600/5 | 120 | 0.98 | correct`,
    wrong: "reversed",
    told: ["stop survey-word E5"],
    right: "not fitted",
  },
  {
    name: "a remark that speaks against the result",
    sheet: (remark) => `
Insulation resistance
Panel | Connection | Reading (GΩ) | Result | Remarks
W1 | A-E | 31 | Pass | ${remark}
W1 | B-E | 28 | Pass |`,
    wrong: "estimated, battery flat",
    told: ["query survey-remark E3"],
    right: "no flashover",
  },
  {
    name: "a question answered with yes, in a line under the values",
    sheet: (index) => `
Polarization index
Time | W1 | W2
1 min (GΩ) | 14 | 18
10 min (GΩ) | 24 | 27
PI | 1.71 | ${index}
PI 1.5 or more? | yes | yes`,
    wrong: "1.49",
    told: ["stop survey-bound C5"],
    right: "1.5",
  },
  {
    name: "a question answered with yes, in a column beside the values",
    sheet: (index) => `
Polarization index
Panel | 1 min (GΩ) | 10 min (GΩ) | PI | 1.5 or more?
W1 | 14 | 24 | 1.71 | yes
W2 | 18 | 27 | ${index} | yes`,
    wrong: "1.49",
    told: ["stop survey-bound D4"],
    right: "1.5",
  },
  {
    name: "a day in the future over a part of the lines",
    sheet: (day) => `
Insulation resistance
Panel | Connection | Reading (GΩ)
Tested on 2031-04-02 ||
W1 | A-E | 31
W1 | B-E | 32
Tested on ${day} ||
W2 | A-E | 31.5
W2 | B-E | 33`,
    wrong: "2031-08-02",
    told: ["stop survey-future A6"],
    right: "2031-04-03",
  },
];

const toldOf = (drawing: string) =>
  checked([drawSheet("Sheet", drawing)]).findings.map(
    ({ weight, rule, address }) => `${weight} ${rule} ${address}`,
  );

describe("rules of the survey", () => {
  it.each(CASES)("$name", ({ sheet, wrong, told: expected, right }) => {
    expect(toldOf(sheet(wrong))).toEqual(expected);
    expect(toldOf(sheet(right))).toEqual([]);
  });

  const instruments = drawSheet(
    "Instruments",
    `
Instrument | Serial | Calibration due
IR-05 | 90112 | 2031-03-31
IR-06 | 90113 | 2031-12-31`,
  );
  const used = (instrument: string) =>
    drawSheet(
      "Sheet",
      `
Insulation resistance, 5 kV DC
Panel | Connection | Reading (GΩ) | Date | Instrument
W1 | A-E | 31 | 2031-04-02 | IR-06
W1 | B-E | 28 | 2031-04-02 | ${instrument}
W2 | A-E | 44 | 2031-04-02 | IR-06`,
    );
  const form = (panel: number, by = "N. Example", date = "2031-04-11", instrument = "IR-06") =>
    drawSheet(
      `W${panel}`,
      `
Cubicle: | W${panel} || Date: | ${date}
Tested by: | ${by} || Instrument: | ${instrument}

Insulation resistance
Connection | Reading (GΩ)
A-E | 3${panel}.2
B-E | 2${panel}.6`,
    );

  it("an instrument used after its calibration ran out, by a list on another sheet", () => {
    expect(told([used("IR-05"), instruments])).toEqual(["survey-calibration E4"]);
    expect(told([used("IR-06"), instruments])).toEqual([]);
    expect(told([form(1), form(2, "N. Example", "2031-04-11", "IR-05"), instruments])).toEqual([
      "survey-calibration W2!E2",
    ]);
  });

  it("the list of instruments itself is no table of records", () => {
    expect(checked([instruments]).blocks).toEqual([]);
  });

  it("a label that is blank on one form of several, and a form dated in the future", () => {
    expect(told([form(1), form(2, ""), form(3), form(4)])).toEqual(["survey-blank-label W2!B2"]);
    expect(told([form(1), form(2, "N. Example", "2031-09-11"), form(3)])).toEqual([
      "survey-future W2!E1",
    ]);
    expect(told([form(1), form(2), form(3)])).toEqual([]);
  });

  it("a limit that most readings miss and the lines pass is asked about once", () => {
    const lines = (minimum: number) =>
      [1, 2, 3].flatMap((panel) => [
        `W${panel} | A-E | ${30 + panel} | ${minimum} | Pass`,
        `W${panel} | B-E | ${40 + panel} | ${minimum} | Pass`,
      ]);
    const sheet = (minimum: number) => [
      drawSheet("Sheet", [
        "Insulation resistance",
        "Panel | Connection | Reading (GΩ) | Minimum (GΩ) | Result",
        ...lines(minimum),
      ]),
    ];
    expect(told(sheet(500))).toEqual(["survey-limit-doubt A2"]);
    expect(told(sheet(5))).toEqual([]);
  });

  it("a level below the criterion for all lines is asked about once, where the rated voltage is known", () => {
    const sheet = (level: number) => [
      drawSheet("Sheet", [
        "Power frequency withstand",
        "Panel | Phase | Applied kV | Duration (s) | Flashover | Result",
        ...[1, 2, 3, 4].map((panel) => `W${panel} | A | ${level} | 60 | no | Pass`),
      ]),
    ];
    // ANSI/NETA ATS: 27 kV AC for metal-clad switchgear of 15 kV on site, three quarters of the 36 kV of IEEE C37.20.2.
    expect(told(sheet(20))).toEqual(["survey-level-criterion A2"]);
    expect(told(sheet(27))).toEqual([]);
    expect(told(sheet(20), {})).toEqual([]);
  });

  it("names the rules once each", () => {
    const ids = SURVEY_RULES.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe("what readings come to", () => {
  const counts = (drawing: string, answers = ANSWERS) =>
    checked([drawSheet("Sheet", drawing)], answers).counts;

  it("is never Pass without a limit: no criterion without the rated voltage, none for a kind that has none", () => {
    const drawing = insulation("W2 | B-E | 38.5 | Pass | 2031-04-02 | N. Example");
    expect(counts(drawing)).toMatchObject({ pass: 6, inconclusive: 0 });
    for (const answers of [{}, { ratedkV: 15 }, { basis: "NETA" as const }])
      expect(counts(drawing, answers)).toMatchObject({ pass: 0, fail: 0, inconclusive: 6 });
    expect(counts("Contact resistance\nPanel | A (µΩ) | B (µΩ)\nW1 | 24 | 26")).toMatchObject({
      pass: 0,
      inconclusive: 2,
    });
    expect(counts(withstand("W2 | A | 27 | 60 | no | Pass"))).toMatchObject({
      pass: 0,
      inconclusive: 4,
    });
  });

  it.each([
    [">1", { pass: 5, fail: 0, inconclusive: 1 }],
    [">2", { pass: 6, fail: 0, inconclusive: 0 }],
    ["<1", { pass: 5, fail: 1, inconclusive: 0 }],
    ["<100", { pass: 5, fail: 0, inconclusive: 1 }],
  ])("judges %s against at least 2 by what it proves", (reading, expected) => {
    expect(counts(withMinimum(`W2 | B-E | ${reading} | 2 | Pass`))).toMatchObject(expected);
  });

  it.each([
    [">100", { pass: 9, fail: 3, inconclusive: 0 }],
    [">20", { pass: 9, fail: 0, inconclusive: 3 }],
    ["<20", { pass: 12, fail: 0, inconclusive: 0 }],
    ["<100", { pass: 9, fail: 0, inconclusive: 3 }],
  ])("judges %s against at most 60 by what it proves", (reading, expected) => {
    const cells = Array(3).fill(reading).join(" | ");
    expect(counts(contact(`W4 | ${cells} | 200 | 60`))).toMatchObject(expected);
  });

  it("counts a reading that is not there as missing, and words as inconclusive", () => {
    expect(counts(withMinimum("W2 | B-E | | 2 | Pass"))).toMatchObject({ pass: 5, missing: 1 });
    expect(counts(withMinimum("W2 | B-E | soon | 2 | Pass"))).toMatchObject({
      pass: 5,
      inconclusive: 1,
    });
  });

  it("takes no criterion of main circuits for wiring tested at 500 V", () => {
    const wiring =
      "Insulation resistance of wiring, 500 V DC\nPanel | Circuit | Reading (MΩ)\nW1 | trip | 300\nW1 | close | 310";
    expect(counts(wiring)).toMatchObject({ fail: 0 });
  });
});
