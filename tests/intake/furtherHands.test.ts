import { expect, test } from "vitest";
import { titleSense } from "../../src/intake/understand/titleSense";
import { timesAcross } from "../../src/intake/words/timesAcross";
import { waveAfter, withoutWave } from "../../src/intake/words/wave";
import { placed } from "../support/mesaIntake";

/**
 * Further ways to lay exports out, for the sample lineup by American practice (all invented). What belongs
 * where follows from the text itself.
 */

test("a place and its phase in one cell, elapsed times across, the unit over all", () => {
  const found = placed("pi.csv", [
    "PI MAIN BUS BEFORE HIPOT, 5 kV DC, READINGS IN GIGOHMS (made up)",
    "Bus / phase;0:30;1:00;2:00;10:00;PI",
    "Bus 1 A-Gnd;36.4;46.1;60.9;94.5;2.05",
    "Bus 1 B-Gnd;58.9;74.6;98.5;152.9;2.05",
    "Bus 1 C-Gnd;32.3;40.9;54.0;83.8;2.05",
  ]);
  expect(found).toContain("insulation Bus 1 Busbar B-E before r30s=58900");
  expect(found).toContain("insulation Bus 1 Busbar A-E before r10min=94500");
});

test.each([
  [
    ["Minutes", "1", "2", "5", "10"],
    [60, 120, 300, 600],
  ],
  [
    ["Bus", "15 s", "1'", "10'"],
    [15, 60, 600],
  ],
  [
    ["Cell", "30", "60", "600", "PI"],
    [30, 60, 600],
  ],
  [["Cell", "0:30", "1:00", "0:45"], []],
  [["M1", "31", "32", "33"], []],
  [["1", "2", "3"], []],
  [["Panel", "1", "2", "3"], []],
])("times across %j are %j", (cells, seconds) => {
  expect([...timesAcross(cells).values()]).toEqual(seconds);
});

test("a device across is told as it is written, a panel by its name", () => {
  const of = (title: string) =>
    titleSense(title, { letters: new Set(), ends: "", objectOf: () => "M1" }).object;
  expect(of("52-M1")).toBe("52-M1");
  expect(of("m1")).toBe("M1");
});

test("the title of the names that stand before panels across has their unit and time", () => {
  const found = placed("ir.csv", [
    "Insulation before hipot, 5000 V DC (made up)",
    "R 1 min (GΩ);52-F1;52-F2;52-F3",
    "A-Gnd;129.3;239.6;69.1",
    "B-Gnd;241.9;91.2;206.7",
    "C-Gnd;251.6;217.2;212.7",
  ]);
  expect(found.filter((line) => line.endsWith("reading=91200"))).toHaveLength(1);
  expect(found.filter((line) => line.includes(" reading="))).toHaveLength(9);
});

test("unit in words in the banner over a table, the control voltage with its wave", () => {
  const found = placed("timing.csv", [
    "BREAKER TIMING (made up)",
    "Control voltage,126 V DC",
    "",
    "CLOSE TIME (milliseconds)",
    "Breaker,Pole A,Pole B,Pole C,Spread",
    "52-F1,52.7,52.2,52.8,0.6",
    "52-F2,50.1,50.3,50.0,0.3",
    "",
    "TRIP TIME (milliseconds)",
    "Breaker,Pole A,Pole B,Pole C,Spread",
    "52-F1,28.0,28.2,27.6,0.6",
    "52-F2,34.0,34.0,34.9,0.9",
  ]);
  expect(found).toHaveLength(16);
  expect(found).toContain("timing 52-F1 Breaker 52 closing l2=52.2");
  expect(found).toContain("timing 52-F2 Breaker 52 opening l3=34.9");
  expect(found).toContain("timing 52-F2 Breaker 52 opening controlV=126");
});

const RELAY = [
  "Overcurrent relay tests (made up)",
  "Cubicle,Relay,Elem.,% of pickup,Meas A,Meas sec",
  "52-M1,11-M1,51P,pickup,3.972,",
  "52-M1,11-M1,51P,200 %,,18.807",
  "52-M1,11-M1,51P,500 %,,2.567",
  "52-M1,11-M1,51P,1000 %,,0.818",
];

test("amperes at the pick-up and seconds at its multiples, in columns of their own, are one reading by turns", () => {
  expect(placed("relay.csv", RELAY)).toEqual([
    "protection 52-M1 11-M1 51P 10 × pick-up reading=0.818",
    "protection 52-M1 11-M1 51P 2 × pick-up reading=18.807",
    "protection 52-M1 11-M1 51P 5 × pick-up reading=2.567",
    "protection 52-M1 11-M1 51P Pick-up reading=3.972",
  ]);
});

test("columns that are both filled on a line are no reading by turns", () => {
  const both = RELAY.map((line) => line.replace(",,", ",8.000,"));
  expect(placed("relay.csv", both)).toEqual([]);
});

test.each([
  ["kV eff.", "kV"],
  ["kV rms", "kV"],
  ["V CC", "V"],
  ["kV ef.", "kV"],
  ["Ohm", "Ohm"],
])("%j without its wave is %j", (written, unit) => {
  expect(withoutWave(written)).toBe(unit);
});

test("a wave after a reading is told apart from it", () => {
  expect(waveAfter("126 V DC")).toEqual({ plain: "126 V", wave: "DC" });
  expect(waveAfter("36 kV eff.")).toEqual({ plain: "36 kV", wave: "AC" });
  expect(waveAfter("36 kV")).toEqual({ plain: "36 kV" });
});
