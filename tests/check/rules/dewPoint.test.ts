import { expect, test } from "vitest";
import { finds, keepsQuiet, ofRule, sound, WITHSTAND } from "../support";

finds("dew-point", [
  {
    name: "a surface below the dew point",
    spoil: (book) => book.set(WITHSTAND, 2, "Surface °C", 2),
    table: WITHSTAND,
    row: 2,
    header: "Surface °C",
    weight: "stop",
    says: /at 2 °C is at or below the dew point; dry and warm it, then test again/,
  },
]);

keepsQuiet("dew-point", [
  ["a surface that was not measured", (book) => book.set(WITHSTAND, 2, "Surface °C", null)],
]);

test("a surface less than the usual margin above the dew point is a note", () => {
  const book = sound();
  for (const [header, value] of [
    ["Air °C", 20],
    ["Humidity %", 50],
    // The dew point of 20 °C and 50 % is 9.3 °C (psychrometric tables).
    ["Surface °C", 10.3],
  ] as const)
    book.set(WITHSTAND, 2, header, value);
  const [found] = ofRule(book.snapshot, "dew-point");
  expect(found).toMatchObject({ weight: "note", address: book.at(WITHSTAND, 2, "Surface °C") });
  expect(found?.message).toMatch(/1(\.0\d*)? K above the dew point/);
});
