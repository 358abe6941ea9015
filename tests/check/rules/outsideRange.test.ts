import { expect, test } from "vitest";
import { findingsOf, finds, INSULATION, keepsQuiet, ofRule, soundOf } from "../support";

const made = { kind: "Invented", serial: "0", calibrated: "2026-01-01", due: "2027-01-01" };
const book = () =>
  soundOf(1, {
    instruments: [
      { id: "X-1", ...made, ranges: [{ most: 500, unit: "GΩ" }] },
      { id: "TH-2", ...made, ranges: [{ least: -10, most: 50, unit: "°C" }] },
    ],
  });

finds("outside-range", [
  {
    name: "a reading beyond what its instrument measures",
    spoil: (one) => one.set(INSULATION, 2, "R 1 min MΩ", "501 GΩ"),
    table: INSULATION,
    row: 2,
    header: "R 1 min MΩ",
    weight: "query",
    says: /"501 GΩ".*outside what its instrument measures \(X-1: 0 to 500 GΩ\); take an instrument that/,
    book,
  },
  {
    name: "a temperature beyond the second instrument of its row",
    spoil: (one) => {
      one.set(INSULATION, 2, "Instrument", "X-1; TH-2");
      one.set(INSULATION, 2, "Temperature °C", 51);
    },
    table: INSULATION,
    row: 2,
    header: "Temperature °C",
    weight: "query",
    says: /is 51 °C.*TH-2: -10 to 50 °C/,
    book,
  },
]);

keepsQuiet("outside-range", [
  ["the end of the range", (one) => one.set(INSULATION, 2, "R 1 min MΩ", "500 GΩ"), book],
  ["a bound", (one) => one.set(INSULATION, 2, "R 1 min MΩ", "> 500 GΩ"), book],
  [
    "a quantity of which no named instrument has a range",
    (one) => one.set(INSULATION, 2, "Temperature °C", 51),
    book,
  ],
]);

test("of several instruments in a cell each is looked for in the table, and no rule says the same again", () => {
  const one = book();
  one.set(INSULATION, 2, "Instrument", "X-1; Q-7");
  expect(ofRule(one.snapshot, "instrument-unknown").map(({ found }) => found)).toEqual(["Q-7"]);
  const other = book();
  other.set(INSULATION, 2, "R 1 min MΩ", "501 GΩ");
  expect(
    findingsOf(other.snapshot)
      .map(({ rule }) => rule)
      .filter((rule) => rule === "inconclusive"),
  ).toEqual([]);
});
