import { cellOf, finds, keepsQuiet, rowOf, soundOf } from "../support";

const ENERGIZATION = "GearEnergization";
const book = () => soundOf(2, { furtherRecords: [{ kind: "energization" }, { kind: "rotation" }] });
const LOAD = "After: phase currents, angles and differential read under load";
const BEFORE = "Before: covers, barriers and doors closed and locked";
const load = (one: ReturnType<typeof book>) => rowOf(one, ENERGIZATION, "=K0001", LOAD);

finds("step-skipped", [
  {
    name: "readings under load while the covers are not answered for",
    spoil: (one) => {
      for (const header of ["State", "Date", "Checked by"])
        one.set(ENERGIZATION, rowOf(one, ENERGIZATION, "=K0001", BEFORE), header, null);
    },
    table: ENERGIZATION,
    row: load(book()),
    header: "State",
    weight: "query",
    says: /while what comes before it is blank: =K0001 · Before: covers/,
    book,
  },
  {
    name: "soaked with a step before found not OK",
    spoil: (one) =>
      one.set(ENERGIZATION, rowOf(one, ENERGIZATION, "=K0001", BEFORE), "State", "Not OK"),
    table: ENERGIZATION,
    row: load(book()),
    header: "State",
    weight: "stop",
    says: /found not in order: =K0001 · Before: covers/,
    book,
  },
  {
    name: "readings under load on a rotation that failed",
    spoil: (one) => one.set("GearRotation", 0, "State", "Not OK"),
    table: ENERGIZATION,
    row: load(book()),
    header: "State",
    weight: "stop",
    says: /found not in order: Rotation, =K0001/,
    book: () =>
      soundOf(2, {
        furtherRecords: [{ kind: "energization" }, { kind: "rotation" }],
        checkItems: [{ kind: "rotation", item: "Rotation at the tie", document: "INV-7" }],
      }),
  },
]);

keepsQuiet("step-skipped", [
  [
    "an item that is not applicable, with a remark",
    (one) => {
      const row = rowOf(
        one,
        ENERGIZATION,
        "=K0001",
        "Before: arresters and cables connected that were taken off for tests",
      );
      one.set(ENERGIZATION, row, "State", "Not applicable");
      one.set(ENERGIZATION, row, "Remarks", "none were taken off");
    },
    book,
  ],
  [
    "a later item that is blank",
    (one) => {
      for (const header of ["State", "Date", "Checked by"])
        one.set(ENERGIZATION, load(one), header, null);
    },
    book,
  ],
  [
    "a panel of which nothing is answered",
    (one) => {
      const first = rowOf(one, ENERGIZATION, "=K0002");
      for (
        let row = first;
        cellOf(one, ENERGIZATION, row, "Panel or lineup").value === "=K0002";
        row++
      )
        for (const header of ["State", "Date", "Checked by"])
          one.set(ENERGIZATION, row, header, null);
    },
    book,
  ],
]);
