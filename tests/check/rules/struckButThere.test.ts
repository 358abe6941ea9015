import { finds, INSULATION, keepsQuiet, rowOf, soundlyEquipped, soundOf } from "../support";

const FUNCTION = "GearFunction";
const INSTALLATION = "GearInstallation";
const HEATING = "Heating and lighting work";
const TRIP = "Relay F1 trips its breaker and is shown";
const SWITCH = "Earthing switch moves freely, latches and shows its position";
type Book = ReturnType<typeof soundlyEquipped>;
const item = (table: string, part: string, of = soundlyEquipped) =>
  rowOf(of(), table, "=K0002", part);
const strike = (book: Book, table: string, row: number) => {
  book.set(table, row, "State", "Not applicable");
  book.set(table, row, "Remarks", "none in this panel");
};
const twoIncomers = () => {
  const { lineup } = soundOf(3).snapshot;
  const panels = lineup?.panels.map((panel) => ({ ...panel, type: "incomer" as const }));
  return soundOf(3, { panels });
};
const interlock = () => {
  const { panels } = twoIncomers().snapshot.lineup ?? { panels: [] };
  const names = panels.map(({ designation }) => designation).join(", ");
  return rowOf(
    twoIncomers(),
    FUNCTION,
    `Interlock of ${names}: supplies are not paralleled but as drawn`,
  );
};

finds("struck-but-there", [
  {
    name: "the trip of a relay that was injected",
    spoil: (book) => strike(book, FUNCTION, item(FUNCTION, TRIP)),
    table: FUNCTION,
    row: item(FUNCTION, TRIP),
    header: "State",
    weight: "query",
    says: /marked "Not applicable", but Protection, =K0002 · F1 51.* shows that it is there/,
    book: soundlyEquipped,
  },
  {
    name: "an earthing switch whose interlock was tried",
    spoil: (book) => strike(book, INSTALLATION, item(INSTALLATION, SWITCH)),
    table: INSTALLATION,
    row: item(INSTALLATION, SWITCH),
    header: "State",
    weight: "query",
    says: /Function, =K0002 · Earthing switch: closes only/,
    book: soundlyEquipped,
  },
  {
    name: "transformers that were tested",
    spoil: (book) => {
      const part = "Instrument transformers as on the drawing: place, ratio, orientation";
      strike(book, INSTALLATION, item(INSTALLATION, part));
    },
    table: INSTALLATION,
    row: item(INSTALLATION, "Instrument transformers as on the drawing: place, ratio, orientation"),
    header: "State",
    weight: "query",
    says: /Current transformers, =K0002/,
    book: soundlyEquipped,
  },
  {
    name: "the interlock of supplies that the lineup has",
    spoil: (book) => strike(book, FUNCTION, interlock()),
    table: FUNCTION,
    row: interlock(),
    header: "State",
    weight: "query",
    says: /the lineup lists it/,
    book: twoIncomers,
  },
]);

keepsQuiet("struck-but-there", [
  [
    "heating that no other record shows",
    (book) => strike(book, FUNCTION, item(FUNCTION, HEATING)),
    soundlyEquipped,
  ],
  [
    "an earthing switch that no record knows",
    (book) => {
      strike(book, INSTALLATION, item(INSTALLATION, SWITCH));
      for (const part of [
        "Earthing switch: closes only with the breaker out",
        "Breaker goes in only with the earthing switch open",
      ])
        strike(book, FUNCTION, item(FUNCTION, part));
    },
    soundlyEquipped,
  ],
  ["records without struck items", (book) => book.set(INSULATION, 0, "R 1 min MΩ", 1)],
]);
