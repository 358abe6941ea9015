import { describe, expect, it } from "vitest";
import { drawSheet, readingsOf, surveyOf } from "./support";

/** Layouts as people keep them, all invented: what comes out as tables and as readings. */
interface Layout {
  readonly name: string;
  readonly drawing: string;
  readonly merges?: readonly string[];
  readonly blocks: readonly string[];
  readonly readings: readonly string[];
}

const LAYOUTS: readonly Layout[] = [
  {
    name: "one table, its first line much like titles",
    drawing: `
Insulation resistance of main circuits, 5 kV DC, 1 min
Panel | Connection | Reading (GΩ) | Result
W1 | A-E | 31 | Pass
W1 | B-E | 12 | Pass
W2 | A-E | 44 | Pass`,
    blocks: ["A2:D5 insulation of W1, W2"],
    readings: [
      "insulation; W1; A-E; 31 GΩ; C3",
      "insulation; W1; B-E; 12 GΩ; C4",
      "insulation; W2; A-E; 44 GΩ; C5",
    ],
  },
  {
    name: "two tables side by side",
    drawing: `
Insulation resistance |||| Contact resistance
Panel | A-E (GΩ) | B-E (GΩ) || Panel | A (µΩ) | B (µΩ)
W1 | 31 | 28 || W1 | 24 | 26
W2 | 44 | 39 || W2 | 23 | 27`,
    blocks: ["A2:C4 insulation of W1, W2", "E2:G4 contact of W1, W2"],
    readings: [
      "insulation; W1; L1-E; 31 GΩ; B3",
      "insulation; W1; L2-E; 28 GΩ; C3",
      "insulation; W2; L1-E; 44 GΩ; B4",
      "insulation; W2; L2-E; 39 GΩ; C4",
      "contact; W1; L1; 24 µΩ; F3",
      "contact; W1; L2; 26 µΩ; G3",
      "contact; W2; L1; 23 µΩ; F4",
      "contact; W2; L2; 27 µΩ; G4",
    ],
  },
  {
    name: "a form with labels over small tables",
    drawing: `
Cubicle: | W7 || Date: | 2031-04-11
Tested by: | N. Example || Instrument: | IR-05

Insulation resistance
Connection | Reading (GΩ) | Minimum (GΩ)
A-E | 31 | 2
B-E | 28 | 2

Contact resistance
Pole | Reading (µΩ) | Maximum (µΩ)
A | 24 | 60
B | 26 | 60`,
    blocks: ["A5:C7 insulation of W7", "A10:C12 contact of W7"],
    readings: [
      "insulation; W7; A-E; 31 GΩ; B6",
      "insulation; W7; B-E; 28 GΩ; B7",
      "contact; W7; A; 24 µΩ; B11",
      "contact; W7; B; 26 µΩ; B12",
    ],
  },
  {
    name: "a matrix with the panels across",
    drawing: `
Insulation resistance, values in GΩ
Connection | W1 | W2 | W3
A-E | 31 | 44 | 51
B-E | 28 | 39 | 47`,
    blocks: ["A2:D4 insulation of W1, W2, W3"],
    readings: [
      "insulation; W1; L1-E; 31 GΩ; B3",
      "insulation; W1; L2-E; 28 GΩ; B4",
      "insulation; W2; L1-E; 44 GΩ; C3",
      "insulation; W2; L2-E; 39 GΩ; C4",
      "insulation; W3; L1-E; 51 GΩ; D3",
      "insulation; W3; L2-E; 47 GΩ; D4",
    ],
  },
  {
    name: "a head of two lines, joined across and down",
    drawing: `
Contact resistance
Panel | Reading (µΩ) || | Test current (A)
| A | B | C |
W1 | 24 | 26 | 25 | 200
W2 | 23 | 27 | 26 | 200`,
    merges: ["B2:D2", "A2:A3", "E2:E3"],
    blocks: ["A2:E5 contact of W1, W2"],
    readings: [
      "contact; W1; L1; 24 µΩ; B4",
      "contact; W1; L2; 26 µΩ; C4",
      "contact; W1; L3; 25 µΩ; D4",
      "contact; W2; L1; 23 µΩ; B5",
      "contact; W2; L2; 27 µΩ; C5",
      "contact; W2; L3; 26 µΩ; D5",
    ],
  },
  {
    name: "a head of four lines: closing and opening in one table, units in a line of their own",
    drawing: `
Breaker | Operating times |||||
| Closing ||| Opening ||
| A | B | C | A | B | C
| ms | ms | ms | ms | ms | ms
52-W1 | 61 | 62 | 61.5 | 38 | 38.5 | 37.5
52-W2 | 60 | 61 | 60.5 | 37 | 38 | 37.5`,
    merges: ["B1:G1", "B2:D2", "E2:G2", "A1:A4"],
    blocks: ["A1:G6 timing of 52-W1, 52-W2"],
    readings: [
      "timing; 52-W1; L1; closing; 61 ms; B5",
      "timing; 52-W1; L2; closing; 62 ms; C5",
      "timing; 52-W1; L3; closing; 61.5 ms; D5",
      "timing; 52-W1; L1; opening; 38 ms; E5",
      "timing; 52-W1; L2; opening; 38.5 ms; F5",
      "timing; 52-W1; L3; opening; 37.5 ms; G5",
      "timing; 52-W2; L1; closing; 60 ms; B6",
      "timing; 52-W2; L2; closing; 61 ms; C6",
      "timing; 52-W2; L3; closing; 60.5 ms; D6",
      "timing; 52-W2; L1; opening; 37 ms; E6",
      "timing; 52-W2; L2; opening; 38 ms; F6",
      "timing; 52-W2; L3; opening; 37.5 ms; G6",
    ],
  },
  {
    name: "units in a line under the titles, and a column that is no reading",
    drawing: `
Insulation resistance
Panel | A-E | B-E | Air
 | GΩ | GΩ | °C
W1 | 31 | 28 | 20
W2 | 44 | 39 | 21`,
    blocks: ["A2:D5 insulation of W1, W2"],
    readings: [
      "insulation; W1; L1-E; 31 GΩ; B4",
      "insulation; W1; L2-E; 28 GΩ; C4",
      "insulation; W2; L1-E; 44 GΩ; B5",
      "insulation; W2; L2-E; 39 GΩ; C5",
    ],
  },
  {
    name: "before and after as groups of columns",
    drawing: `
Insulation resistance (GΩ)
Panel | Before withstand ||| After withstand ||
| A-E | B-E | C-E | A-E | B-E | C-E
W1 | 31 | 28 | 30 | 29 | 27 | 30`,
    merges: ["B2:D2", "E2:G2", "A2:A3"],
    blocks: ["A2:G4 insulation of W1"],
    readings: [
      "insulation; W1; L1-E; before; 31 GΩ; B4",
      "insulation; W1; L2-E; before; 28 GΩ; C4",
      "insulation; W1; L3-E; before; 30 GΩ; D4",
      "insulation; W1; L1-E; after; 29 GΩ; E4",
      "insulation; W1; L2-E; after; 27 GΩ; F4",
      "insulation; W1; L3-E; after; 30 GΩ; G4",
    ],
  },
  {
    name: "banners between the lines that name the panel",
    drawing: `
Insulation resistance, 5 kV DC
Connection | Reading (GΩ) | Result
Panel W1 ||
A-E | 31 | Pass
B-E | 28 | Pass
Panel W2 ||
A-E | 44 | Pass
B-E | 39 | Pass`,
    blocks: ["A2:C8 insulation of Panel W1, Panel W2"],
    readings: [
      "insulation; Panel W1; A-E; 31 GΩ; B4",
      "insulation; Panel W1; B-E; 28 GΩ; B5",
      "insulation; Panel W2; A-E; 44 GΩ; B7",
      "insulation; Panel W2; B-E; 39 GΩ; B8",
    ],
  },
  {
    name: "a log of mixed tests with a column of units",
    drawing: `
Date | Panel | Test | Position | Value | Unit | Result
2031-04-02 | W1 | Insulation resistance | A-E | 31 | GΩ | Pass
2031-04-02 | W1 | Contact resistance | A | 24 | µΩ | Pass
2031-04-03 | W2 | Insulation resistance | A-E | 44 | GΩ | Pass
2031-04-03 | W2 | Contact resistance | A | 23 | µΩ | Pass`,
    blocks: ["A1:G5 insulation, contact of W1, W2"],
    readings: [
      "insulation; W1; A-E; 31 GΩ; E2",
      "contact; W1; A; 24 µΩ; E3",
      "insulation; W2; A-E; 44 GΩ; E4",
      "contact; W2; A; 23 µΩ; E5",
    ],
  },
  {
    name: "German titles, numbers as text with a comma",
    drawing: `
Isolationswiderstand
Feld | Messung | Messwert (GΩ) | Bewertung
W1 | L1-E | '31,5 | i.O.
W1 | L2-E | '28,2 | i.O.
W2 | L1-E | '41,25 | i.O.`,
    blocks: ["A2:D5 insulation of W1, W2"],
    readings: [
      "insulation; W1; L1-E; 31.5 GΩ; C3",
      "insulation; W1; L2-E; 28.2 GΩ; C4",
      "insulation; W2; L1-E; 41.25 GΩ; C5",
    ],
  },
  {
    name: "Arabic titles, units and digits",
    drawing: `
مقاومة العزل
الخلية | بين | القراءة (جيجا أوم)
W1 | L1-E | ٣١٫٥
W1 | L2-E | ٢٨٫٢
W2 | L1-E | ٤٤`,
    blocks: ["A2:C5 insulation of W1, W2"],
    readings: [
      "insulation; W1; L1-E; 31.5 GΩ; C3",
      "insulation; W1; L2-E; 28.2 GΩ; C4",
      "insulation; W2; L1-E; 44 GΩ; C5",
    ],
  },
  {
    name: "French titles, the panel written once, a blank line and an average at the foot",
    drawing: `
Résistance de contact
Cellule | Pôle | Mesure (µΩ)
W1 | A | 24
 | B | 26
 | C | 25

W2 | A | 23
 | B | 27
 | C | 26
Average || 25.2`,
    blocks: ["A2:C10 contact of W1, W2"],
    readings: [
      "contact; W1; A; 24 µΩ; C3",
      "contact; W1; B; 26 µΩ; C4",
      "contact; W1; C; 25 µΩ; C5",
      "contact; W2; A; 23 µΩ; C7",
      "contact; W2; B; 27 µΩ; C8",
      "contact; W2; C; 26 µΩ; C9",
    ],
  },
  {
    name: "withstand tests, whose reading is the level",
    drawing: `
Power frequency withstand
Panel | Phase | Applied kV | Duration (s) | Flashover | Result
W1 | A | 27 | 60 | no | Pass
W1 | B | 27 | 60 | no | Pass`,
    blocks: ["A2:F4 withstand of W1"],
    readings: ["withstand; W1; A; 27 kV; C3", "withstand; W1; B; 27 kV; C4"],
  },
  {
    name: "combinations in figures: 12, 23, 31",
    drawing: `
Insulation resistance between phases, GΩ
Panel | 12 | 23 | 31
W1 | 31 | 28 | 30
W2 | 44 | 39 | 41`,
    blocks: ["A2:D4 insulation of W1, W2"],
    readings: [
      "insulation; W1; L1-L2; 31 GΩ; B3",
      "insulation; W1; L2-L3; 28 GΩ; C3",
      "insulation; W1; L3-L1; 30 GΩ; D3",
      "insulation; W2; L1-L2; 44 GΩ; B4",
      "insulation; W2; L2-L3; 39 GΩ; C4",
      "insulation; W2; L3-L1; 41 GΩ; D4",
    ],
  },
];

describe("layouts of somebody's own", () => {
  it.each(LAYOUTS)("$name", ({ drawing, merges, blocks, readings }) => {
    const { blocks: found } = surveyOf(drawing, merges);
    expect(
      found.map(
        ({ range, kinds, panels }) => `${range} ${kinds.join(", ")} of ${panels.join(", ")}`,
      ),
    ).toEqual(blocks);
    expect(readingsOf(drawing, merges)).toEqual(readings);
  });

  it("finds nothing where no records are kept", () => {
    for (const drawing of [
      "Meeting notes\nMonday | site walk\nTuesday | delivery of the cubicles",
      "Item | Price | Quantity\nSeal | 4 | 12\nLock | 9 | 3",
    ])
      expect(surveyOf(drawing).blocks, drawing).toEqual([]);
  });

  it("leaves an empty sheet and one without cells alone", () => {
    expect(surveyOf([""]).blocks).toEqual([]);
    expect(drawSheet("Sheet", [""]).cells?.rowCount).toBe(1);
  });
});
