import { expect, test } from "vitest";
import { doubtIn } from "../../../src/quantities/remarks/doubtIn";
import type { Snapshot } from "../../../src/sheets/snapshot";
import {
  CONTACT,
  findingsOf,
  finds,
  INSULATION,
  keepsQuiet,
  ofRule,
  rowOf,
  sound,
  soundOf,
  WITHSTAND,
} from "../support";

/** Each of the senses in each language of intake; written for this test. */
test.each([
  ["discharge", "Flashover at 20 kV, L2 to frame"],
  ["discharge", "Überschlag bei 18 kV am Kabelendverschluss"],
  ["discharge", "claquage à 19 kV"],
  ["discharge", "contorneo en el aislador"],
  ["discharge", "Ocorreu descarga disruptiva aos 40 s"],
  ["discharge", "حدث انهيار عند 18 كيلوفولت"],
  ["repeat", "to be repeated when dry"],
  ["repeat", "muss wiederholt werden"],
  ["repeat", "à refaire par temps sec"],
  ["repeat", "hay que repetir mañana"],
  ["repeat", "a repetir após chuva"],
  ["repeat", "يجب تكرار القياس"],
  ["estimated", "estimated from neighbour panel"],
  ["estimated", "Wert geschätzt"],
  ["estimated", "valeur estimée"],
  ["estimated", "valor estimado"],
  ["estimated", "قيمة تقديرية"],
  ["not measured", "R10 not measured, no time"],
  ["not measured", "nicht gemessen, kein Zugang"],
  ["not measured", "non mesuré"],
  ["not measured", "no se midió"],
  ["not measured", "não foi medido"],
  ["not measured", "لم يتم القياس"],
  ["defective", "lamp defective"],
  ["defective", "Gerät defekt"],
  ["defective", "appareil défectueux"],
  ["defective", "equipo averiado"],
  ["defective", "cabo danificado"],
  ["defective", "الجهاز معطل"],
  ["defective", "Did not close, fuse missing"],
  ["defective", "Two anchor bolts missing, to be fitted later"],
  ["defective", "Bolt cross-threaded"],
  ["defective", "Wire 14 found loose"],
  ["defective", "Ferrule an Klemme 7 fehlt"],
  ["defective", "vis desserrée"],
  ["defective", "falta una arandela"],
  ["defective", "falta uma arruela"],
  ["discharge", "Crackling and blue light at the top barrier from 18 kV."],
  ["discharge", "Voltage collapsed at 50 s, source reset."],
  ["discharge", "Smell of burning afterwards."],
  ["discharge", "Tracking noted on bus support, phase A."],
  ["discharge", "Knistern ab 20 kV"],
  ["discharge", "effluves visibles à 22 kV"],
  ["discharge", "olor a quemado"],
  ["estimated", "Reading falling, 4 GΩ after 3 min."],
  ["estimated", "Messwert schwankt"],
  ["cut short", "Only up to 20 kV, see next sheet."],
  ["cut short", "Ran 30 s only due to schedule."],
  ["cut short", "nur 30 s gehalten"],
  ["cut short", "seulement jusqu'à 20 kV"],
  ["cut short", "solo hasta 20 kV"],
  ["cut short", "interrompido aos 40 s"],
  ["discharge", "Hipot tripped at 24 kV first time, wiped down and passed."],
  ["attempts", "Fourth attempt; first three gave 60 to 75."],
  ["attempts", "At 94 V it closed only once out of three."],
  ["attempts", "erst beim dritten Versuch"],
  ["attempts", "deuxième tentative"],
  ["attempts", "segundo intento"],
  ["defective", "Thread stripped on lower left bolt."],
  ["defective", "Tripped 52-F2 instead of 52-F1."],
  ["defective", "Hissing at the filling valve."],
  ["defective", "Gewinde ausgerissen"],
  ["not measured", "Cable box not opened, terminations not seen."],
  ["repeat", "hot spot on L2, retorque at next outage"],
  ["borrowed", "tester borrowed from other crew"],
  ["borrowed", "Messgerät geliehen"],
  ["borrowed", "appareil emprunté"],
  ["borrowed", "instrumento prestado"],
  ["borrowed", "instrumento emprestado"],
  ["borrowed", "جهاز مستعار"],
  // What is still to be done settles nothing, nor does what was not done.
  ["defective", "Insulator cracked, to be replaced."],
  ["discharge", "Corona heard at L2 shutter, must be repaired before energizing."],
  ["discharge", "Tracking marks on barrier, not repaired yet."],
  ["discharge", "Crackling from the VT compartment, to be repeated after cleaning."],
  ["repeat", "Will be re-tested after drying."],
  ["repeat", "Terminal repaired; re-test required"],
  ["defective", "Stützer gerissen, wird nach dem Abschalten ersetzt"],
  ["defective", "isolateur fissuré, à remplacer"],
  ["defective", "aislador roto, será reemplazado"],
  ["defective", "isolador danificado, deve ser substituído"],
  ["defective", "isolatore rotto, deve essere sostituito"],
  ["discharge", "Seal replaced. Crackling at 20 kV."],
  ["discharge", "No flashover, but crackling from the cable box."],
  ["discharge", "kein Überschlag, aber Knistern ab 20 kV"],
  ["discharge", "PD audible at 20 kV"],
  ["discharge", "scarica superficiale a 18 kV"],
  ["not measured", "non misurato"],
  ["estimated", "contact pressure not sure"],
  ["defective", "Grade 10.9 bolts fitted instead of 8.8"],
  ["defective", "Applied to L2 and L3 together by mistake"],
  ["defective", "Panel wet after washing"],
  // What stands in the way, sticks, or is still to be done, and what worked more often or later than it was told to.
  ["defective", "Conduit laid across the vent, to be shifted"],
  ["defective", "Shutter jams at half height"],
  ["defective", "Interlock can be lifted with a screwdriver"],
  ["defective", "Lamp did not light"],
  ["defective", "Klappe verstellt durch Leiter"],
  ["defective", "clapet obstrué"],
  ["attempts", "Closed two times to one command"],
  ["attempts", "Opened by itself after a minute"],
  ["attempts", "schloss zweimal auf einen Befehl"],
] as const)("%s: %s", (doubt, remark) => {
  expect(doubtIn(remark)?.doubt).toBe(doubt);
});

test.each([
  "door did not open while the busbar was alive",
  "truck does not move, did not start when locked",
  "function blocked for the test",
  "relief path not obstructed",
  "closed and tripped twice for the counter",
  "tripped by itself as it must",
  "no flashover",
  "no discharge, no breakdown seen",
  "flashover: none",
  "kein Überschlag",
  "sans claquage ni contournement",
  "sin contorneo",
  "sem descarga disruptiva",
  "بدون انهيار",
  "first try broke down, repeated after drying",
  "Lamp defective, replaced",
  "wiederholt nach Reinigung, Überschlag zuvor",
  "repeated",
  "Wire 14 found loose, tightened",
  "none missing",
  "Opening release does not trip below 66 V",
  "no leak found",
  "No tracking or corona noted.",
  "Corona not seen.",
  "Flashover was not observed.",
  "Leakage steady.",
  "Third operation of three.",
  "Mean of three readings.",
  "Corona rings fitted.",
  "Tracking number 4711.",
  "12 bolts, wrench TW-3.",
  "Repeat of 3 June after drying.",
  "Only the incomer was racked in.",
  "Smoke detectors isolated during the test.",
  "nothing loose",
  "arc chutes fitted",
  "circuit breaker down on its truck",
  "motor and rotor turn freely",
  "surface damp",
  "witnessed by the client",
  "Damaged seal replaced before test.",
  "Insulator cracked. Replaced.",
  "Two bolts loose on first check, re-tightened to 70 N·m and marked.",
  "Test stopped at 60 s as specified.",
  "Leads swapped, same value",
  "No flashover, tracking or corona.",
  "nothing to be repeated",
  "nessuna scarica superficiale",
  "PD measured, 4 pC",
  "anti-condensation heater on",
])("nothing is made of: %s", (remark) => expect(doubtIn(remark)).toBeUndefined());

finds("remark-contradicts", [
  {
    name: "a flashover beside a pass",
    spoil: (book) => book.set(WITHSTAND, 2, "Remarks", "flash-over heard at 26 kV"),
    table: WITHSTAND,
    row: 2,
    header: "Remarks",
    weight: "stop",
    says: /passes, and beside it stands "flash-over heard at 26 kV" \(a disruptive discharge\)/,
  },
  {
    name: "an estimate",
    spoil: (book) => book.set(CONTACT, 1, "Remarks", "geschätzt"),
    table: CONTACT,
    row: 1,
    header: "Remarks",
    weight: "query",
    says: /not read off/,
  },
]);

/** What is said of a remark beside a contact measured with another instrument of the list. */
const beside = (remark: (other: string) => string) => {
  const book = sound();
  book.addRow("GearInstruments", { Id: "MO-2", Instrument: "Micro-ohmmeter (invented)" });
  book.set(CONTACT, 1, "Remarks", remark("MO-2"));
  return ofRule(book.snapshot, "remark-contradicts").map(({ message }) => message);
};

test("a remark that names another instrument of the list than its row does", () => {
  expect(beside((other) => `battery flat, done with ${other}`)[0]).toMatch(
    /another instrument than the row names/,
  );
  for (const remark of [
    (other: string) => `compared with ${other}, same reading`,
    (other: string) => `${other} not used`,
    () => "done with the spare leads",
  ])
    expect(beside(remark)).toEqual([]);
});

keepsQuiet("remark-contradicts", [
  [
    "a breakdown that was settled",
    (book) => book.set(WITHSTAND, 2, "Remarks", "broke down, repeated after cleaning"),
  ],
  [
    "a row that does not pass",
    (book) => {
      book.set(INSULATION, 2, "R 1 min MΩ", 3);
      book.set(INSULATION, 2, "Remarks", "to be repeated");
    },
  ],
]);

test("a note on a cell of a row is read as its remarks are", () => {
  const book = sound();
  const at = book.at(CONTACT, 4, "R µΩ");
  const noted: Snapshot = {
    ...book.snapshot,
    sheets: book.snapshot.sheets.map((sheet) =>
      sheet.name === "Contacts"
        ? {
            ...sheet,
            cells: {
              rowCount: 99,
              columnCount: 30,
              cell: () => null,
              formula: () => undefined,
              note: (row, column) =>
                row === 8 && at.startsWith(String.fromCharCode(65 + column))
                  ? "value estimated"
                  : undefined,
            },
          }
        : sheet,
    ),
  };
  expect(ofRule(noted, "remark-contradicts")).toMatchObject([
    { sheet: "Contacts", address: at, column: "R µΩ" },
  ]);
  expect(findingsOf(noted)).toHaveLength(1);
});

/** What is said of an item of the rotation record that is OK, with a remark. */
const rotation = (part: string, remark: string) => {
  const book = soundOf(2, { basis: "IEC", furtherRecords: [{ kind: "energization" }] });
  const row = rowOf(book, "GearEnergization", "=K0001", part);
  book.set("GearEnergization", row, "Remarks", remark);
  return ofRule(book.snapshot, "remark-contradicts").map(({ message }) => message);
};
const ITEM = "Before: covers, barriers and doors closed and locked";

test("an order of the phases that is not the lineup's, or a rotation that is wrong", () => {
  for (const remark of ["found L2-L1-L3", "far end L1/L3/L2", "rotation wrong", "to be swapped"])
    expect(rotation(ITEM, remark)).toHaveLength(1);
  expect(rotation(ITEM, "found L2-L1-L3")[0]).toMatch(/another order of the phases/);
  for (const remark of [
    "L1-L2-L3",
    "found L2-L1-L3, swapped back, now L1-L2-L3",
    "L2-L1-L3 corrected and tried again",
    "L1 and L3 read 63 V",
  ])
    expect(rotation(ITEM, remark)).toEqual([]);
});
