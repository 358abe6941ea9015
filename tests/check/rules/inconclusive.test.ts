import { finds, INSULATION, keepsQuiet, WITHSTAND } from "../support";

finds("inconclusive", [
  {
    name: "an over-range reading that does not reach the limit",
    spoil: (book) => book.set(INSULATION, 2, "R 1 min MΩ", "> 2 GΩ"),
    table: INSULATION,
    row: 2,
    header: "R corrected MΩ",
    weight: "query",
    says: /cannot be judged: "R corrected MΩ" is > .* MΩ against "Minimum MΩ" of 5000 MΩ/,
  },
  {
    name: "a test below the least voltage",
    spoil: (book) => book.set(INSULATION, 2, "Test V DC", 1000),
    table: INSULATION,
    row: 2,
    header: "R corrected MΩ",
    weight: "query",
    says: /"Test V DC" is 1000 V against "Minimum test V"/,
  },
  {
    name: "a withstand test held too short",
    spoil: (book) => book.set(WITHSTAND, 1, "Duration s", 45),
    table: WITHSTAND,
    row: 1,
    header: "Duration s",
    weight: "query",
    says: /"Duration s" is 45 s against/,
  },
  {
    name: "a withstand test below the required voltage",
    spoil: (book) => book.set(WITHSTAND, 1, "Applied kV", 26),
    table: WITHSTAND,
    row: 1,
    header: "Applied kV",
    weight: "query",
    says: /"Applied kV" is 26 kV against/,
  },
  {
    name: "times measured away from the rated control voltage",
    spoil: (book) => book.set("GearTiming", 0, "Control V", 90),
    table: "GearTiming",
    row: 0,
    header: "Slowest ms",
    weight: "query",
    says: /"Control V off %" is -18\.2 % against "Allowed ± %" of 5 %/,
  },
]);

keepsQuiet("inconclusive", [
  [
    "a condition that is not recorded: said by another rule",
    (book) => book.set(INSULATION, 2, "Temperature °C", null),
  ],
  [
    "an entry that cannot be read: said by another rule",
    (book) => book.set(INSULATION, 2, "R 1 min MΩ", "about five"),
  ],
  ["a row that fails", (book) => book.set(INSULATION, 2, "R 1 min MΩ", 900)],
]);
