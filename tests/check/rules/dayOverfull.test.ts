import { finds, INSULATION, keepsQuiet, soundlyEquipped, soundOf, WITHSTAND } from "../support";

/** Every record of a table on one day, by one hand. */
const all = (
  table: string,
  header: string,
  value: string | number,
  rows: number,
): ((one: ReturnType<typeof soundOf>) => void) => {
  return (one) => {
    for (let row = 0; row < rows; row++) one.set(table, row, header, value);
  };
};
const book = () => soundOf(24);
/** Cables of which each phase was held for half an hour. */
const cabled = () => {
  const one = soundlyEquipped(8);
  all("GearCable", "Held min", 30, 24)(one);
  return one;
};
/** Two sections' and twenty-four panels' readings of one stage are 162 and take 13.5 h with their discharge. */
const BOTH_STAGES = 324;

finds("day-overfull", [
  {
    name: "two stages of insulation on one day by one person with one instrument",
    spoil: (one) => {
      all(INSULATION, "Date", 46_340, BOTH_STAGES)(one);
      all(INSULATION, "Instrument", "", BOTH_STAGES)(one);
    },
    table: INSULATION,
    row: 0,
    header: "Tested by",
    weight: "query",
    says: /the first of 324 records by A\. N\. Other of 2026-11-14, which take 27\.0 h at least/,
    book,
  },
  {
    name: "withstand tests of forty minutes each",
    spoil: (one) => {
      all(WITHSTAND, "Duration s", 2400, 48)(one);
      all(WITHSTAND, "Tested by", "Crew 2", 48)(one);
    },
    table: WITHSTAND,
    row: 0,
    header: "Instrument",
    weight: "query",
    says: /the first of \d+ records with X-1 .* 3\d\.\d h at least/,
    book,
  },
  {
    name: "twenty-four phases of cables of half an hour on one day",
    spoil: (one) => all("GearCable", "Date", 46_349, 24)(one),
    table: "GearCable",
    row: 0,
    header: "Instrument",
    weight: "query",
    says: /the first of 24 records with X-1 of 2026-11-23, in which test voltage was on for 12\.0 h/,
    book: cabled,
  },
]);

keepsQuiet("day-overfull", [
  [
    "cables whose phases were tested together",
    (one) => {
      all("GearCable", "Date", 46_349, 24)(one);
      all("GearCable", "Remarks", "three phases together", 24)(one);
    },
    cabled,
  ],
  [
    "eighteen phases of cables on one day",
    (one) => all("GearCable", "Date", 46_349, 18)(one),
    cabled,
  ],
  ["a full day", () => {}, book],
  [
    "a crew with several instruments",
    (one) => {
      all(INSULATION, "Date", 46_340, BOTH_STAGES)(one);
      all(INSULATION, "Tested by", "Crew 2", BOTH_STAGES)(one);
      all(INSULATION, "Instrument", "", BOTH_STAGES)(one);
    },
    book,
  ],
  ["a soak of a day", (one) => one.set(WITHSTAND, 0, "Duration s", 80_000)],
]);
