import { expect, test } from "vitest";
import { CONTACT, finds, INSULATION, keepsQuiet, ofRule, rowOf, soundOf } from "../support";

const ENERGIZATION = "GearEnergization";
const book = () => soundOf(2, { furtherRecords: [{ kind: "energization" }, { kind: "phasing" }] });
const SOAK = "Under voltage: no unusual noise, smell or smoke while it soaks";
const soak = (one: ReturnType<typeof book>, panel = "=K0001") =>
  rowOf(one, ENERGIZATION, panel, SOAK);
const blankRow = (one: ReturnType<typeof book>, row: number) => {
  for (const header of ["State", "Date", "Checked by"]) one.set(ENERGIZATION, row, header, null);
};
/** Every step of a panel that tells of voltage. */
const notEnergized = (one: ReturnType<typeof book>, panel = "=K0001") => {
  const load = "After: phase currents, angles and differential read under load";
  const spots =
    "After: hot spots looked for under load, through windows or with covers as permitted";
  for (const part of [SOAK, load, spots]) blankRow(one, rowOf(one, ENERGIZATION, panel, part));
};

finds("energized-unproven", [
  {
    name: "a panel soaked on insulation that failed",
    spoil: (one) =>
      one.set(INSULATION, rowOf(one, INSULATION, "=K0001", "L1-E", "after"), "R 1 min MΩ", 2),
    table: ENERGIZATION,
    row: soak(book()),
    header: "State",
    weight: "stop",
    says: /=K0001 was energized.*Insulation, =K0001 · Circuit · L1-E · after \(Fail\)/,
    book,
  },
  {
    name: "a panel soaked without its contacts ever measured, though something was found under voltage",
    spoil: (one) => {
      one.set(CONTACT, rowOf(one, CONTACT, "=K0002", "L2"), "R µΩ", null);
      one.set(ENERGIZATION, soak(one, "=K0002"), "State", "Not OK");
    },
    table: ENERGIZATION,
    row: soak(book(), "=K0002"),
    header: "State",
    weight: "stop",
    says: /Contacts, =K0002 .*\(Missing\)/,
    book,
  },
  {
    name: "labels that are not in order: a question and no stop",
    spoil: (one) => {
      const labels = rowOf(
        one,
        "GearInstallation",
        "=K0001",
        "Labels and warning signs as on the drawing",
      );
      one.set("GearInstallation", labels, "State", "Not OK");
    },
    table: ENERGIZATION,
    row: soak(book()),
    header: "State",
    weight: "query",
    says: /Labels and warning signs/,
    book,
  },
  {
    name: "the busbar's own joints, told at the first of its panels",
    spoil: (one) => {
      const bus = rowOf(one, INSULATION, "Busbar", "L1-E", "after");
      one.set(INSULATION, bus, "R 1 min MΩ", 2);
    },
    table: ENERGIZATION,
    row: soak(book()),
    header: "State",
    weight: "stop",
    says: /Busbar · L1-E/,
    book,
  },
]);

keepsQuiet("energized-unproven", [
  [
    "a panel that never stood under voltage",
    (one) => {
      one.set(INSULATION, rowOf(one, INSULATION, "=K0001", "L1-E", "after"), "R 1 min MΩ", 2);
      notEnergized(one);
    },
    book,
  ],
  [
    "a check that does not apply",
    (one) => one.set("GearInstallation", 2, "State", "Not applicable"),
    book,
  ],
]);

test.each([
  ["soundly accepted", "Labels are on order, INV-9", 0],
  ["accepted by a nod", "ok", 1],
])("a record that somebody %s", (_name, reason, told) => {
  const one = book();
  const labels = "Labels and warning signs as on the drawing";
  one.set("GearInstallation", rowOf(one, "GearInstallation", "=K0001", labels), "State", "Not OK");
  one.addRow("GearConcessions", {
    Rule: "out-of-limits",
    Sheet: "Installation",
    Row: `=K0001 · ${labels}`,
    Column: "State",
    Found: "Not OK",
    Reason: reason,
    Name: "E. Engineer",
    Date: 46_349,
  });
  expect(ofRule(one.snapshot, "energized-unproven")).toHaveLength(told);
});
