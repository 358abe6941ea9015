import { describe, expect, it } from "vitest";
import { checked, drawSheet, readingsOf, surveyOf } from "./support";

/** Sheets as a clerk of a test firm keeps them; all are invented, and their words are common practice, no source. */
const toldOf = (drawing: string) =>
  checked([drawSheet("Sheet", drawing)]).findings.map(
    ({ weight, rule, address }) => `${weight} ${rule} ${address}`,
  );

describe("a matrix of phases against phases", () => {
  it.each([
    ["L1 (B) | L2 (B) | L3 (B)", ["L1 (A)", "L2 (A)", "L3 (A)"]],
    ["R | S | T", ["R", "S", "T"]],
  ])("is a check of phasing, and holds no readings: %s", (across, down) => {
    expect(
      toldOf(`
Phasing across the bus section, volts on VT secondaries
 | ${across}
${down[0]} | 0.4 | 110.2 | 110.5
${down[1]} | 110.3 | 0.3 | 110.1
${down[2]} | 110.4 | 110.2 | 0.5`),
    ).toEqual([]);
  });
  it("in a unit of insulation holds what lies between the phases", () => {
    expect(
      surveyOf(`
Insulation, GΩ
 | R | S | T
R | 20 | 31 | 32
S | 30 | 21 | 33
T | 31 | 30 | 22`).blocks.map(({ kinds }) => kinds),
    ).toEqual([["insulation"]]);
  });
});

it.each([
  ["Document", "Received", "Yes", "No"],
  ["Unterlage", "Erhalten", "ja", "nein"],
])("a list of documents is one: %s", (title, received, yes, no) => {
  const sheet = (second: string) => `
Handover documents
No. | ${title} | Rev | ${received} | Remarks
1 | Single line | A | ${yes} |
2 | Arrangement | B | ${second} |
3 | Settings | A | ${yes} |
4 | Manual | C | ${yes} |
5 | Cable list | A | ${yes} |`;
  expect(surveyOf(sheet(yes)).blocks.map(({ kinds }) => kinds)).toEqual([["documents"]]);
  expect(toldOf(sheet(yes))).toEqual([]);
  expect(toldOf(sheet(no))).toEqual(["stop survey-word D4"]);
});

it.each(["Main bar", "Earth bar", "ground bus bar"])(
  "%s is copper and no pressure; bonds measured with a set for contacts are bonds",
  (bar) => {
    const sheet = (second: number) => `
Earth bonds, DLRO 10 A, 5 mΩ or less
From | To | Reading mΩ | Pass? | Initials
${bar} | P01 frame | 0.61 | Y | TB
${bar} | P01 LV door | ${second} | Y | TB
${bar} | P02 frame | 0.82 | Y | TB
${bar} | P02 LV door | 1.2 | Y | TB`;
    const [block] = surveyOf(sheet(1)).blocks;
    expect(block?.kinds).toEqual(["earthing"]);
    expect(block?.entries[0]?.unit).toBe("mΩ");
    expect(toldOf(sheet(6.4))).toContain("stop survey-limit C4");
    expect(toldOf(sheet(1))).toEqual([]);
  },
);

it.each([
  ["Closes at V", "Trips at V"],
  ["Cierra a V", "Dispara a V"],
])("releases have to work by the voltage of the heading: %s, %s", (close, trip) => {
  const sheet = (second: number) => `
Coils, 110 V dc. Close at or below 93.5 V, trip at or below 77 V
Panel | ${close} | ${trip} | Result
P1 | 72 | 51 | OK
P2 | 74 | ${second} | OK
P3 | 71 | 52 | OK`;
  expect(toldOf(sheet(53))).toEqual([]);
  expect(toldOf(sheet(84))).toEqual(["stop survey-limit C4"]);
});

it("a bound for the gas is none for the pressures at which its stages came", () => {
  const sheet = (second: number) => `
Presión de SF6, bar relativos a 20 °C: nominal 5,0, alarma 4,5, bloqueo 4,2
Compartimiento | Presión (bar) | Alarma actuó a (bar) | Bloqueo actuó a (bar) | Resultado
Comp. 1 | 5.04 | 4.49 | 4.21 | Cumple
Comp. 2 | ${second} | 4.48 | 4.19 | Cumple
Comp. 3 | 5.06 | 4.5 | 4.2 | Cumple`;
  expect(toldOf(sheet(5.1))).toEqual([]);
  expect(toldOf(sheet(4.4))).toEqual(["stop survey-limit B4"]);
});

it("the only table of a sheet has the unit of the one bound that the notes over it state", () => {
  const sheet = (second: number) => `
Resistencia de contactos, 200 A c.c., equipo MO-3, no mayor que 50 µΩ
Ensayó: E. Prado

Celda | R | S | T | ¿Cumple?
Celda 1 | 34.6 | 35 | 33.7 | Sí
Celda 2 | 37.1 | ${second} | 36.6 | Sí
Celda 3 | 30.2 | 30.9 | 30 | Sí`;
  expect(readingsOf(sheet(37))[0]).toBe("contact; Celda 1; L1; 34.6 µΩ; B5");
  expect(toldOf(sheet(58))).toEqual(["stop survey-limit C6"]);
});

it("a withstand test may be answered by a word; one that tells of a breakdown in a line that passes is told", () => {
  const sheet = (second: string) => `
BREAKER TEST CARD 52-1
Test | A | B | C | Limit | Unit | P/F
Contact res. | 32 | 33 | 34 | 50 | µΩ | P
IR closed to gnd | 20 | 24 | 22 | 5 | GΩ | P
AC hipot 27 kV | held | ${second} | held | 60 | s | P
Close time | 54 | 54.4 | 54.9 | 60 | ms | P`;
  expect(toldOf(sheet("held"))).toEqual([]);
  expect(toldOf(sheet("flashed"))).toContain("stop survey-word C5");
});

describe("errors in percent, where nothing bounds them", () => {
  const sheet = (fourth: number, lines = 8) => `
PANEL METERS
Unit | Meter | Injected A | Reads A | Error % | Good?
${Array.from({ length: lines }, (_, index) => {
  const [injected, row] = [100 * (index + 1), index + 3];
  const read = index === 3 ? fourth : injected * (1 + (index % 3) * 0.001);
  return `Fdr ${index + 1} | Ammeter | ${injected} | ${read} | =(D${row}/C${row}-1)*100 -> ${(read / injected - 1) * 100} | Y`;
}).join("\n")}`;
  it("one several times as large as all others is asked about", () => {
    expect(toldOf(sheet(408))).toEqual(["query survey-off-error E6"]);
  });
  it("and none where it is small, bounded, or the table short", () => {
    expect(toldOf(sheet(402))).toEqual([]);
    expect(toldOf(sheet(408, 5))).toEqual([]);
    expect(toldOf(sheet(408).replace("METERS", "METERS, limit 3 %"))).toEqual([]);
  });
});

it("a winding marked otherwise than its like is told, one written shorter is not", () => {
  const sheet = (third: string) => `
CT polarity and ratio
Unit | Phase | Ratio | Injected A | Sec. A | Polarity | P/F
Main | A | 600/5 | 600 | 5.01 | Sub | P
Main | B | 600/5 | 600 | 5.02 | Sub | P
Tie | A | 600/5 | 600 | 4.99 | ${third} | P
Tie | B | 600/5 | 600 | 5.01 | Sub | P
Fdr | A | 600/5 | 600 | 5.03 | Sub | P`;
  expect(toldOf(sheet("Add"))).toEqual(["stop survey-word F5"]);
  expect(toldOf(sheet("Subtr."))).toEqual([]);
});

it("a form of labels with a value each is no table of readings on its side", () => {
  expect(
    surveyOf(`
Zone substation 22 kV board - insulation
Test voltage | 5 kV DC
Accept | 2 GΩ | each phase to E
Tested by | R. Quill

Bay | R | W | B | Pass?
J01 | >200 GΩ | 180 GΩ | 95 GΩ | Y
J02 | 60 GΩ | 70 GΩ | 80 GΩ | Y`).blocks.map(({ range }) => range),
  ).toEqual(["A6:E8"]);
});

it.each(["t min", "Zeit min", "Min. on"])(
  "%s beside a level of a cable test is its time",
  (title) => {
    const sheet = (second: number) => `
Kabelprüfung VLF 0,1 Hz, 36 kV, 60 min
Abgang | Leiter | U kV | ${title} | I mA | R vor GΩ | R nach GΩ | Bewertung
Abgang 1 | L1 | 36 | 60 | 1.2 | 8 | 7 | i. O.
Abgang 1 | L2 | 36 | ${second} | 1.3 | 8.1 | 7.2 | i. O.
Abgang 1 | L3 | 36 | 60 | 1.2 | 8.4 | 7.9 | i. O.
Abgang 2 | L1 | 36 | 60 | 1.1 | 8.3 | 7.1 | i. O.`;
    expect(toldOf(sheet(60))).toEqual([]);
    expect(toldOf(sheet(30))).toEqual(["stop survey-duration D4"]);
  },
);

it("an exciting current that falls while the share of the knee rises is told", () => {
  const sheet = (half: number) => `
Magnetisierungskennlinien Stromwandler Kern 2
Feld | Leiter | Uk V | Ik mA | 10 % | 25 % | 50 % | 75 % | 100 % | Prüfer
J01 | L1 | 213 | 42 | 3.1 | 7.6 | 13.1 | 22.9 | 43.1 | Ho
J01 | L2 | 211 | 41 | 3.2 | 7.5 | ${half} | 22.1 | 42.7 | Ho
J01 | L3 | 215 | 43 | 3.3 | 7.7 | 13.3 | 22.4 | 43.3 | Ho
J02 | L1 | 214 | 42 | 3.2 | 7.4 | 12.9 | 22.8 | 42.2 | Ho`;
  expect(toldOf(sheet(13))).toEqual([]);
  expect(toldOf(sheet(2.1))).toContain("query survey-falls G4");
});

it.each([
  ["Minimum exigé", "Avis", "Conforme"],
  ["Mindestwert gefordert", "Urteil", "gut"],
  ["Mínimo requerido", "Dictamen", "Aprobada"],
])("what is called for as an extreme is a bound: %s", (bound, result, passed) => {
  const sheet = (second: number) => `
Insulation, 5 kV DC, values in GΩ
Cellule | C1 | C2 | C3 | C4
L1 / terre | 46.8 | 34.4 | 41.7 | 14.1
L2 / terre | 33.9 | ${second} | 40.9 | 55.6
L3 / terre | 55.9 | 48.2 | 22 | 32.4
${bound} | 2 | 2 | 2 | 2
${result} | ${passed} | ${passed} | ${passed} | ${passed}`;
  expect(toldOf(sheet(32.5))).toEqual([]);
  expect(toldOf(sheet(0.9))).toEqual(["stop survey-limit C4"]);
});

it("a value that is corrected by another factor than its like is told beside other quantities too", () => {
  const values = [15300, 39600, 30500, 55800, 41100, 36600];
  const sheet = (second: number) => `
IR and contacts, 77 °F: factor 1.25 to 68 °F
Breaker | 52-1 | | | 52-2 | |
Phase | A | B | C | A | B | C
IR before hipot, MΩ @ 2500 VDC | ${values.join(" | ")}
same, at 68 °F, MΩ | ${values.map((value, index) => value * (index === 4 ? second : 1.25)).join(" | ")}
Contact resistance, µΩ @ 100 A (max 60) | 35 | 35.1 | 36.3 | 41.5 | 41.9 | 44.2
P/F | P | P | P | P | P | P`;
  expect(toldOf(sheet(1.25))).toEqual([]);
  expect(toldOf(sheet(0.8))).toEqual(["query survey-correction F5"]);
});

it.each([
  ["Aprobada", "descargó a 24 kV, no se repitió"],
  ["Acceptée", "claquage à 24 kV"],
  ["Aprovada", "descarga a 24 kV"],
])("a verdict is read in either gender: %s against its remark", (passed, remark) => {
  expect(
    toldOf(`
Potencial aplicado 27 kV, 60 s
Gabinete | Fase | kV | s | mA | Dictamen | Nota
G-101 | A | 27 | 60 | 1.4 | ${passed} |
G-101 | B | 27 | 60 | 1.5 | ${passed} | ${remark}
G-101 | C | 27 | 60 | 1.6 | ${passed} |`),
  ).toEqual(["query survey-remark G4"]);
});

it("a head of two lines whose group titles are not joined is one, with the titles of one line behind it", () => {
  const [block, ...others] = surveyOf(`
Interruptores
Interruptor | Cierre ms | | | Apertura ms | | | Motor A | Dictamen | Realizó
 | A | B | C | A | B | C | | |
52-1 | 60.1 | 60.4 | 60.2 | 38.1 | 38.4 | 38.2 | 3.1 | Apto | AB
52-2 | 60.3 | 60.1 | 60.6 | 38.3 | 38.5 | 38.6 | 3.2 | Apto | AB
52-3 | 60.2 | 60.5 | 60.7 | 38.2 | 38.1 | 38.4 | 3.3 | Apto | AB`).blocks;
  expect(others).toEqual([]);
  expect(block?.range).toBe("A2:J6");
  expect(block?.entries[0]?.beside.result?.text).toBe("Apto");
});

describe("one date in a line of insulation before and after", () => {
  const sheets = (shared: boolean) => [
    drawSheet(
      "Iso",
      `
Isolation vor und nach der Spannungsprüfung, GΩ
Feld | vor L1 | vor L2 | nach L1 | nach L2 | ${shared ? "Datum" : "Datum vor | Datum nach"}
${[1, 2, 3, 4].map((feld) => `Feld ${feld} | ${12 + feld} | ${14 + feld} | ${12.5 + feld} | ${13.7 + feld} | ${shared ? "2031-03-02" : "2031-03-02 | 2031-03-03"}`).join("\n")}`,
    ),
    drawSheet(
      "HV",
      `
Spannungsprüfung 22,4 kV / 60 s
Feld | kV | s | Befund | Datum
${[1, 2, 3, 4].map((feld) => `Feld ${feld} | 22.4 | 60 | i.O. | 2031-03-05`).join("\n")}`,
    ),
  ];
  const order = (shared: boolean) =>
    checked(sheets(shared), { ratedkV: 12, basis: "IEC" }).findings.filter(
      ({ rule }) => rule === "survey-stage-order",
    ).length;
  it("is that of either, and against no order of the tests", () => {
    expect(order(true)).toBe(0);
    expect(order(false)).toBeGreaterThan(0);
  });
});
