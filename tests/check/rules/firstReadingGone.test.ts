import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, cellOf, finds, keepsQuiet } from "../support";

const REMARKS = "Remarks";
const noted = (remark: string) => (book: MemoryBook) => book.set(CONTACT, 1, REMARKS, remark);
const nameIn = (book: MemoryBook) =>
  ["Panel", "Part", "Pole"].map((name) => cellOf(book, CONTACT, 1, name).value).join(" · ");

finds("first-reading-gone", [
  {
    name: "a pole measured again, of which nothing else is kept",
    spoil: noted("measured again after cleaning"),
    table: CONTACT,
    row: 1,
    header: REMARKS,
    weight: "query",
    says: /tells of a repeat \("measured again after cleaning"\), and the first reading is nowhere/,
  },
]);

finds("first-reading-gone", [
  {
    name: "a first reading in the remark alone",
    spoil: noted("repeated after drying, first reading 62.4"),
    table: CONTACT,
    row: 1,
    header: REMARKS,
    weight: "query",
    says: /first reading 62\.4/,
  },
]);

finds(
  "first-reading-gone",
  ["ripetuta dopo asciugatura, prima lettura 62,4", "misurata di nuovo", "القراءة الاولى 62.4"].map(
    (remark) => ({
      name: remark,
      spoil: noted(remark),
      table: CONTACT,
      row: 1,
      header: REMARKS,
      weight: "query" as const,
      says: /the first reading is nowhere/,
    }),
  ),
);

keepsQuiet("first-reading-gone", [
  ["a repeat in Italian that says after what", noted("ripetuta dopo la pulizia")],
  ["a repeat in Arabic that says after what", noted("اعيد القياس بعد التنظيف")],
  ["what says after what it was repeated", noted("repeated after cleaning, second reading stands")],
  ["the same result", noted("repeated, same reading")],
  ["what is still to be", noted("to be repeated")],
  [
    "the first reading in the history",
    (book) => {
      noted("measured again after cleaning")(book);
      book.addRow("GearHistory", {
        Sheet: "Contacts",
        Row: nameIn(book),
        Column: "R µΩ",
        Value: 62.4,
        Source: "typed (invented)",
        "Replaced on": 46_340,
      });
    },
  ],
  [
    "a repair of the record",
    (book) => {
      noted("measured again after cleaning")(book);
      book.addRow("GearRepairs", { Sheet: "Contacts", Row: nameIn(book) });
    },
  ],
  [
    "a row that fails",
    (book) => {
      noted("measured again after cleaning")(book);
      book.set(CONTACT, 1, "R µΩ", 95);
    },
  ],
]);
