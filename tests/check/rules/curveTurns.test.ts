import { cellOf, finds, keepsQuiet, soundlyEquipped } from "../support";

const TABLE = "GearExcitation";
type Book = ReturnType<typeof soundlyEquipped>;
const value = (one: Book, header: string) => Number(cellOf(one, TABLE, 1, header).value);

finds("curve-turns", [
  {
    name: "a current that falls while the voltage rises",
    spoil: (one) => one.set(TABLE, 1, "A 2", value(one, "A 3") * 1.02),
    table: TABLE,
    row: 1,
    header: "A 3",
    weight: "query",
    says: /"A 3" is .* A, and "A 2" before it .* A: the curve turns back/,
    book: soundlyEquipped,
  },
]);

keepsQuiet("curve-turns", [
  ["a curve that rises", () => {}, soundlyEquipped],
  ["a point that was not taken", (one) => one.set(TABLE, 1, "A 5", null), soundlyEquipped],
  [
    "a curve taken downwards",
    (one) => {
      const points = Array.from({ length: 10 }, (_, at) => at + 1);
      const read = points.map((at) => [value(one, `V ${at}`), value(one, `A ${at}`)] as const);
      read.reverse().forEach(([volts, amperes], at) => {
        one.set(TABLE, 1, `V ${at + 1}`, volts);
        one.set(TABLE, 1, `A ${at + 1}`, amperes);
      });
    },
    soundlyEquipped,
  ],
]);
