import { describe, expect, it } from "vitest";
import { checked, drawSheet, readingsOf, surveyOf } from "./support";

/** Tables on their side: what is told of a record stands down, the panels across. All are invented. */
const toldOf = (drawing: string) =>
  checked([drawSheet("Sheet", drawing)]).findings.map(
    ({ weight, rule, address }) => `${weight} ${rule} ${address}`,
  );

describe("labelled lines over the phases belong to the titles", () => {
  it.each([
    ["Celda", "Largo m", "Fase", "Aisl. antes GΩ", "kV ef", "Aisl. después GΩ", "Ejecutó", "Fecha"],
    ["Feld", "Kabel", "Leiter", "Riso vor GΩ", "kV", "Riso nach GΩ", "Prüfer", "Datum"],
    ["Cubicle", "Length ft", "Ph", "Pre IR GΩ", "VLF kV", "Post IR GΩ", "Tech", "Date"],
  ])("%s over %s and %s", (panel, length, phase, before, level, after, by, date) => {
    const sheet = (second: number, who: string) => `
Cables, VLF 0.1 Hz
${panel} | 52-M1 | | | 52-A1 | | | 52-A2 | |
${length} | 210 | | | 145 | | | 88 | |
${phase} | A | B | C | A | B | C | A | B | C
${before} | 13.3 | 17.7 | 18.4 | 17 | 11.4 | 12.5 | 11.6 | 12.4 | 13
${level} | 21 | 21 | 21 | 21 | ${second} | 21 | 21 | 21 | 21
${after} | 14.2 | 15.3 | 14.5 | 13.9 | 13.8 | 15 | 7.8 | 12.7 | 12
${by} | PA | PA | PA | PA | ${who} | PA | PA | PA | PA
${date} | 2031-05-04 | 2031-05-04 | 2031-05-04 | 2031-05-04 | 2031-05-04 | 2031-05-04 | 2031-05-04 | 2031-05-04 | 2031-05-04`;
    const [block, ...others] = surveyOf(sheet(21, "PA")).blocks;
    expect(others).toEqual([]);
    expect(block?.panels).toEqual(["52-M1", "52-A1", "52-A2"]);
    expect(readingsOf(sheet(21, "PA"))[0]).toBe("cable; 52-M1; A; before; 13.3 GΩ; B5");
    expect(toldOf(sheet(21, "PA"))).toEqual([]);
    expect(toldOf(sheet(16, "")).toSorted()).toEqual([
      "query survey-blank F8",
      "stop survey-level F6",
    ]);
  });
  it("a form of one panel over its phases is no line of panels", () => {
    expect(
      surveyOf(`
Panel | K01 | Date | 2031-05-04
Phase | R | S | T
Contact resistance, µΩ | 33 | 34 | 35
Limit, µΩ | 60 | 60 | 60`).blocks[0]?.panels,
    ).toEqual(["K01"]);
  });
});

describe("lines that are fields of a record, under panels with points of their own units", () => {
  const sheet = (measured: number, date: string) => `
Relay timing, secondary injection, tolerance 5 %
Cubicle | 52-A | 52-A | 52-A | 52-B | 52-B | 52-B | 52-C | 52-C | 52-C
Element | 51 | 51 | 51 | 51 | 51 | 51 | 51 | 51 | 51
Test point | Pickup A | 2x s | 5x s | Pickup A | 2x s | 5x s | Pickup A | 2x s | 5x s
Expected | 4 | 19.04 | 2.59 | 4 | 19.04 | 2.59 | 4 | 19.04 | 2.59
Measured | 4.04 | 19.04 | 2.56 | 4.03 | 19 | ${measured} | 3.97 | 19.1 | 2.6
P/F | P | P | P | P | P | P | P | P | P
Date | ${date} | ${date} | ${date} | ${date} | ${date} | ${date} | ${date} | ${date} | ${date}
Tech | LH | LH | LH | LH | LH | LH | LH | LH | LH`;
  it("are read as one record a column, and days are no readings", () => {
    const [block] = surveyOf(sheet(2.6, "46148")).blocks;
    expect(block?.panels).toEqual(["52-A", "52-B", "52-C"]);
    expect(block?.entries).toHaveLength(9);
    expect(toldOf(sheet(2.6, "46148"))).toEqual([]);
    expect(toldOf(sheet(2.9, "46148"))).toEqual(["stop survey-limit G6"]);
  });
  it("a line of units is none of titles, and gives each column its own", () => {
    const units = sheet(2.6, "46148").replace(
      "\nP/F",
      "\nUnit | A | s | s | A | s | s | A | s | s\nP/F",
    );
    const [block, ...others] = surveyOf(units).blocks;
    expect(others).toEqual([]);
    expect(block?.entries.slice(0, 3).map(({ unit }) => unit)).toEqual(["A", "s", "s"]);
  });
});

it("a line of initials that are units as well is none of titles", () => {
  expect(
    surveyOf(`
Contact resistance, µΩ
Panel | P1 | P2 | P3
L1 | 33 | 34 | 35
L2 | 32 | 33 | 34
L3 | 31 | 35 | 33
Tested by | PA | PA | PA
Date | 46148 | 46148 | 46148`).blocks.map(({ kinds }) => kinds),
  ).toEqual([["contact"]]);
});
