import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, finds, keepsQuiet } from "../support";

const REMARKS = "Remarks";
const noted = (remark: string) => (book: MemoryBook) => book.set(CONTACT, 1, REMARKS, remark);

/** As crews point to other papers (invented). */
const IN_VAIN = [
  ["see punch list item 4", /the punch list has no such item/],
  ["Punchlist no. 12", /the punch list has no such item/],
  ["siehe Mängelliste Nr. 3", /the punch list has no such item/],
  ["voir liste des réserves n° 2", /the punch list has no such item/],
  ["see sheet Repairs", /the sheet Repairs is empty/],
  ["vedi riparazioni", /the sheet Repairs is empty/],
  ["first value: see reading history", /the reading history is empty/],
] as const;

finds(
  "points-nowhere",
  IN_VAIN.map(([remark, says]) => ({
    name: remark,
    spoil: noted(remark),
    table: CONTACT,
    row: 1,
    header: REMARKS,
    weight: "query" as const,
    says,
  })),
);

keepsQuiet("points-nowhere", [
  [
    "an item that the list has",
    (book) => {
      noted("see punch list item 4")(book);
      book.addRow("GearPunchList", { "No.": 4, What: "Door scratched (invented)", State: "Open" });
    },
  ],
  [
    "a repair that is entered",
    (book) => {
      noted("see Repairs")(book);
      book.addRow("GearRepairs", { Sheet: "Contacts", Cause: "loose bolt (invented)" });
    },
  ],
  [
    "a reading that the history has",
    (book) => {
      noted("see reading history")(book);
      book.addRow("GearHistory", { Sheet: "Contacts", Value: 62.4 });
    },
  ],
  ["a document outside the workbook", noted("see method statement MS-12, item 4")],
  ["the punch list, no item of it", noted("on the punch list")],
  ["a hole punched", noted("nameplate punched with 2026")],
]);
