import { expect, test } from "vitest";
import { decimalInches } from "../../src/quantities/reading/decimalInches";
import { readReading } from "../../src/quantities/reading/readReading";
import type { Unit } from "../../src/quantities/units";

// International yard and pound agreement (1959): 1 in is 25.4 mm, 1 lb is 0.45359237 kg; NIST SP 811, appendix B
// for 1 lbf·ft = 1.355818 N·m, 1 psi = 6.894757 kPa and 1 inHg = 3.386389 kPa (at 0 °C).
test.each<[string, Unit, number]>([
  ["72 in", "mm", 1828.8],
  ["71 1/2 in", "mm", 1816.1],
  ["6'-1 1/2\"", "mm", 1866.9],
  ["6 ft 2 in", "mm", 1879.6],
  ["3/4 in", "mm", 19.05],
  ["6 ft", "mm", 1828.8],
  ["10 mils", "mm", 0.254],
  ["50 °F", "°C", 10],
  ["32 °F", "°C", 0],
  ["-40 °F", "°C", -40],
  ["2000 lb", "kg", 907.18474],
  ["3 t", "kg", 3000],
  ["72.5 psig", "kPa", 499.86990375468],
  ["29.92 inHg", "kPa", 101.32075888],
  ["48 lbf·ft", "N·m", 65.079261519907],
  ["20 in-lb", "N·m", 2.2596965805524],
])("%s is %s %d", (text, unit, value) => {
  expect(readReading(text, { unit })).toMatchObject({ ok: true, value: { value, unit } });
});

test("what is no length in feet and inches stays as it is", () => {
  for (const text of ["1 250,5", "12/0 in", "OL", "5 1/2 ft 3", "1/2 kV"])
    expect(decimalInches(text)).toBe(text);
});
