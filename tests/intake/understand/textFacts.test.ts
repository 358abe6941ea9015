import { describe, expect, test } from "vitest";
import { textFacts } from "../../../src/intake/understand/textFacts";

/** What belongs where follows from each sentence itself; names, instruments and places are invented. */
const listed = new Set(["mg-51", "dl 4", "thx-3"]);
const of = (text: string) => textFacts(text, listed);

describe("facts in free words over a table", () => {
  test.each([
    ["Tested on 3 March 2027 - P. Lindqvist", ["3 March 2027"]],
    ["Busbars, 2027-03-03, MG-51", ["2027-03-03"]],
    ["Le 1er mars 2027, par T. Fabre", ["1er mars 2027"]],
    ["Ensayo de aislamiento del 3 de marzo de 2027", ["3 de marzo de 2027"]],
    ["March 3, 2027 / D. Okoro", ["March 3, 2027"]],
  ])("the day in %s", (text, dates) => {
    expect(of(text).dates).toEqual(dates);
  });

  test.each([
    "Calibrated until 2027-12-31",
    "Drawing 114, revision B of 03.03.2027",
    "Client's order of 3 March 2027",
  ])("no day of the test: %s", (text) => {
    expect(of(text).dates).toEqual([]);
  });

  test.each([
    ["3 March 2027, D. Okoro, MG-51", "D. Okoro"],
    ["Mesures par T. Fabre", "T. Fabre"],
    ["Messung von K. van der Meer", "K. van der Meer"],
    ["Operator P. Lindqvist   Set MG-51", "P. Lindqvist"],
    ["الفاحص م. القاسم", "م. القاسم"],
  ])("who tested in %s", (text, name) => {
    expect(of(text).people).toEqual([name]);
  });

  test.each(["Client R. Amsel", "Witness: R. Amsel", "Attn. R. Amsel", "R. Amsel Contracting"])(
    "nobody who tested: %s",
    (text) => {
      expect(of(text).people).toEqual([]);
    },
  );

  test("the instruments that the lineup lists, save what is read beside the test", () => {
    expect(of("5 kV set MG-51, 20 °C by thermometer THX-3").instruments).toEqual(["MG-51"]);
    expect(of("Set MG-510").instruments).toEqual([]);
  });

  test.each([
    ["copper at 79 °F", { about: "copper at", text: "79 °F", unit: "°F" }],
    ["21,5 °C", { about: "", text: "21,5 °C", unit: "°C" }],
    ["outdoors -5 °C", { about: "outdoors", text: "-5 °C", unit: "°C" }],
    ["tension 5 000 V continu", { about: "tension", text: "5000 V", unit: "V" }],
    ["45 %RH", { about: "RH", text: "45 %", unit: "%" }],
  ])("the value in %s, with the words beside it", (text, measure) => {
    expect(of(text).measures).toEqual([measure]);
  });

  test("a range is no value", () => {
    expect(of("10-25 °C").measures).toEqual([]);
  });
});
