import { finds, INSULATION, keepsQuiet, soundOf } from "../support";

finds("missing-reading", [
  {
    name: "a reading deleted",
    spoil: (book) => book.set(INSULATION, 2, "R 1 min MΩ", null),
    table: INSULATION,
    row: 2,
    header: "R 1 min MΩ",
    weight: "stop",
    says: /L3-E.*R 1 min MΩ not recorded/,
  },
  {
    name: "control wiring without its withstand test",
    spoil: (book) => book.set("GearControl", 2, "Applied kV", null),
    table: "GearControl",
    row: 2,
    header: "Applied kV",
    weight: "stop",
    says: /Applied kV not recorded/,
  },
]);

keepsQuiet("missing-reading", [
  [
    "a check that does not apply",
    (book) => book.set("GearInstallation", 2, "State", "Not applicable"),
  ],
  [
    "a kind that the project leaves out",
    () => {},
    () =>
      soundOf(2, {
        leaveOut: [{ kind: "torque", reason: "Done at the works", document: "INV-7" }],
      }),
  ],
  [
    "a reading that cannot be read: said by another rule",
    (book) => book.set(INSULATION, 2, "R 1 min MΩ", "see note"),
  ],
]);
