import { expect, test } from "vitest";
import { longLineup } from "../../support/lineups";
import {
  CONTACT,
  finds,
  INSULATION,
  keepsQuiet,
  ofRule,
  soundlyEquipped,
  soundOf,
  TORQUE,
  WITHSTAND,
} from "../support";

const instruments = [
  ...longLineup(1).instruments,
  ...[
    ["IR-5", "Insulation tester 5 kV, 10 TΩ"],
    ["IR-1", "Insulation tester 1 kV"],
    ["MO-1", "Micro-ohmmeter 200 A"],
    ["TW-1", "Drehmomentschlüssel 20 bis 50 N·m"],
    ["AX-1", "Set 7"],
    ["TH-1", "Thermo-hygrometer"],
    ["VL-1", "Very-low-frequency test set 60 kV"],
    ["AC-1", "AC withstand test set 50 kV"],
    ["AD-1", "AC/DC test set 50 kV"],
  ].map(([id = "", kind = ""]) => ({
    ...{ id, kind, serial: `${id}-S` },
    ...{ calibrated: "2026-01-01", due: "2027-01-01" },
  })),
];
const book = () => soundOf(3, { instruments });

finds("instrument-misfit", [
  {
    name: "a micro-ohmmeter named for insulation",
    spoil: (one) => one.set(INSULATION, 4, "Instrument", "MO-1"),
    table: INSULATION,
    row: 4,
    header: "Instrument",
    weight: "query",
    says: /"R 1 min MΩ" cannot have been taken with .*MO-1, Micro-ohmmeter 200 A/,
    book,
  },
  {
    name: "an insulation tester and a thermometer named for a contact resistance",
    spoil: (one) => one.set(CONTACT, 2, "Instrument", "IR-5; TH-1"),
    table: CONTACT,
    row: 2,
    header: "Instrument",
    weight: "query",
    says: /cannot have been taken/,
    book,
  },
  {
    name: "an insulation tester named for a withstand test by alternating voltage",
    spoil: (one) => one.set("GearWithstand", 1, "Instrument", "IR-5"),
    table: "GearWithstand",
    row: 1,
    header: "Instrument",
    weight: "query",
    says: /"Applied kV" cannot have been taken with .*IR-5/,
    book,
  },
  {
    name: "a tester of 1 kV at 5 kV",
    spoil: (one) => one.set(INSULATION, 4, "Instrument", "IR-1"),
    table: INSULATION,
    row: 4,
    header: "Test V DC",
    weight: "query",
    says: /"Test V DC" is 5000 V, beyond .*IR-1, Insulation tester 1 kV/,
    book,
  },
  {
    name: "a torque beyond the wrench",
    spoil: (one) => one.set(TORQUE, 0, "Instrument", "TW-1"),
    table: TORQUE,
    row: 0,
    header: "Applied N·m",
    weight: "query",
    says: /60 N·m, beyond/,
    book,
  },
  {
    name: "a power-frequency withstand test with a very-low-frequency set",
    spoil: (one) => one.set(WITHSTAND, 2, "Instrument", "VL-1; TH-1"),
    table: WITHSTAND,
    row: 2,
    header: "Instrument",
    weight: "query",
    says: /a test with AC, and the test set named gives another voltage \(VL-1/,
    book,
  },
]);

keepsQuiet("instrument-misfit", [
  ["a set of the test's voltage", (one) => one.set(WITHSTAND, 2, "Instrument", "AC-1"), book],
  ["a set of several voltages", (one) => one.set(WITHSTAND, 2, "Instrument", "AD-1"), book],
  ["one of two sets that fits", (one) => one.set(WITHSTAND, 2, "Instrument", "VL-1; AC-1"), book],
  ["the instruments that fit", (one) => one.set(INSULATION, 4, "Instrument", "IR-5; TH-1"), book],
  ["a description that says nothing", (one) => one.set(INSULATION, 4, "Instrument", "AX-1"), book],
  ["one of two that fits", (one) => one.set(INSULATION, 4, "Instrument", "MO-1; IR-5"), book],
  ["one that is not listed", (one) => one.set(INSULATION, 4, "Instrument", "MO-1; ZZ"), book],
  [
    "a tester a little above its nominal voltage",
    (one) => {
      one.set(INSULATION, 4, "Instrument", "IR-5");
      one.set(INSULATION, 4, "Test V DC", 5200);
    },
    book,
  ],
]);

test("an instrument too coarse for the error that it is to prove is told once for its table", () => {
  const one = soundlyEquipped();
  one.set("GearInstruments", 0, "Accuracy ± %", 2);
  const found = ofRule(one.snapshot, "instrument-misfit").filter(
    ({ sheet }) => sheet === "Metering",
  );
  expect(found).toMatchObject([{ address: one.at("GearMetering", 0, "Instrument") }]);
  expect(found[0]?.message).toMatch(/±2 %, too coarse .* of 1.5 %.*more rows of the table/);
});
