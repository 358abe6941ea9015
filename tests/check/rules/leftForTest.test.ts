import { expect, test } from "vitest";
import { CONTACT, finds, keepsQuiet, ofRule, sound, soundOf } from "../support";

const REMARKS = "Remarks";

finds("left-for-test", [
  {
    name: "a jumper that is still in",
    spoil: (book) => book.set(CONTACT, 1, REMARKS, "bridged at X4:7 for the test, jumper still in"),
    table: CONTACT,
    row: 1,
    header: REMARKS,
    weight: "query",
    says: /left as for the test \("bridged at X4:7 .*Put it back/,
  },
  {
    name: "beside a step of the energization, as a stop",
    book: () => soundOf(2, { furtherRecords: [{ kind: "energization" }] }),
    spoil: (book) => {
      book.set("GearEnergization", 1, REMARKS, "one set of earths not found, believed removed");
    },
    table: "GearEnergization",
    row: 1,
    header: REMARKS,
    weight: "stop",
    says: /believed removed/,
  },
]);

/** As crews write it (invented): what was left, and what was put back. */
test.each([
  "jumper left in at X4:7",
  "bridge at X4:7 not removed yet",
  "temporary jumper fitted",
  "trip link open, to be closed before energizing",
  "trip link open for the test, left open",
  "wire X4:7 lifted for the test, not put back",
  "relay earth lifted for the test, not put back",
  "CT secondary still shorted at TB3",
  "secondary fuses left out",
  "earth left on the cable side",
  "temporary earth still on",
  "Brücke an X4:7 noch drin",
  "Erdung nicht entfernt",
  "pont laissé en place à X4:7",
  "puente sin retirar en X4:7",
  "ponte em X4:7 por retirar",
  "ponticello su X4:7 lasciato inserito",
  "fusibili secondari non ricollegati",
  "الجسر على X4:7 لم ينزع",
  "ترك التاريض مركبا",
])("left-for-test hears: %s", (remark) => {
  const book = sound();
  book.set(CONTACT, 1, REMARKS, remark);
  expect(ofRule(book.snapshot, "left-for-test")).toHaveLength(1);
});

keepsQuiet(
  "left-for-test",
  [
    "jumper fitted for the test and removed",
    "link out for the test and back in",
    "wire lifted for the test, put back since",
    "no jumper left in",
    "nothing left in, all earths removed",
    "trip link left open as drawn",
    "fuses left out, refitted after the test",
    "earths on the busbar by the permit",
    "measured again with other leads",
    "door left open while measuring",
    "ponticello rimosso dopo la prova",
    "ponticello lasciato inserito, poi rimosso",
    "نزع الجسر بعد الاختبار",
  ].map((remark) => [remark, (book) => book.set(CONTACT, 1, REMARKS, remark)] as const),
);
