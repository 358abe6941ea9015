import { CONTACT, finds, INSULATION, keepsQuiet } from "../support";

finds("limit-differs", [
  {
    name: "a limit edited",
    spoil: (book) => book.set(INSULATION, 2, "Minimum MΩ", 500),
    table: INSULATION,
    row: 2,
    header: "Minimum MΩ",
    weight: "stop",
    says: /"Minimum MΩ" is 500; its criterion gives 5000/,
  },
  {
    name: "a maker's limit edited",
    spoil: (book) => book.set(CONTACT, 1, "Maximum µΩ", 90),
    table: CONTACT,
    row: 1,
    header: "Maximum µΩ",
    weight: "stop",
    says: /is 90; its criterion gives 50/,
  },
  {
    name: "a window of the maker's edited",
    spoil: (book) => book.set("GearTiming", 0, "Maximum ms", 90),
    table: "GearTiming",
    row: 0,
    header: "Maximum ms",
    weight: "stop",
    says: /"Maximum ms" is 90/,
  },
]);

keepsQuiet("limit-differs", [
  ["a table that was never calculated", (book) => book.forget()],
  ["the same limit, typed", (book) => book.set(INSULATION, 2, "Minimum MΩ", 5000)],
]);
