import { expect, test } from "vitest";
import { NO_ANSWERS, takeIn } from "../../src/intake/takeIn";
import { english } from "../support/inWords";
import { book, placed, TODAY } from "../support/mesaIntake";

/**
 * Exports as other hands lay them out, for the sample lineup by American practice (all invented).
 * What belongs where follows from the text itself.
 */

test("a vacuum integrity test is the interrupters', and no withstand test of the panel", () => {
  const found = placed("vi.csv", [
    "Vacuum bottle integrity test (made up)",
    "Breaker,Pole,Test kV,Seconds,Result",
    "52-F1,A,36,60,no flashover",
    "52-F1,B,36,60,no flashover",
    "52-F1,C,36,60,no flashover",
  ]);
  expect(found).toHaveLength(9);
  expect(found.every((line) => line.startsWith("interrupter 52-F1 Breaker 52 "))).toBe(true);
});

test("insulation and leakage of arresters are theirs, and not the cables'", () => {
  const found = placed("arresters.csv", [
    "Surge arrester check (made up)",
    "Feeder,Phase,IR at 5 kV (Gohm),Leakage (mA),at kV,Earth lead",
    "52-F1,A,55,0.41,8.4,connected",
    "52-F1,B,54,0.42,8.4,connected",
    "52-F1,C,56,0.40,8.4,connected",
  ]);
  expect(found).toContain("arrester 52-F1 SA-1 A leakage=0.41");
  expect(found).toContain("arrester 52-F1 SA-1 B insulationRead=54000");
  expect(found.every((line) => line.startsWith("arrester "))).toBe(true);
});

test("quantities of a breaker's travel lie across, by pole where they are read at each", () => {
  const found = placed("travel.csv", [
    "Breaker travel (made up)",
    "Breaker,Closing speed (m/s),Opening speed (m/s),Bounce A (ms),Bounce B (ms),Bounce C (ms)",
    "52-F1,1.12,1.41,1.0,1.4,1.2",
    "52-F2,1.10,1.43,1.1,1.3,1.2",
  ]);
  expect(found).toHaveLength(10);
  expect(found).toContain("motion 52-F1 Breaker 52 closing speed all reading=1.12");
  expect(found).toContain("motion 52-F2 Breaker 52 contact bounce B reading=1.3");
});

test("a speed in feet a second is not taken for one in metres", () => {
  const found = placed("travel.csv", [
    "Breaker travel (made up)",
    "Breaker,Closing speed (ft/s),Bounce A (ms),Bounce B (ms),Bounce C (ms)",
    "52-F1,3.7,1.0,1.4,1.2",
    "52-F2,3.6,1.1,1.3,1.2",
  ]);
  expect(found.filter((line) => line.includes("speed"))).toEqual([]);
});

test.each([
  ["Vorgang", "Pol", "EIN", "AUS"],
  ["Maniobra", "Polo", "Cierre", "Apertura"],
  ["Operation", "Pole", "Close", "Open"],
])("a pole a line under %s and %s", (operation, pole, close, open) => {
  const found = placed("times.csv", [
    `Panel;${operation};${pole};ms`,
    ...[close, open].flatMap((word) =>
      ["A", "B", "C"].map(
        (one, at) => `52-F1;${word};${one};${word === close ? 61 : 38}.${at + 1}`,
      ),
    ),
  ]);
  expect(found).toEqual([
    "timing 52-F1 Breaker 52 closing l1=61.1",
    "timing 52-F1 Breaker 52 closing l2=61.2",
    "timing 52-F1 Breaker 52 closing l3=61.3",
    "timing 52-F1 Breaker 52 opening l1=38.1",
    "timing 52-F1 Breaker 52 opening l2=38.2",
    "timing 52-F1 Breaker 52 opening l3=38.3",
  ]);
});

test("leakage of the phases across, with the voltage and its time once above", () => {
  const found = placed("hipot.txt", [
    "HIPOT TEST - 27 KV AC, 60 SECONDS EACH PHASE (made up)",
    "",
    "                LEAKAGE, MILLIAMPS",
    "SECTION         A       B       C       BREAKDOWN",
    "BUS 1           1.24    1.20    1.17    NONE",
    "BUS 2           1.88    1.36    2.88    NONE",
  ]);
  expect(found).toHaveLength(24);
  expect(found).toContain("withstand Bus 1 Busbar B current=1.2");
  expect(found).toContain("withstand Bus 2 Busbar C applied=27");
  expect(found).toContain("withstand Bus 2 Busbar C duration=60");
});

test("a time after the word is no stage", () => {
  const lines = (heading: string) => [
    heading,
    "Feld;Leiter;Wert nach 60 s (GΩ)",
    "52-F1;A-E;58,6",
    "52-F1;B-E;35,8",
    "52-F1;C-E;42,9",
  ];
  const before = placed(
    "iso.csv",
    lines("Isolationswiderstand vor der Spannungsprüfung (erfunden)"),
  );
  expect(before).toHaveLength(3);
  expect(before.every((line) => / before reading=/.test(line))).toBe(true);
  expect(placed("iso.csv", lines("Isolationswiderstand (erfunden)"))).toEqual([]);
});

test("core and phase stand over each of several curves under the same titles", () => {
  const curve = (phase: string, first: number) => [
    `CT-1 phase ${phase}`,
    "Point,Volts,mA",
    ...[50, 100, 200, 300, 400, 440].map((volts, at) => `${at + 1},${volts},${first + 10 * at}`),
    "",
  ];
  const found = placed("curves.csv", [
    "CT EXCITATION TEST (made up)",
    "Cubicle 52-M1,,Tested by D. Pell",
    "",
    ...curve("A", 10),
    ...curve("B", 11),
    ...curve("C", 12),
  ]);
  expect(found).toHaveLength(36);
  expect(found).toContain("excitation 52-M1 CT-1 C v6=440");
  expect(found).toContain("excitation 52-M1 CT-1 B a1=0.011");
});

test("the day over the first of several notes holds for all", () => {
  const note = (phase: string) => [
    "Panel: 52-M1",
    "Winding: VT-1",
    `Phase: ${phase}`,
    "Primary applied: 7967.4 V",
    "Secondary measured: 66.41 V",
    "",
  ];
  const intake = takeIn(
    book,
    [
      {
        name: "notes.txt",
        content: ["VT RATIO (made up)", "Date: 22 April 2026", "", ..."ABC"]
          .flatMap((one) => (one.length === 1 ? note(one) : one))
          .join("\n"),
      },
    ],
    NO_ANSWERS,
    TODAY,
  );
  if (!intake.ok) throw new Error(intake.reason(english));
  expect(intake.cells.filter(({ column }) => column === "date")).toHaveLength(3);
});

test("a panel's word is none for a section", () => {
  const found = placed("hipot.csv", [
    "Withstand test (made up)",
    "Cubicle,Phase,kV,s,Breakdown",
    "Cubicle 1,A,27,60,no",
    "Cubicle 1,B,27,60,no",
    "Cubicle 1,C,27,60,no",
  ]);
  expect(found).toEqual([]);
});

test("a banner of an operation holds for its table, whatever stands in brackets beside it", () => {
  const found = placed("times.csv", [
    "CLOSE TIME (made up)",
    "Breaker,Pole A (ms),Pole B (ms),Pole C (ms)",
    "52-F1,50.1,50.9,50.5",
    "",
    "OPEN TIME (made up)",
    "Breaker,Pole A (ms),Pole B (ms),Pole C (ms)",
    "52-F1,37.9,37.7,37.8",
  ]);
  expect(found.filter((line) => line.includes("=50.1"))).toHaveLength(1);
  expect(found.find((line) => line.includes("=50.1"))).toMatch(/closing/i);
  expect(found.find((line) => line.includes("=37.9"))).toMatch(/opening/i);
});
