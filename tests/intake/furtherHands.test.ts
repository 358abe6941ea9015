import { expect, test } from "vitest";
import { NO_ANSWERS, takeIn } from "../../src/intake/takeIn";
import { titleSense } from "../../src/intake/understand/titleSense";
import { namesPosition } from "../../src/intake/words/readPosition";
import { timesAcross } from "../../src/intake/words/timesAcross";
import { waveAfter, withoutWave } from "../../src/intake/words/wave";
import { english } from "../support/inWords";
import { book, placed, TODAY } from "../support/mesaIntake";

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

test("a title that is times only is no panel, though sections go by numbers", () => {
  const found = placed("minutes.csv", [
    "Bus insulation before hipot, 5000 VDC, all values Gohm (made up)",
    "Section;Conductor;1;5;10",
    "Bus 1;A-G;40.1;71.1;86.0",
    "Bus 1;B-G;42.1;75.1;88.0",
    "Bus 2;A-G;36.1;66.1;79.0",
  ]);
  expect(found).toContain("insulation Bus 1 Busbar B-E before reading=42100");
  expect(found).toContain("insulation Bus 2 Busbar A-E before r10min=79000");
  expect(found).toContain("insulation Bus 2 Busbar A-E before testVoltage=5000");
  expect(found).toHaveLength(9);
});

test("a background is of the method that its title names", () => {
  const found = placed("tev.csv", [
    "Partial discharge survey (made up)",
    "Panel,TEV background (dBmV),TEV (dBmV),Ultrasonic (dBuV),Ultrasonic background (dBuV)",
    "52-F1,4,7,2,-2",
    "52-F2,4,9,3,-2",
  ]);
  expect(found).toContain("partialDischarge 52-F1 Switchgear Ultrasound background=-2");
  expect(found).toContain("partialDischarge 52-F2 Switchgear Transient earth voltage background=4");
  expect(found).toHaveLength(8);
});

test("multiples of U0 written to their number, the deviation by its short name", () => {
  const found = placed("td.csv", [
    "VLF tan delta (made up)",
    "Cable,Phase,TD 0.5Uo (E-3),TD 1.0Uo (E-3),TD 1.5Uo (E-3),SDTD at Uo (E-3)",
    "C1 (52-F1),A,0.42,0.45,0.51,0.02",
    "C1 (52-F1),B,0.44,0.47,0.55,0.02",
    "C1 (52-F1),C,0.41,0.44,0.50,0.03",
  ]);
  expect(found).toContain("dissipation 52-F1 C1 B high=0.55");
  expect(found).toContain("dissipation 52-F1 C1 A low=0.42");
  expect(found).toHaveLength(12);
});

test("letters of phases with a unit and no brackets, between bars", () => {
  const found = placed("loops.txt", [
    "CT secondary loop resistance (made up)",
    "Panel | CT | A ohm | B ohm | C ohm",
    "52-M1 | CT-1 | 0.412 | 0.415 | 0.409",
    "52-F1 | CT-1 | 0.391 | 0.388 | 0.396",
  ]);
  expect(found).toContain("currentLoop 52-F1 CT-1 C loop=0.396");
  expect(found).toHaveLength(6);
});

test("a column of breakers that are all called by one number is theirs, and not that of joints beside them", () => {
  const found = placed("dlro.csv", [
    "Contact resistance, 100 A (made up)",
    "Panel,Breaker,Pole A (uohm),Pole B (uohm),Pole C (uohm)",
    "52-F1,52,34.1,35.2,33.9",
    "52-F2,52,36.1,37.2,35.9",
  ]);
  expect(found).toContain("contact 52-F2 Breaker 52 B reading=37.2");
  expect(found.every((line) => line.includes("Breaker 52"))).toBe(true);
});

test("what is far beyond any insulation is no insulation: microhms beside a drop in millivolts", () => {
  const found = placed("drops.txt", [
    "OHMMETER MEMORY (made up)",
    "",
    "Device      Part            Pole    Volts (mV)    R (uOhm)    Limit (uOhm)    P/F",
    "52-F1       Breaker 52      A       3.57          35.7        45              P",
    "52-F1       Breaker 52      B       3.81          38.1        45              P",
    "52-F1       Breaker 52      C       3.25          32.5        45              P",
  ]);
  expect(found.filter((line) => line.startsWith("contact "))).toHaveLength(3);
  expect(found).toHaveLength(3);
});

test("element and point in each title, one relay a line", () => {
  const found = placed("relays.csv", [
    "Secondary injection, one line per relay (made up)",
    "Panel,Relay,51P pick-up (A),51P time at 2x (s),51P time at 5x (s),Trips and indicates",
    "52-M1,11-M1,4.02,18.8,2.57,yes",
    "52-M2,11-M2,4.01,18.9,2.58,yes",
  ]);
  expect(found).toContain("protection 52-M1 11-M1 51P 2 × pick-up reading=18.8");
  expect(found).toContain("protection 52-M1 11-M1 51P Pick-up trips=Yes");
  expect(found.filter((line) => line.includes(" reading="))).toHaveLength(6);
});

test("elapsed times down as a stopwatch shows them are no times of day", () => {
  const found = placed("watch.csv", [
    "MAIN BUS IR BEFORE HIPOT (made up)",
    "Asset,Bus 2",
    "Test voltage,5000 V DC",
    "",
    "Time (mm:ss),A-G (GΩ),B-G (GΩ),C-G (GΩ)",
    "00:30,42.2,32.3,38.4",
    "01:00,51.5,39.0,46.5",
    "10:00,99.1,80.2,90.3",
  ]);
  expect(found).toContain("insulation Bus 2 Busbar A-E before r30s=42200");
  expect(found).toContain("insulation Bus 2 Busbar C-E before r10min=90300");
});

test("records of a meter's memory with signs of equality, parted by lines in brackets", () => {
  const record = (pole: string, ohms: string) => [
    "[Record]",
    "Panel=52-F1",
    "Part=Breaker 52",
    `Pole=${pole}`,
    "Current=100,2 A",
    `Resistance=${ohms} uOhm`,
    "Date=24.11.2026",
    "",
  ];
  const found = placed("memory.txt", [
    ...record("A", "35,2"),
    ...record("B", "33,2"),
    ...record("C", "34,2"),
  ]);
  expect(found).toContain("contact 52-F1 Breaker 52 B reading=33.2");
  expect(found).toContain("contact 52-F1 Breaker 52 C testCurrent=100.2");
});

test.each([
  ["Operator C. Vauclin ; set HIPOT-1 ; 19.5 °C ; 48 % RH", "C. Vauclin"],
  ["# tester HIPOT-1, operator M. Brandt, 2026-11-21 10:05", "M. Brandt"],
])("the tester of %j is a name and nothing else", (line, name) => {
  const intake = takeIn(
    book,
    [
      {
        name: "hipot.csv",
        content: [
          line,
          "Section,Phase,Applied kV,Held s,Breakdown",
          "Bus 1,A,27,60,no",
          "Bus 1,B,27,60,no",
          "Bus 1,C,27,60,no",
        ].join("\n"),
      },
    ],
    NO_ANSWERS,
    TODAY,
  );
  if (!intake.ok) throw new Error(intake.reason(english));
  const by = intake.cells.filter(({ column }) => column === "by");
  expect(by.map(({ value }) => value)).toEqual([name, name, name]);
});

test("letters before what is measured, what was applied above, its result in words", () => {
  const found = placed("hipot.csv", [
    "AC high potential test (made up)",
    "Level:,27 kV,,Duration:,1 minute",
    "",
    "Section,A leakage (mA),B leakage (mA),C leakage (mA),Result",
    "Bus 1,1.18,1.45,1.64,Pass - no breakdown",
    "Bus 2,0.57,0.62,0.58,Pass - no breakdown",
  ]);
  expect(found).toContain("withstand Bus 1 Busbar B current=1.45");
  expect(found).toContain("withstand Bus 2 Busbar C applied=27");
  expect(found).toContain("withstand Bus 2 Busbar C discharge=No");
  expect(found).toHaveLength(24);
});

test("beside closing, open is the other operation and no open pole", () => {
  const found = placed("timing.csv", [
    "Timing (ms) (made up)",
    "Breaker,Close A,Close B,Close C,Open A,Open B,Open C",
    "52-F1,50.1,50.9,50.5,37.9,37.7,37.8",
    "52-F2,52.7,52.2,52.8,28.0,28.2,27.6",
  ]);
  expect(found).toContain("timing 52-F1 Breaker 52 opening l2=37.7");
  expect(found).toContain("timing 52-F2 Breaker 52 closing l3=52.8");
  expect(found).toHaveLength(12);
});

test("a column of units tells what the columns before it are; serial numbers of breakers name no part", () => {
  const found = placed("feeders.csv", [
    "Contact resistance (made up)",
    "Breaker serial,Cubicle,Ph A,Ph B,Ph C,Avg,Unit,Amps",
    "INV-501,52-F1,35.7,38.1,32.5,35.4,µΩ,100",
    "INV-502,52-F2,32.6,35.0,37.5,35.0,µΩ,100",
  ]);
  expect(found).toContain("contact 52-F2 Breaker 52 B reading=35");
  expect(found).toHaveLength(12);
});

test("of what was injected and what was found, the reading is the second", () => {
  const found = placed("relay.csv", [
    "Relay 11-M1 in 52-M1, injection test (made up)",
    "Element,Test,Injected (A),Expected,Actual,Unit",
    "51P,Pickup,4,4,3.98,A",
    "51P,2x,8,19.04,18.9,s",
    "51P,5x,20,2.593,2.58,s",
  ]);
  expect(found).toEqual([
    "protection 52-M1 11-M1 51P 2 × pick-up reading=18.9",
    "protection 52-M1 11-M1 51P 5 × pick-up reading=2.58",
    "protection 52-M1 11-M1 51P Pick-up reading=3.98",
  ]);
});

test("facts among other words in one cell are told apart", () => {
  const found = placed("joints.csv", [
    "Bus joint resistance (made up)",
    "Meter: DLRO-1; 100 A; By: G. Ruiz; 24-Nov-2026",
    "From,To,A µΩ,B µΩ,C µΩ",
    "52-F1,52-F2,6.0,6.4,6.1",
    "52-F2,52-F3,5.9,6.2,6.3",
  ]);
  expect(found).toContain("contact 52-F1 Joint to 52-F2 B reading=6.4");
  expect(found.every((line) => line.startsWith("contact "))).toBe(true);
});

test("the phase alone over each of several curves with two columns; what stands over the first goes on", () => {
  const found = placed("curves.txt", [
    "Panel 52-M1, core CT-1, excitation curve (made up)",
    "Phase A",
    "U (V)\tI (mA)",
    "100\t4.1",
    "200\t7.2",
    "Phase B",
    "U (V)\tI (mA)",
    "100\t4.2",
    "200\t7.3",
  ]);
  expect(found).toEqual([
    "excitation 52-M1 CT-1 A a1=0.0041",
    "excitation 52-M1 CT-1 A a2=0.0072",
    "excitation 52-M1 CT-1 A v1=100",
    "excitation 52-M1 CT-1 A v2=200",
    "excitation 52-M1 CT-1 B a1=0.0042",
    "excitation 52-M1 CT-1 B a2=0.0073",
    "excitation 52-M1 CT-1 B v1=100",
    "excitation 52-M1 CT-1 B v2=200",
  ]);
});

test.each([
  ["L1/L2", true],
  ["L1/T", true],
  ["U/V", false],
  ["A/C", false],
])("whether %j names phases: %j", (text, is) => {
  expect(namesPosition(text)).toBe(is);
});

test("labels and values in cells side by side, without a mark, are a form", () => {
  const found = placed("heater.csv", [
    "Space heater (made up),,,",
    "Panel,52-F1,Tester,G. Ruiz",
    "Supply volts,120.5 V,Amps,1.24 A",
  ]);
  expect(found).toEqual(["heater 52-F1 SH-1 current=1.24", "heater 52-F1 SH-1 supply=120.5"]);
});

test("the test voltage in a title with its wave is no pair of phases", () => {
  const found = placed("hipot.csv", [
    "AC HIPOT (made up)",
    "Location,kV AC,Seconds,A mA,B mA,C mA,Flashover",
    "Bus 1,27,60,6.23,7.36,7.86,none",
    "M1,27.1,60,1.6,1.4,1.27,none",
  ]);
  expect(found.filter((line) => line.endsWith(" applied=27"))).toHaveLength(3);
  expect(found.filter((line) => line.endsWith(" applied=27.1"))).toHaveLength(3);
});

test("t in seconds is a time, no temperature", () => {
  const found = placed("withstand.csv", [
    "AC withstand (made up)",
    "Panel;Phase;U [kV];t [s];I [mA]",
    "F1;A;27;60;2.1",
  ]);
  expect(found.filter((line) => line.endsWith(" duration=60"))).toHaveLength(1);
});

test.each([
  [
    "IR ACROSS OPEN CONTACTS, 5000 V DC, before hipot (made up)",
    "Breaker,Pole A (GΩ),Pole B (GΩ),Pole C (GΩ)",
  ],
  [
    "Isolation über offene Schaltstrecke, 5000 V DC, vor der Prüfung",
    "Schalter,Pol A (GΩ),Pol B (GΩ),Pol C (GΩ)",
  ],
])("a table said to be across open contacts has its poles open: %s", (heading, titles) => {
  const found = placed("open.csv", [
    heading,
    titles,
    "52-M1,161.6,77.5,170.2",
    "52-F1,146.4,150.2,142.4",
  ]);
  expect(found.filter((line) => line.includes(" A open before reading="))).toHaveLength(2);
});

test.each([
  ["Panel;Phases;Before hipot (GOhm);Date before;After hipot (GOhm);Date after", "A-Gnd"],
  ["Repère;Mesure;Avant essai HT (GOhm);Date avant;Après essai HT (GOhm);Date après", "A - terre"],
])("before and after beside each other, each with its day: %s", (titles, phase) => {
  const content = `Insulation resistance 1 min, 5000 V DC (made up)\n${titles}\nBus 1;${phase};149.8;2026-04-15;143.8;2026-04-17\n`;
  const intake = takeIn(book, [{ name: "both.csv", content }], NO_ANSWERS, TODAY);
  if (!intake.ok) throw new Error(intake.reason(english));
  const told = intake.cells
    .filter(({ column }) => ["reading", "date"].includes(column))
    .map(({ table, row, column, value }) => `${table.rows[row]?.stage} ${column} ${value}`);
  // 15 and 17 April 2026 as serial days.
  expect(told.sort()).toEqual([
    "after date 46129",
    "after reading 143800",
    "before date 46127",
    "before reading 149800",
  ]);
});
