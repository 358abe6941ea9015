import { daySerial } from "../../../src/quantities/dates";
import { cellOf, finds, keepsQuiet, rowOf, soundOf } from "../support";

const SPOTS = "GearThermography";
const KINDS = [{ kind: "energization" }, { kind: "thermography" }] as const;
const book = () => soundOf(2, { furtherRecords: [...KINDS] });
const soaked = (one: ReturnType<typeof book>) => {
  const soak = "Under voltage: no unusual noise, smell or smoke while it soaks";
  const row = rowOf(one, "GearEnergization", "=K0001", soak);
  return Number(cellOf(one, "GearEnergization", row, "Date").value);
};

finds("not-alive-yet", [
  {
    name: "hot spots looked for a day before the first voltage",
    spoil: (one) => one.set(SPOTS, 1, "Date", soaked(one) - 1),
    table: SPOTS,
    row: 1,
    header: "Date",
    weight: "query",
    says: /a live reading of .*, before the gear was first energized by its records on /,
    book,
  },
  {
    name: "hot spots while no step of the energization is answered",
    spoil: (one) => {
      const { rowCount } = cellOf(one, "GearEnergization", 0, "State");
      for (let row = 0; row < rowCount; row++)
        for (const header of ["State", "Date", "Checked by"])
          one.set("GearEnergization", row, header, null);
    },
    table: SPOTS,
    row: 0,
    header: "Date",
    weight: "query",
    says: /no record shows the gear energized.*The same applies to/,
    book,
  },
]);

keepsQuiet("not-alive-yet", [
  ["the day of the first voltage", (one) => one.set(SPOTS, 1, "Date", soaked(one)), book],
  [
    "a remark that says what fed it",
    (one) => {
      one.set(SPOTS, 1, "Date", soaked(one) - 1);
      one.set(SPOTS, 1, "Remarks", "fed from the test supply at the secondaries");
    },
    book,
  ],
  [
    "maintenance, where the gear was alive before",
    (one) => one.set(SPOTS, 1, "Date", daySerial("2026-11-02")),
    () => soundOf(2, { purpose: "maintenance", furtherRecords: [...KINDS] }),
  ],
  [
    "a project without a record of the energization",
    (one) => one.set(SPOTS, 1, "Date", daySerial("2026-11-02")),
    () => soundOf(2, { furtherRecords: [{ kind: "thermography" }] }),
  ],
]);
