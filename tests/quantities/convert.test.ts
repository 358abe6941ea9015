import fc from "fast-check";
import { expect, test } from "vitest";
import { convert } from "../../src/quantities/convert";
import { UNITS, type Unit, unitSize } from "../../src/quantities/units";
import { inWords } from "../support/inWords";

// Prefixes and their powers of ten: BIPM, The International System of Units, 9th edition, table 7 (memory).
test.each<[number, Unit, Unit, number]>([
  [5.2, "GΩ", "MΩ", 5200],
  [0.1, "TΩ", "MΩ", 100000],
  [1.1, "GΩ", "MΩ", 1100],
  [35, "µΩ", "mΩ", 0.035],
  [2.3, "mΩ", "µΩ", 2300],
  [1013, "hPa", "kPa", 101.3],
  [1, "bar", "hPa", 1000],
  [1, "min", "s", 60],
  [90000, "ms", "min", 1.5],
  [-5, "°C", "°C", -5],
  [1e21, "MΩ", "GΩ", 1e18],
])("%d %s in %s", (value, from, to, expected) => {
  expect(convert(value, from, to)).toEqual({ ok: true, value: expected });
});

test("there and back gives the number that was", () => {
  const units = fc.constantFrom(
    ...(Object.keys(UNITS) as Unit[]).filter((unit) => unitSize(unit).quantity === "resistance"),
  );
  fc.assert(
    fc.property(
      fc.integer(),
      fc.integer({ min: -6, max: 6 }),
      units,
      units,
      (n, power, from, to) => {
        const value = Number(`${n}e${power}`);
        const there = convert(value, from, to);
        expect(there.ok && convert(there.value, to, from)).toEqual({ ok: true, value });
      },
    ),
  );
});

test("refuses unlike quantities and numbers out of reach", () => {
  expect(inWords(convert(5, "kV", "MΩ"))).toMatchObject({
    kind: "wrong",
    say: "kV is a unit of voltage; a resistance in MΩ belongs here.",
  });
  expect(convert(1e300, "TΩ", "nΩ")).toMatchObject({ kind: "range" });
  expect(convert(1e-320, "nΩ", "TΩ")).toMatchObject({ kind: "range" });
  expect(convert(Number.NaN, "V", "V")).toMatchObject({ kind: "wrong" });
  expect(convert(Number.POSITIVE_INFINITY, "V", "kV")).toMatchObject({ kind: "wrong" });
});
