import { longLineup } from "../../support/lineups";
import { finds, keepsQuiet, soundOf } from "../support";

const INSTRUMENTS = "GearInstruments";
const [first] = longLineup(1).instruments;
if (!first) throw new Error("the lineup has an instrument");
const book = () =>
  soundOf(2, {
    instruments: [
      { ...first, serial: "INV-1", accuracyPercent: 1 },
      { ...first, id: "X-2", serial: "INV-2" },
    ],
  });

finds("register-odd", [
  {
    name: "one serial number twice",
    spoil: (one) => one.set(INSTRUMENTS, 1, "Serial number", "inv 1"),
    table: INSTRUMENTS,
    row: 1,
    header: "Serial number",
    weight: "query",
    says: /X-2: has the serial number inv 1 of X-1/,
    book,
  },
  {
    name: "a calibration for years",
    spoil: (one) => one.set(INSTRUMENTS, 0, "Due", 47_900),
    table: INSTRUMENTS,
    row: 0,
    header: "Due",
    weight: "query",
    says: /more than three years later/,
    book,
  },
  {
    name: "a due date moved",
    spoil: (one) => one.set(INSTRUMENTS, 0, "Due", 46_454),
    table: INSTRUMENTS,
    row: 0,
    header: "Due",
    weight: "query",
    says: /X-1: 2027-03-08 here, 2027-01-01 in the lineup/,
    book,
  },
  {
    name: "a serial number that is gone",
    spoil: (one) => one.set(INSTRUMENTS, 0, "Serial number", null),
    table: INSTRUMENTS,
    row: 0,
    header: "Serial number",
    weight: "query",
    says: /X-1: has no serial number here, inv-1 in the lineup/i,
    book,
  },
  {
    name: "an accuracy made finer",
    spoil: (one) => one.set(INSTRUMENTS, 0, "Accuracy ± %", 0.1),
    table: INSTRUMENTS,
    row: 0,
    header: "Accuracy ± %",
    weight: "query",
    says: /0.1 here, 1 in the lineup/,
    book,
  },
]);

keepsQuiet("register-odd", [
  [
    "an instrument calibrated anew",
    (one) => {
      one.set(INSTRUMENTS, 0, "Calibrated", 46_060);
      one.set(INSTRUMENTS, 0, "Due", 46_425);
    },
    book,
  ],
  [
    "blank days",
    (one) => {
      for (const row of [0, 1])
        for (const header of ["Calibrated", "Due"]) one.set(INSTRUMENTS, row, header, null);
    },
    book,
  ],
]);
