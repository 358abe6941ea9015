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
