import {
  finds,
  INSULATION,
  keepsQuiet,
  rowOf,
  sound,
  soundlyEquipped,
  WITHSTAND,
} from "../support";

const cable = (one: ReturnType<typeof sound>) => rowOf(one, "GearCable", "=K0001", "L2");

finds("withstand-on-failed", [
  {
    name: "a cable tested at high voltage though its insulation had failed",
    spoil: (one) => one.set("GearCable", cable(one), "Insulation MΩ", 0.5),
    table: "GearCable",
    row: cable(soundlyEquipped()),
    header: "Applied kV",
    weight: "query",
    says: /kV was applied, though its insulation had failed \(=K0001 · W1 · L2/,
    book: soundlyEquipped,
  },
  {
    name: "a circuit tested at high voltage though the breaker's open pole had failed",
    spoil: (one) =>
      one.set(INSULATION, rowOf(one, INSULATION, "=K0002", "L1 open", "before"), "R 1 min MΩ", 3),
    table: WITHSTAND,
    row: rowOf(sound(), WITHSTAND, "=K0002", "Circuit", "L1"),
    header: "Applied kV",
    weight: "query",
    says: /its insulation had failed \(Insulation, =K0002 · .* · L1 open · before\)/,
  },
]);

keepsQuiet("withstand-on-failed", [
  ["insulation that passed", () => {}, soundlyEquipped],
  [
    "a cable that was not put at voltage",
    (one) => {
      one.set("GearCable", cable(one), "Insulation MΩ", 0.5);
      one.set("GearCable", cable(one), "Applied kV", null);
    },
    soundlyEquipped,
  ],
  [
    "the circuit itself, of which another rule tells",
    (one) =>
      one.set(
        INSULATION,
        rowOf(one, INSULATION, "=K0002", "Circuit", "L1-E", "before"),
        "R 1 min MΩ",
        3,
      ),
  ],
]);
