import { expect, test } from "vitest";
import { checked, drawSheet, readingsOf, surveyOf, told } from "./support";

/** Habits of a later hand, each told in other words here (all invented). */

const ids = (sheet: string) => told([drawSheet("Sheet", sheet)]);

test("references that number the lines are no panels where a column behind them names these", () => {
  const drawn = ["R-E", "Y-E"].flatMap((phase, at) =>
    ["K01", "K02", "K03"].map(
      (board, line) => `IR/00${3 * at + line} | ${board} | ${phase} | ${20 + line}.5 | ok`,
    ),
  );
  const [block] = surveyOf(["Ref | Board | Terminals | Reading (GΩ) | Verdict", ...drawn]).blocks;
  expect(block?.panels).toEqual(["K01", "K02", "K03"]);
});

test("a column called Meter over instruments is no length, and their list is known", () => {
  const lines = (meter: string) =>
    ["A1", "A2", "A3", "A4"].map(
      (panel, at) => `${panel} | ${30 + at}.1 | 2031-05-0${at + 1} | ${at === 2 ? meter : "DU-1"}`,
    );
  const sheets = (meter: string) => [
    drawSheet("Sheet", ["Panel | Contact (µΩ) | Date | Meter", ...lines(meter)]),
    drawSheet("Meters", [
      "Meter | What | Calibrated | Due",
      "DU-1 | micro-ohmmeter | 2030-11-03 | 2031-11-03",
      "DU-2 | micro-ohmmeter | 2030-04-20 | 2031-04-20",
    ]),
  ];
  expect(told(sheets("DU-2"))).toContain("survey-calibration D4");
  expect(told(sheets("DU-1"))).toEqual([]);
});

test("bounds behind a pressure are none of the alarm's, which has its own", () => {
  const sheet = (pressure: string) => `
SF6 pressures (made up)
Panel | Pressure at 20 °C (MPa) | Minimum (MPa) | Maximum (MPa) | Alarm came (MPa) | Alarm set (MPa) | Result
GP-1 | 0.131 | 0.125 | 0.14 | 0.1147 | 0.115 | pass
GP-2 | 0.129 | 0.125 | 0.14 | 0.1148 | 0.115 | pass
GP-3 | ${pressure} | 0.125 | 0.14 | 0.1152 | 0.115 | pass
GP-4 | 0.130 | 0.125 | 0.14 | 0.1151 | 0.115 | pass`;
  expect(ids(sheet("0.118"))).toContain("survey-limit B5");
  expect(ids(sheet("0.132"))).toEqual([]);
});

test("circuits across under megohms, closing and tripping among them", () => {
  const sheet = (motor: string) => `
Control wiring insulation, MΩ at 500 V DC to earth, least 2 MΩ (made up)
Panel | Closing | Tripping | Motor | Heater | Accepted
No. 1 | 149 | 106 | 129 | 100 | Y
No. 2 | 133 | 80 | ${motor} | 154 | Y
No. 3 | 124 | 84 | 156 | 155 | Y
No. 4 | 98 | 111 | 81 | 120 | Y`;
  expect(readingsOf(sheet("110"))).toHaveLength(16);
  expect(ids(sheet("1.4"))).toContain("survey-limit D4");
  expect(ids(sheet("110"))).toEqual([]);
});

test("a current injected into an earthing circuit is told where it is too low", () => {
  const sheet = (current: string) => `
Earth continuity, injected 30 A DC (made up)
Panel | Part | Injected (A) | R (mΩ) | Max (mΩ) | OK
B1 | Door | 30 | 1.4 | 5 | yes
B2 | Door | 30 | 2.0 | 5 | yes
B3 | Door | ${current} | 1.8 | 5 | yes
B4 | Door | 30 | 2.4 | 5 | yes`;
  expect(ids(sheet("3"))).toContain("survey-level C5");
  expect(ids(sheet("30"))).toEqual([]);
});

test("checks down and panels across, with a day and a name for each and one answer of all at the end", () => {
  const sheet = (mark: string, by: string) => `
Function checks, x = in order, o = not in order (made up)
Check | A01 | A02 | A03 | A04 | A05 | Overall
Closes and opens locally | x | x | x | x | x | complete
Anti-pumping | x | x | ${mark} | x | x | complete
Mechanical trip | x | x | x | x | x | complete
Heater | x | x | x | x | x | complete
Date | 2031-05-04 | 2031-05-04 | 2031-05-04 | 2031-05-04 | 2031-05-04 |
Checked by | D. Ekman | D. Ekman | D. Ekman | ${by} | D. Ekman |`;
  expect(ids(sheet("o", "D. Ekman"))).toEqual(["survey-word D4"]);
  expect(ids(sheet("x", "D. Ekman"))).toEqual([]);
  expect(checked([drawSheet("Sheet", sheet("x", "D. Ekman"))]).findings).toEqual([]);
});
