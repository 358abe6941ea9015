import { expect, test } from "vitest";
import { splitReading } from "../../../src/quantities/reading/splitReading";

test("the parts of a reading", () => {
  expect(splitReading("OL > 2 TΩ")).toEqual({
    over: true,
    bound: ">",
    sign: "",
    number: "2",
    exponent: "",
    unit: "TΩ",
  });
  expect(splitReading("−1 250,5×10⁻³ mA")).toEqual({
    over: false,
    bound: "",
    sign: "-",
    number: "1 250,5",
    exponent: "-3",
    unit: "mA",
  });
});

test.each(["", "mohm", "n/a", "over there 5 GΩ and more words", "x".repeat(100)])(
  "%j has no parts, or an unknown unit",
  (text) => {
    const parts = splitReading(text);
    expect(parts === undefined || parts.unit.includes(" ")).toBe(true);
  },
);
