import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readReading } from "../../../src/quantities/reading/readReading";
import type { Unit } from "../../../src/quantities/units";
import { english } from "../../support/inWords";

const read = (text: string, unit: Unit = "MΩ", decimal?: "." | ",") => {
  const result = readReading(text, { unit, decimal });
  return result.ok ? [result.value.value, result.value.bound] : result.say(english);
};

describe("what people and instruments write (practice)", () => {
  test.each<[string, Unit, number, string]>([
    ["5.2 GΩ", "MΩ", 5200, "exact"],
    ["5,2 Gohm", "MΩ", 5200, "exact"],
    ["5200", "MΩ", 5200, "exact"],
    ["5.2G", "MΩ", 5200, "exact"],
    ["800 Megs", "MΩ", 800, "exact"],
    ["800 Mohm", "MΩ", 800, "exact"],
    ["800 MOhms", "MΩ", 800, "exact"],
    ["800 MEGOHM", "MΩ", 800, "exact"],
    ["12 GOHM", "MΩ", 12000, "exact"],
    ["1.1 TOhm", "MΩ", 1.1e6, "exact"],
    ["750 kohm", "MΩ", 0.75, "exact"],
    ["23 uOhm", "µΩ", 23, "exact"],
    ["23 microohm", "µΩ", 23, "exact"],
    ["23 \u03bc\u2126", "µΩ", 23, "exact"],
    ["0,023 mΩ", "µΩ", 23, "exact"],
    ["4.1 mohm", "µΩ", 4100, "exact"],
    ["28 KV", "kV", 28, "exact"],
    ["28000 volts", "kV", 28, "exact"],
    ["3.1 mA", "A", 0.0031, "exact"],
    ["60 sec", "s", 60, "exact"],
    ["1 min", "s", 60, "exact"],
    ["21,5 ºC", "°C", 21.5, "exact"],
    ["-5 deg C", "°C", -5, "exact"],
    ["\u22125", "°C", -5, "exact"],
    ["45 %RH", "%", 45, "exact"],
    ["101.3 kPa", "hPa", 1013, "exact"],
    ["50 Nm", "N·m", 50, "exact"],
    ["1 250", "MΩ", 1250, "exact"],
    ["1\u2009250\u00a0MΩ", "MΩ", 1250, "exact"],
    ["1\u202f250,5 MΩ", "MΩ", 1250.5, "exact"],
    ["1'250'000", "MΩ", 1250000, "exact"],
    ["1’250", "MΩ", 1250, "exact"],
    ["1,250.5", "MΩ", 1250.5, "exact"],
    ["1.250,5", "MΩ", 1250.5, "exact"],
    ["1.250.000", "MΩ", 1250000, "exact"],
    ["1,25,000", "MΩ", 125000, "exact"],
    ["1250,500", "MΩ", 1250.5, "exact"],
    ["0,820", "MΩ", 0.82, "exact"],
    [",5", "MΩ", 0.5, "exact"],
    ["250.", "MΩ", 250, "exact"],
    ["1.2E+3", "MΩ", 1200, "exact"],
    ["1,2e3", "MΩ", 1200, "exact"],
    ["1.250e3", "MΩ", 1250, "exact"],
    ["1.2×10³", "MΩ", 1200, "exact"],
    ["1.2 x 10^-3 GΩ", "MΩ", 1.2, "exact"],
    ["５２００　ＭΩ", "MΩ", 5200, "exact"],
    ["＞２．５　ＴΩ", "MΩ", 2.5e6, "above"],
    ["> 2 TΩ", "MΩ", 2e6, "above"],
    ["≥2TΩ", "MΩ", 2e6, "above"],
    [">=2000", "MΩ", 2000, "above"],
    ["< 100 kΩ", "MΩ", 0.1, "below"],
    ["≤ 0,1", "MΩ", 0.1, "below"],
    ["<= 5", "µΩ", 5, "below"],
    ["OL > 2 TΩ", "MΩ", 2e6, "above"],
    ["OL (> 200 GΩ)", "MΩ", 200000, "above"],
    ["O.L. 2 TΩ", "MΩ", 2e6, "above"],
    ["2 TΩ OL", "MΩ", 2e6, "above"],
    ["over 2 TΩ", "MΩ", 2e6, "above"],
    ["Overrange: 2 TΩ", "MΩ", 2e6, "above"],
    ["∞ (2 TΩ)", "MΩ", 2e6, "above"],
    ["inf > 10 GΩ", "MΩ", 10000, "above"],
  ])("%s in %s", (text, unit, value, bound) => {
    expect(read(text, unit)).toEqual([value, bound]);
  });

  test("keeps what was written", () => {
    const result = readReading(" 5.2 GOhm ", { unit: "MΩ" });
    expect(result.ok && result.value).toEqual({
      value: 5200,
      unit: "MΩ",
      bound: "exact",
      text: " 5.2 GOhm ",
    });
  });
});

describe("one mark and three digits after it", () => {
  test.each(["1.250", "1,250", "12,500", "125.000 MΩ", "> 1,250", "1.250 GΩ"])(
    "%s alone is refused with both meanings",
    (text) => {
      expect(read(text)).toMatch(/could be .* or .*; say which decimal mark is used/);
    },
  );

  test("the column's decimal mark settles it", () => {
    expect(read("1.250", "MΩ", ".")).toEqual([1.25, "exact"]);
    expect(read("1.250", "MΩ", ",")).toEqual([1250, "exact"]);
    expect(read("1,250", "MΩ", ",")).toEqual([1.25, "exact"]);
    expect(read("1,250", "MΩ", ".")).toEqual([1250, "exact"]);
  });

  test("a text that contradicts the column's mark is refused", () => {
    expect(read("0,82", "MΩ", ".")).toBe(
      '"0,82" has a decimal comma, but decimal point is the rule here.',
    );
    expect(read("0.82", "MΩ", ",")).toBe(
      '"0.82" has a decimal point, but decimal comma is the rule here.',
    );
  });
});

describe("refused, with the reason", () => {
  test.each<[string, Unit, RegExp]>([
    ["", "MΩ", /^No reading is written here; write one such as "12.5 MΩ"/],
    [" \u00a0", "MΩ", /^No reading/],
    ["n/a", "MΩ", /^"n\/a" is not a reading/],
    ["1 25", "MΩ", /is not a reading/],
    ["1.2.3", "MΩ", /is not a reading/],
    ["1,2,3.4", "MΩ", /is not a reading/],
    ["5 ± 1", "MΩ", /"± 1" is not a unit known here; MΩ belongs here/],
    ["5 GΩ at 1 min", "MΩ", /"GΩ at 1 min" is not a unit known here/],
    ["28 kV DC", "kV", /"kV DC" is not a unit known here; kV belongs here/],
    ["5 kV", "MΩ", /kV is a unit of voltage; a resistance in MΩ belongs here/],
    ["5 S", "s", /"S" is not a unit/],
    ["5 NA", "nA", /"NA" is not a unit/],
    ["5 constructor", "MΩ", /"constructor" is not a unit/],
    ["OL", "MΩ", /over range but does not say of which range; write the instrument's range too/],
    ["O.L", "MΩ", /over range/],
    ["∞", "MΩ", /over range/],
    ["> ∞", "MΩ", /over range/],
    ["overrange", "µΩ", /such as "> 2000 µΩ"/],
    ["OL < 2 TΩ", "MΩ", /both over range and less than/],
    ["5 mohm", "MΩ", /"mohm" could be milliohm or megohm, a factor of 10\^9 apart/],
    ["5 mΩ", "MΩ", /If megohm, write MΩ; if milliohm, write it in Ω/],
    ["23 MOHM", "µΩ", /If milliohm, write mΩ; if megohm, write it in kΩ/],
    ["1e999", "MΩ", /beyond what can be kept as a number/],
    ["1e-999", "MΩ", /beyond what can be kept as a number/],
    ["=cmd|' /C calc'!A0", "MΩ", /is not a reading/],
  ])("%j in %s", (text, unit, reason) => {
    expect(read(text, unit)).toMatch(reason);
  });

  test("text of any kind gives a finite reading or a sentence, never an exception", () => {
    const hostile = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.string({ unit: fc.constantFrom(..."0123456789.,' eE+-×^>≥<OLkMmGΩ∞\u0000\u2009") }),
    );
    fc.assert(
      fc.property(hostile, fc.constantFrom(undefined, ".", ","), (text, decimal) => {
        const result = readReading(text, { unit: "MΩ", decimal: decimal as "." | undefined });
        if (result.ok) expect(Number.isFinite(result.value.value)).toBe(true);
        else expect(result.say(english)).toMatch(/^[^\p{Cc}]+\.$/u);
      }),
      { numRuns: 3000 },
    );
    expect(read("5".repeat(1_000_000))).toMatch(/is not a reading/);
    expect(read(" ".repeat(1_000_000))).toMatch(/^No reading/);
  });
});

test("spaces, case and width of letters do not change a reading", () => {
  const variants = fc.record({
    value: fc.integer({ min: 1, max: 999 }),
    tenths: fc.integer({ min: 0, max: 9 }),
    unit: fc.constantFrom("GΩ", "Gohm", "GOHM", "gohms", "G\u2126", "giga-ohm", "Gigaohm"),
    gap: fc.constantFrom("", " ", "\u00a0", "\u2009", "\u3000", "\t"),
    wide: fc.boolean(),
    mark: fc.constantFrom(".", ","),
  });
  fc.assert(
    fc.property(variants, ({ value, tenths, unit, gap, wide, mark }) => {
      const plain = `${value}${mark}${tenths}`;
      const number = wide
        ? plain.replace(/./g, (sign) => String.fromCharCode(sign.charCodeAt(0) + 0xfee0))
        : plain;
      expect(read(`${gap}${number}${gap}${unit}${gap}`)).toEqual([
        value * 1000 + tenths * 100,
        "exact",
      ]);
    }),
  );
});

test("the fast way and the long way read a plain number alike", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 1e9, noNaN: true }), (value) => {
      const text = value.toFixed(4);
      expect(read(text)).toEqual(read(` ${text} `));
      expect(read(text)).toEqual([Number(text), "exact"]);
    }),
  );
});
