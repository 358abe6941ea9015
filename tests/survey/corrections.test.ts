import { describe, expect, test } from "vitest";
import { messagesFor } from "../../src/messages/messages";
import type { Correction } from "../../src/sheets/kept/surveyAnswers";
import { recognise } from "../../src/survey/checkSurvey";
import { surveyBook } from "../../src/survey/surveyBook";
import { checked, drawSheet } from "./support";

const { survey: text } = messagesFor("en");

/** What a person puts right by pointing at cells; every table is invented. */
const say = (address: string, of: Correction["of"], is: string): Correction => ({
  sheet: "Sheet",
  address,
  of,
  is,
});

const entriesOf = (drawing: string, ...corrections: Correction[]) =>
  surveyBook({ sheets: [drawSheet("Sheet", drawing)] }, "day-first", corrections).blocks.flatMap(
    ({ entries }) =>
      entries.map(
        ({ kind, panel, position, address, cell, beside }) =>
          `${address} ${kind} ${panel} ${position} ${cell?.text} ${beside.temperature?.text ?? "-"}`,
      ),
  );

describe("this row is the head", () => {
  const drawing = `
Insulation resistance, GΩ
ref|loc|val|rem
Panel|Connection|Value|Note
W1|A-E|31|
W1|B-E|33|
W2|A-E|30|`;

  test("takes the place of the row that was taken for it", () => {
    const found = entriesOf(drawing, say("A3", "row", "head"), say("C3", "column", "reading"));
    expect(found).toEqual([
      expect.stringMatching(/^C4 insulation W1 A-E 31 /),
      expect.stringMatching(/^C5 insulation W1 B-E 33 /),
      expect.stringMatching(/^C6 insulation W2 A-E 30 /),
    ]);
  });

  test("makes a table of lines that were taken for none", () => {
    const plain = `
Megger log, GΩ
alpha|beta|gamma
W1|one|31
W1|two|33
W2|one|30`;
    expect(entriesOf(plain)).toEqual([]);
    const found = entriesOf(
      plain,
      say("B2", "row", "head"),
      say("A2", "column", "panel"),
      say("C2", "column", "reading"),
    );
    expect(found.map((line) => line.slice(0, 16))).toEqual([
      "C3 insulation W1",
      "C4 insulation W1",
      "C5 insulation W2",
    ]);
  });

  test("of a blank row changes nothing", () => {
    expect(entriesOf(drawing, say("A40", "row", "head"))).toEqual(entriesOf(drawing));
  });
});

describe("this column is", () => {
  const drawing = `
Contact resistance, µΩ
Panel|Pole|First|Second
P1|L1|41|43
P1|L2|42|44
P2|L1|40|45`;

  test("the reading, and another is nothing", () => {
    const found = entriesOf(
      drawing,
      say("C2", "column", "nothing"),
      say("D2", "column", "reading"),
    );
    expect(found.map((line) => line.split(" ")[0])).toEqual(["D3", "D4", "D5"]);
  });

  test("the limit, by which readings are then judged", () => {
    const sheet = drawSheet(
      "Sheet",
      `
Contact resistance
Panel|Pole|R (µΩ)|Guide
P1|L1|41|60
P1|L2|72|60
P2|L1|40|60
P2|L2|42|60`,
    );
    const told = (corrections: readonly Correction[]) =>
      checked([sheet], { ratedkV: 15, basis: "NETA", corrections }).findings.map(
        ({ rule, address }) => `${rule} ${address}`,
      );
    expect(told([])).not.toContain("survey-limit C4");
    expect(told([say("D2", "column", "maximum")])).toContain("survey-limit C4");
  });

  test("the last word on a column counts", () => {
    const found = entriesOf(
      drawing,
      say("D2", "column", "nothing"),
      say("D2", "column", "reading"),
      say("C2", "column", "reading"),
      say("C2", "column", "nothing"),
    );
    expect(found.every((line) => line.startsWith("D"))).toBe(true);
  });
});

test("this cell is the temperature: it holds for the lines that say none themselves", () => {
  const drawing = `
Insulation resistance, shop at||10
Panel|Connection|R GΩ|Temp °C
W1|A-E|7|
W1|B-E|9|20
W2|A-E|12|20`;
  const at = say("C1", "cell", "temperature");
  expect(entriesOf(drawing, at).map((line) => line.split(" ").at(-1))).toEqual(["10", "20", "20"]);
  // 7 GΩ at 10 °C are 4.41 GΩ at 20 °C (ANSI/NETA ATS-2025, tables 100.14 and 100.1).
  const findings = (corrections: readonly Correction[]) =>
    checked([drawSheet("Sheet", drawing)], { ratedkV: 15, basis: "NETA", corrections })
      .findings.filter(({ rule }) => rule === "survey-limit")
      .map(({ address }) => address);
  expect(findings([])).toEqual([]);
  expect(findings([at])).toEqual(["C3"]);
});

test("this table is of another record", () => {
  const drawing = `
Sheet 12
Panel|Pole|R (mΩ)
P1|L1|1.2
P1|L2|1.3
P2|L1|1.1`;
  const kinds = (...corrections: Correction[]) =>
    recognise({ sheets: [drawSheet("Sheet", drawing)] }, corrections, text).map(
      ({ kinds }) => kinds,
    );
  expect(kinds(say("A2", "row", "kind:earthing"))).toEqual([["earthing"]]);
});

test("what is recognised names its parts, each with the cell of its title", () => {
  const [block] = recognise(
    {
      sheets: [
        drawSheet(
          "Sheet",
          `
Insulation resistance
Panel|Connection|R (GΩ)|Min (GΩ)
W1|A-E|7|5
W1|B-E|9|5
W2|A-E|12|5`,
        ),
      ],
    },
    [],
    text,
  );
  expect(block?.evidence).toBe('readings under "R (GΩ)"; in GΩ; under "Insulation resistance"');
  expect(block?.head).toBe("A2");
  expect(block?.parts).toEqual([
    { address: "A2", title: "Panel", concept: "panel" },
    { address: "B2", title: "Connection", concept: "position" },
    { address: "C2", title: "R (GΩ)", concept: "reading" },
    { address: "D2", title: "Min (GΩ)", concept: "minimum" },
  ]);
});
