import fc from "fast-check";
import { expect, test } from "vitest";
import type { Bound } from "../../../src/quantities/reading/reading";
import { readReading } from "../../../src/quantities/reading/readReading";
import { writeReading } from "../../../src/quantities/reading/writeReading";
import { UNITS, type Unit } from "../../../src/quantities/units";

test.each<[number, Unit, Bound, string]>([
  [2000000, "MΩ", "above", "> 2 TΩ"],
  [5200, "MΩ", "exact", "5.2 GΩ"],
  [0.1, "MΩ", "below", "< 100 kΩ"],
  [23.4, "µΩ", "exact", "23.4 µΩ"],
  [1.125, "kV", "exact", "1.1250 kV"],
  [0.125, "kV", "exact", "0.125 kV"],
  [1013, "hPa", "exact", "1013 hPa"],
  [0, "MΩ", "exact", "0 MΩ"],
  [-5, "°C", "exact", "-5 °C"],
])("%d %s %s is written %s", (value, unit, bound, text) => {
  expect(writeReading({ value, unit, bound, text: "as it was" })).toBe(text);
});

test("what is written reads back as the same reading", () => {
  fc.assert(
    fc.property(
      fc
        .double({ min: -1e12, max: 1e12, noNaN: true })
        .filter((n) => n === 0 || Math.abs(n) > 1e-12),
      fc.constantFrom(...(Object.keys(UNITS) as Unit[])),
      fc.constantFrom<Bound>("exact", "above", "below"),
      (number, unit, bound) => {
        const value = number + 0;
        const text = writeReading({ value, unit, bound, text: "" });
        expect(readReading(text, { unit })).toEqual({
          ok: true,
          value: { value, unit, bound, text },
        });
      },
    ),
    { numRuns: 2000 },
  );
});
