import { expect, test } from "vitest";
import { NO_ANSWERS, takeIn } from "../../src/intake/takeIn";
import { partedTitle } from "../../src/intake/text/partedCells";
import { isPosition } from "../../src/intake/understand/titleSense";
import { pressureMark, withoutPressureMark } from "../../src/intake/words/pressureMark";
import { positionReader } from "../../src/intake/words/readPosition";
import { english } from "../support/inWords";
import { book, placed, TODAY } from "../support/mesaIntake";

/**
 * Manners of laying exports out that a file may have on top of any other, for the sample lineup by American
 * practice (all invented). What belongs where follows from the text itself.
 */

test("three poles in one cell, parted as their title names them", () => {
  const found = placed("ductor.csv", [
    "Contact resistance (made up)",
    "Breaker,Current,A-B-C (microohm),Max diff",
    "52-F1,100 A,31 / 32 / 30,2",
    "52-F2,100 A,28.5 / 29.1 / 28.8 uOhm,0.6",
  ]);
  expect(found).toContain("contact 52-F1 Breaker 52 B reading=32");
  expect(found).toContain("contact 52-F2 Breaker 52 C reading=28.8");
  expect(found.filter((line) => line.includes(" reading="))).toHaveLength(6);
});

test("a cell that holds fewer readings than its title names is told, and none of them taken", () => {
  const lines = ["Breaker,A/B/C (µΩ)", "52-F1,31/32/30", "52-F2,28/29/30", "52-F3,27/28/29"];
  const content = [...lines, "52-M1,28/29/30", "52-M2,33/34"].join("\n");
  const intake = takeIn(book, [{ name: "contact.csv", content }], NO_ANSWERS, TODAY);
  if (!intake.ok) throw new Error(intake.reason(english));
  expect(intake.cells.filter(({ column }) => column === "reading")).toHaveLength(12);
  expect(intake.taken[0]?.placement.unplaced.map(({ source }) => source.line)).toContain(6);
});

test.each([
  ["R-Y-B (microohm)", ["R (microohm)", "Y (microohm)", "B (microohm)"]],
  ["IR L1/L2/L3 (GΩ)", ["IR L1 (GΩ)", "IR L2 (GΩ)", "IR L3 (GΩ)"]],
  ["Counter before/after", ["Counter before", "Counter after"]],
  ["Speed (m/s)", ["Speed (m)", "Speed (s)"]],
  ["Ratio 1600/1", undefined],
  ["Date/Time", undefined],
  ["Ratio / النسبة", undefined],
  ["Resistance", undefined],
])("the titles side by side in %j are %j", (title, titles) => {
  expect(partedTitle(title)).toEqual(titles);
});

test("days with strokes are no readings side by side", () => {
  const found = placed("contact.csv", [
    "Breaker,Pole,R (µΩ),Tested / signed",
    "52-F1,A,31.2,03/11/2026",
    "52-F1,B,31.9,03/11/2026",
  ]);
  expect(found).toContain("contact 52-F1 Breaker 52 A reading=31.2");
});

test("phases by their colours", () => {
  const read = positionReader(["Red - earth", "Yellow - earth", "Blue - earth"]);
  expect(read("Blue - earth")).toEqual({ ok: true, value: "L3-E" });
  expect(read("Red and yellow")).toEqual({ ok: true, value: "L1-L2" });
  expect(isPosition("Red")).toBe(true);
  expect(isPosition("Ready")).toBe(false);
});

test("the same phases under two groups are told apart by the groups", () => {
  const found = placed("timing.tsv", [
    "\tClosing time [ms]\t\t\t\tOpening time [ms]\t\t\t",
    "CB\tA\tB\tC\tΔ\tA\tB\tC\tΔ",
    "52-F1\t55.1\t55.4\t55.3\t0.3\t30.8\t30.9\t30.6\t0.3",
    "52-F2\t56.0\t56.2\t56.1\t0.2\t31.0\t31.4\t31.2\t0.4",
  ]);
  expect(found).toContain("timing 52-F1 Breaker 52 closing l2=55.4");
  expect(found).toContain("timing 52-F2 Breaker 52 opening l3=31.2");
  expect(found).toHaveLength(12);
});

test("a panel written once holds for the lines below, also where a line comes again word for word", () => {
  const found = placed("control.csv", [
    "Control wiring insulation, 500 V DC (made up)",
    "Cell,Circuit,Megohms",
    "52-F1,Closing,820",
    ",Tripping,>2000",
    "52-F2,Closing,640",
    ",Tripping,>2000",
    "52-F3,Closing,510",
    ",Tripping,>2000",
  ]);
  expect(found.filter((line) => /Tripping reading=> ?2 ?(?:000 M|G)Ω$/.test(line))).toHaveLength(3);
});

test("a log that names the test of each line", () => {
  const found = placed("log.csv", [
    "Time,Equipment,Test,Terminals,Applied,Result,Tester",
    "08:10,52-F1,Breaker contact resistance,A,100 A,31.2 uOhm,B. Oland",
    "08:11,52-F1,Breaker contact resistance,B,100 A,31.9 uOhm,B. Oland",
    "10:10,Bus 1,AC hipot,A-G,27 kV,2.1 mA,B. Oland",
    "08:12,52-F1,Breaker contact resistance,C,100 A,30.8 uOhm,B. Oland",
    "10:11,Bus 1,AC hipot,B-G,27 kV,2.4 mA,B. Oland",
  ]);
  expect(found).toContain("contact 52-F1 Breaker 52 C reading=30.8");
  expect(found).toContain("contact 52-F1 Breaker 52 A testCurrent=100");
  expect(found).toContain("withstand Bus 1 Busbar B applied=27");
  expect(found).toContain("withstand Bus 1 Busbar A current=2.1");
});

test("blocks of labels led to their values by dots, under the name of what they are of", () => {
  const found = placed("mechanism.txt", [
    "BREAKER MECHANISM CHECKS (made up)",
    "Date: 15 June 2026",
    "",
    "Breaker 52-F1",
    "  Lowest closing voltage ........ 88 V",
    "  Lowest tripping voltage ....... 62 V",
    "  Spring charging time .......... 7.4 s",
    "",
    "Breaker 52-F2",
    "  Lowest closing voltage ........ 86 V",
    "  Lowest tripping voltage ....... 60 V",
    "  Spring charging time .......... 7.9 s",
  ]);
  expect(found.filter((line) => line.endsWith("closingLow=88"))).toHaveLength(1);
  expect(found.filter((line) => line.startsWith("mechanism 52-F2"))).toHaveLength(3);
});

test("pairs of units under each phase: a curve of three phases side by side", () => {
  const found = placed("52-M1 saturation.csv", [
    "CT excitation curve 52-M1 (made up)",
    "A phase,,B phase,,C phase,",
    "V,mA,V,mA,V,mA",
    "100,12.1,100,12.4,100,11.9",
    "200,25.0,200,25.6,200,24.8",
  ]);
  expect(found).toHaveLength(12);
  expect(found).toContain("excitation 52-M1 CT-1 B a2=0.0256");
  expect(found).toContain("excitation 52-M1 CT-1 C v1=100");
});

test.each([
  ["bar g", "bar", "gauge"],
  ["barg", "bar", "gauge"],
  ["kPa (abs)", "kPa", "absolute"],
  ["MPa", "MPa", undefined],
])("%j is %j, of a pressure that is %j", (written, unit, mark) => {
  expect(withoutPressureMark(written)).toBe(unit);
  expect(pressureMark(written)).toBe(mark);
});

test("a title in two languages, its unit within", () => {
  const found = placed("ct.csv", [
    "Current transformer test / ensayo (made up)",
    "Panel / Celda,Core / Núcleo,Phase / Fase,Primary A / primaria,Secondary A / secundaria",
    "52-F1,CT-1,A,400.5,3.334",
    "52-F1,CT-1,B,400.5,3.331",
  ]);
  expect(found).toContain("currentTransformer 52-F1 CT-1 B primary=400.5");
  expect(found).toContain("currentTransformer 52-F1 CT-1 A secondary=3.334");
});

test("what stands beside facts of a line without a label: the instrument, the tester's step of volts", () => {
  const found = placed("ir.csv", [
    "Bus insulation before hipot (made up)",
    "Tech: L. Ferro,,Date: 19-May-2026,,5000 V",
    "",
    "Bus,Terminals,Gigohms",
    "Bus 1,A-G,40.1",
    "Bus 1,B-G,42.1",
  ]);
  expect(found).toContain("insulation Bus 1 Busbar A-E before testVoltage=5000");
});

test("elapsed times down, with the index below them", () => {
  const found = placed("pi.csv", [
    "Polarization index, before hipot (made up)",
    "Equipment:,Bus 1,Test voltage:,5 kV",
    "",
    "Time,A-G (GΩ),B-G (GΩ),C-G (GΩ)",
    "0:30,32.9,41.9,30.5",
    "1:00,41.4,52.2,38.2",
    "10:00,87.0,110.9,80.0",
    "PI,2.10,2.12,2.09",
  ]);
  expect(found).toContain("insulation Bus 1 Busbar B-E before r10min=110900");
  expect(found).toContain("insulation Bus 1 Busbar C-E before r30s=30500");
});

test("a column of units beside panels across is the unit of all of them", () => {
  const found = placed("torque.csv", [
    "Torque check (made up)",
    "Joint,52-F1,52-F2,52-F3,Unit",
    "Main bus,68,69,70,N·m",
  ]);
  expect(found).toEqual([
    "torque 52-F1 Main bus splice applied=68",
    "torque 52-F2 Main bus splice applied=69",
    "torque 52-F3 Main bus splice applied=70",
  ]);
});

test("a letter that is a unit is no phase beside titles that end with their phases", () => {
  const found = placed("ct wide.csv", [
    "CT tests, primary injection (made up)",
    "Cubicle,CT,Primary A,Sec A-ph (A),Sec B-ph (A),Sec C-ph (A)",
    "52-F1,CT-1,400.5,3.33,3.34,3.32",
  ]);
  expect(found).toContain("currentTransformer 52-F1 CT-1 B secondary=3.34");
  expect(found).toContain("currentTransformer 52-F1 CT-1 C primary=400.5");
});

test("a label and its value in each cell of a line between tables is of the table below", () => {
  const found = placed("timer.txt", [
    "BREAKER TIME TEST REPORT (made up)",
    "",
    "Breaker: 52-F1      Coil voltage: 125 VDC",
    "Pole      Close ms    Open ms",
    "A         53.5        30.4",
    "B         51.3        32.7",
    "C         52.2        28.6",
    "",
    "Breaker: 52-F2      Coil voltage: 124 VDC",
    "Pole      Close ms    Open ms",
    "A         54.5        31.4",
    "B         54.3        31.7",
    "C         54.2        31.6",
  ]);
  expect(found).toContain("timing 52-F1 Breaker 52 opening l2=32.7");
  expect(found).toContain("timing 52-F2 Breaker 52 closing l3=54.2");
  expect(found).toContain("timing 52-F2 Breaker 52 opening controlV=124");
  expect(found).toHaveLength(16);
});

test("quantities down and phases across", () => {
  const found = placed("52-M1 CT-1.csv", [
    "CT test 52-M1, CT-1 (made up)",
    "",
    "Quantity,A,B,C",
    "Primary current (A),400.5,400.2,400.1",
    "Secondary current (mA),1668.1,1667.4,1669.0",
    "Polarity,OK,OK,OK",
  ]);
  expect(found).toContain("currentTransformer 52-M1 CT-1 B primary=400.2");
  expect(found).toContain("currentTransformer 52-M1 CT-1 C secondary=1.669");
  expect(found).toContain("currentTransformer 52-M1 CT-1 A polarity=As marked");
});

test("quantities down and breakers across", () => {
  const found = placed("mechanism.csv", [
    "Breaker mechanism checks (made up)",
    "",
    "Check,52-F1,52-F2,52-F3",
    "Lowest closing voltage (V),88,86,87",
    "Spring charging time (s),7.4,7.9,7.7",
  ]);
  expect(found.filter((line) => /52-F2 .*closingLow=86$/.test(line))).toHaveLength(1);
  expect(found.filter((line) => /52-F3 .*charged=7.7$/.test(line))).toHaveLength(1);
  expect(found).toHaveLength(6);
});

test("the tester's units in a column of their own, the minute of the reading in another", () => {
  const found = placed("megger.csv", [
    "Bus,Conn,Sequence,Reading,Units,kV,Min,Temp F",
    "Bus 1,A-N,1 - pre hipot,47.9,Gohm,5,1,68",
    "Bus 1,B-N,1 - pre hipot,45.1,Gohm,5,1,68",
    "Bus 1,A-N,2 - post hipot,42.8,Gohm,5,1,68",
    "Bus 1,B-N,2 - post hipot,61.0,Gohm,5,1,68",
  ]);
  expect(found).toContain("insulation Bus 1 Busbar B-E after reading=61000");
  expect(found).toContain("insulation Bus 1 Busbar A-E before temperature=20");
});

test("a current in brackets behind the name of a test is the test's, that behind a busbar its rating", () => {
  const table = ["Breaker,Pole,R (uOhm)", "52-F1,A,31.2", "52-F1,B,31.9"];
  const stated = (heading: string) => placed("c.csv", [heading, ...table]).join("; ");
  expect(stated("1. Contact resistance (200 A)")).toContain("testCurrent=200");
  expect(stated("Breaker contacts and main bus (2000 A)")).not.toContain("testCurrent");
});

test("a meter beside its reference, in the meter's own unit", () => {
  const found = placed("meters.csv", [
    "Panel meter check (made up)",
    "Panel,Meter,Point %,Injected (A),Meter reads (A)",
    "52-M1,PM1,25,0.3,0.301",
  ]);
  expect(found.every((line) => line.startsWith("metering "))).toBe(true);
});

test("the first line of a list of checks is no second line of titles", () => {
  const found = placed("checks.csv", [
    "Installation checks (made up)",
    "Check,52-M1,52-F1,52-F2",
    "Anchored to the foundation,OK,OK,OK",
    "Pressure relief path free,OK,OK,OK",
  ]);
  expect(found).toContain("installation 52-F1 Anchored to the foundation state=OK");
  expect(found).toHaveLength(6);
});
