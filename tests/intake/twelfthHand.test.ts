import { expect, test } from "vitest";
import { isFactLine } from "../../src/intake/table/factsIn";
import { deviceKeys } from "../../src/intake/understand/devices";
import { placed } from "../support/mesaIntake";
import { placedInto, sampleBook } from "../support/sampleIntake";

/** Ways to lay exports out that a later hand had, each told in other words here (all invented), into the sample lineup by American practice. */

const harbour = sampleBook("harbour-substation");

const of = (found: readonly string[], column: string) =>
  found.filter((one) => one.includes(` ${column}=`));

test.each(["Cub. {}", "Pnl {}", "Cel. {}"])(
  "panels across by a short word and their name: %s",
  (named) => {
    const [one, two] = ["52-F1", "52-F2"].map((name) => named.replace("{}", name));
    const found = placed("after.csv", [
      '"Post-hipot insulation, 60 sec @ 5 kVDC (made up)"',
      "",
      `Reading,${one},${two}`,
      "A to gnd,1.6T,659G",
      "B to gnd,743G,>2T",
    ]);
    expect(of(found, "reading")).toEqual([
      "insulation 52-F1 Circuit A-E after reading=1600000",
      "insulation 52-F1 Circuit B-E after reading=743000",
      "insulation 52-F2 Circuit A-E after reading=659000",
      "insulation 52-F2 Circuit B-E after reading=> 2 TΩ",
    ]);
  },
);

test("several things of one sort beside each other are no facts", () => {
  expect(isFactLine(["Panel M1", "Panel F1", "Panel F2"])).toBe(false);
  expect(isFactLine(["Panel", "M1", "Date", "17/04/2026"])).toBe(true);
});

test.each([1, 2, 3, 4, 5])("a breaker's designation that %i panels have", (count) => {
  const panels = Array.from({ length: count }, (_, at) => ({
    designation: `+J0${at}`,
    breaker: { designation: "Q0" },
  }));
  expect(deviceKeys(panels).get("q0")).toBe(count === 1 ? "+J00" : undefined);
});

test("labels over several forms, under a line of words with commas", () => {
  const found = placedInto(harbour)("absorption.txt", [
    "Absorption test, panel =H07, circuit (made up)",
    "Date: 15 April 2026",
    "Test voltage: 5000 V",
    ...["L1-E", "L2-E"].flatMap((phase, at) => [
      "",
      `Phase: ${phase}`,
      `  15 s = ${40 + at} GΩ`,
      `  30 s = ${50 + at} GΩ`,
      `  60 s = ${60 + at} GΩ`,
    ]),
  ]);
  expect(of(found, "min1")).toEqual([
    "indexCurve =H07 Circuit L1-E min1=60000",
    "indexCurve =H07 Circuit L2-E min1=61000",
  ]);
});

test("one form of a panel with three tests, and what was measured alone in a line under its poles", () => {
  const found = placed("F3.csv", [
    "CUBICLE 52-F3 - TEST SHEET (made up),,,",
    "Date,25-Mar-2026,Tested by,D. Pell",
    "",
    "INSULATION RESISTANCE BEFORE HIPOT - 5000 V - 21 °C,,,",
    "Connection,R 1 min (MΩ),,",
    "A-G,48000,,",
    "B-G,60000,,",
    "",
    "CONTACT RESISTANCE - BREAKER - 100 A DC,,,",
    "Pole,A,B,C",
    "R (µΩ),33.7,34.8,42.3",
    "",
    "OPERATING TIMES - BREAKER - 125 V DC,,,",
    "Operation,A (ms),B (ms),C (ms)",
    "Closing,53.1,53.2,53.4",
  ]);
  expect(of(found, "reading")).toEqual([
    "contact 52-F3 Breaker 52 A reading=33.7",
    "contact 52-F3 Breaker 52 B reading=34.8",
    "contact 52-F3 Breaker 52 C reading=42.3",
    "insulation 52-F3 Circuit A-E before reading=48000",
    "insulation 52-F3 Circuit B-E before reading=60000",
  ]);
  expect(of(found, "l2")).toEqual(["timing 52-F3 Breaker 52 closing l2=53.2"]);
});

/** Instrument transformers are marked for subtractive polarity (IEEE C57.13, from memory). */
test("a polarity as subtractive is as marked, and as additive is reversed", () => {
  const found = placed("ct.csv", [
    "CT polarity (made up)",
    "Panel,CT,Phase,Primary (A),Secondary (A),Polarity",
    "52-F1,CT-1,A,600,5.01,SUB",
    "52-F1,CT-1,B,600,5.00,ADD",
    "52-F1,CT-1,C,600,4.99,subtractive",
  ]);
  expect(of(found, "polarity").map((one) => one.replace(/.*=/, ""))).toEqual([
    "As marked",
    "Reversed",
    "As marked",
  ]);
});

test("a panel and its phase in one title, over times down", () => {
  const found = placedInto(harbour)("pi.csv", [
    "Absorption test 5 kV DC (made up)",
    "Time,=H07 L1,=H07 L2,=H07 L3",
    "15 s,31.2,33.4,29.9",
    "30 s,40.1,42.2,38.0",
    "1 min,52.7,55.9,50.4",
    "All readings in GΩ,,,",
  ]);
  expect(of(found, "min1")).toEqual([
    "indexCurve =H07 Circuit L1-E min1=52700",
    "indexCurve =H07 Circuit L2-E min1=55900",
    "indexCurve =H07 Circuit L3-E min1=50400",
  ]);
});

test("a unit alone behind the last title is that of the readings", () => {
  const found = placed("ductor.csv", [
    "Contact resistance (made up)",
    "Breaker;A;B;C;[mΩ]",
    "52-F1;0,033;0,034;0,035;",
  ]);
  expect(of(found, "reading").map((one) => one.replace(/.*=/, ""))).toEqual(["33", "34", "35"]);
});

test("what control wiring was read at is the title of its readings", () => {
  const found = placed("wiring.csv", [
    "Panel;Wiring;1 kV DC 1 min (MΩ)",
    "52-F1;Closing;150",
    "52-F1;Tripping;140",
  ]);
  expect(of(found, "reading")).toEqual([
    "control 52-F1 Closing reading=150",
    "control 52-F1 Tripping reading=140",
  ]);
  expect(of(found, "testVoltage")).toHaveLength(2);
});

test("symbols of what goes in and comes out of a transformer", () => {
  const found = placed("ct.csv", [
    "CT ratio (made up)",
    "Panel,CT,Phase,Ip A,Is A",
    "52-F1,CT-1,A,600,5.01",
    "52-F1,CT-1,B,600,4.99",
  ]);
  expect(of(found, "primary").map((one) => one.replace(/.*=/, ""))).toEqual(["600", "600"]);
  expect(of(found, "secondary").map((one) => one.replace(/.*=/, ""))).toEqual(["5.01", "4.99"]);
});

test.each([
  ["Breaker operating times (made up)", "56.9", "57.1", 3],
  ["Breaker operating times (made up)", "0.9", "57.1", 0],
  ["Readings (made up)", "56.9", "57.1", 0],
])(
  "times without a unit have that of their size, under words for them: %s %s %s",
  (heading, one, two, count) => {
    const found = placed("data.csv", [
      heading,
      "Panel;Operation;A;B;C",
      `52-F1;Closing;${one};${two};57.5`,
      "52-F1;Opening;34.0;33.9;33.8",
    ]);
    expect(of(found, "l1").length + of(found, "l2").length + of(found, "l3").length).toBe(
      count * 2,
    );
  },
);

/** Dimensions in another language (the wording is from memory). */
test.each([
  [
    "Nivelamento e alinhamento",
    "Medida (mm)",
    "Desnível em 1 m, ao longo",
    "Desnível em 1 m, da frente para trás",
    "Frente fora de linha com o vizinho",
  ],
  [
    "Nivelación y alineación",
    "Medida (mm)",
    "Desnivel en 1 m, a lo largo",
    "Desnivel en 1 m, de delante atrás",
    "Frente fuera de línea con la celda vecina",
  ],
  [
    "Livellamento e allineamento",
    "Misura (mm)",
    "Dislivello su 1 m, longitudinale",
    "Dislivello su 1 m, in profondità",
    "Fronte fuori linea rispetto al vicino",
  ],
  [
    "Niveaux et alignement",
    "Mesure (mm)",
    "Niveau sur 1 m, en long",
    "Niveau sur 1 m, en profondeur",
    "Alignement de la face avec la cellule voisine",
  ],
  [
    "Ausrichtung",
    "Maß (mm)",
    "Abweichung der Waage auf 1 m, längs",
    "Abweichung der Waage auf 1 m, in der Tiefe",
    "Front aus der Flucht zum Nachbarn",
  ],
])("dimensions down, panels across: %s", (heading, title, along, across, front) => {
  const found = placedInto(harbour)("levels.csv", [
    `${heading} (made up)`,
    `${title};=H01;=H02`,
    `${along};1;2`,
    `${across};0;1`,
    `${front};2;0`,
  ]);
  expect(of(found, "reading")).toEqual([
    "dimensions =H01 Front out of line with its neighbour's reading=2",
    "dimensions =H01 Out of level over 1 m, along the lineup reading=1",
    "dimensions =H01 Out of level over 1 m, front to back reading=0",
    "dimensions =H02 Front out of line with its neighbour's reading=0",
    "dimensions =H02 Out of level over 1 m, along the lineup reading=2",
    "dimensions =H02 Out of level over 1 m, front to back reading=1",
  ]);
});

test("check items that one record alone knows are that record's, whatever else has a state by panel", () => {
  const found = placedInto(harbour)("checks.csv", [
    "No.,Panel,Check item,State,Date,Checked by",
    "1,=H02,Anchored to the foundation,OK,2026-04-02,A. Rahman (made up)",
    '2,=H02,"Doors, locks and handles work",OK,2026-04-02,A. Rahman (made up)',
    "3,=H03,Clean and dry,Not OK,2026-04-02,A. Rahman (made up)",
  ]);
  expect(of(found, "state")).toEqual([
    "installation =H02 Anchored to the foundation state=OK",
    "installation =H02 Doors, locks and handles work state=OK",
    "installation =H03 Clean and dry state=Not OK",
  ]);
});
