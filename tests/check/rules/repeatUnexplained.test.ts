import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, cellOf, finds, INSULATION, keepsQuiet, rowOf } from "../support";

const row = (one: MemoryBook) => rowOf(one, CONTACT, "=K0002", "L2");

/** The history tells of a reading that stood on the contact of a pole before. */
const before =
  (value: number, header = "R µΩ") =>
  (one: MemoryBook) => {
    const key = ["Panel", "Part", "Pole"].map((name) => cellOf(one, CONTACT, row(one), name).value);
    one.addRow("GearHistory", {
      Sheet: "Contacts",
      Row: key.join(" · "),
      Column: header,
      Value: value,
      Source: "contacts.csv, line 8 (invented)",
      "Replaced on": 46_340,
    });
  };
const remark = (one: MemoryBook) => {
  before(95)(one);
  one.set(CONTACT, row(one), "Remarks", "Clamp was loose; measured again.");
};

finds("repeat-unexplained", [
  {
    name: "a contact that failed and passed the next time, without a word",
    spoil: before(95),
    table: CONTACT,
    row: 4,
    header: "Remarks",
    weight: "query",
    says: /"R µΩ" was 95 µΩ, which fails, before it was .* µΩ, and nothing says why/,
  },
]);

keepsQuiet("repeat-unexplained", [
  ["a cause in the remarks", remark],
  ["a reading as good as the one that stands", before(31)],
  ["another column of the row", before(95, "Conductor °C")],
  ["nothing in the history", (one) => one.set(INSULATION, 0, "R 1 min MΩ", 120_000)],
  [
    "a repair that the workbook tells",
    (one) => {
      before(95)(one);
      const key = ["Panel", "Part", "Pole"].map(
        (name) => cellOf(one, CONTACT, row(one), name).value,
      );
      one.addRow("GearRepairs", { Sheet: "Contacts", Row: key.join(" · ") });
    },
  ],
]);
