import { expect, test } from "vitest";
import { guide } from "../../src/functions/guide";
import { callOf, reference } from "../../src/pane/functions/call";
import { localeOf } from "../../src/pane/locale";

const [en, de] = [localeOf("en"), localeOf("de")];
const of = (name: string) => {
  const found = guide.find((one) => one.name === name);
  if (!found) throw new Error(name);
  return found;
};

test("a call is written with what is given, and left out at its end what is not", () => {
  const call = callOf(of("WITHSTAND"), [{ typed: "5" }, { typed: "NETA" }], en);
  expect(call).toEqual({ formula: '=GEAR.WITHSTAND(5, "NETA")', result: [[14]], missing: [] });
  // Left out between two others: 15 kV maximum, site, DC, ANSI/NETA ATS-2025 table 100.2 by way of the function's own example.
  expect(callOf(of("WITHSTAND"), [{ typed: "15" }, undefined, { typed: "site" }], en).formula).toBe(
    '=GEAR.WITHSTAND(15, , "site")',
  );
});

test("cells are named, and what they hold is computed", () => {
  const cells = { cells: reference("Bus A's", "B2:B4"), values: [[50], [60], [76]] };
  const { formula, result } = callOf(of("SPREAD"), [cells], en);
  expect(formula).toBe("=GEAR.SPREAD('Bus A''s'!B2:B4)");
  // (76 - 50) / 50
  expect(result?.flat()[0]).toBeCloseTo(0.52, 9);
});

test("numbers are read in the user's language, and written with the point that formulas have here", () => {
  expect(callOf(of("MEGOHMS"), [{ typed: "5,2" }, { typed: "GΩ" }], de)).toMatchObject({
    formula: '=GEAR.MEGOHMS(5.2, "GΩ")',
    result: [[5200]],
  });
});

test("each argument is asked for in words, no two of a function alike, a quantity with its unit", () => {
  for (const { name, parameters } of guide) {
    const labels = parameters.map(({ label }) => label);
    expect(new Set(labels).size, name).toBe(labels.length);
    for (const label of labels) expect(label, name).toMatch(/^\p{Lu}[^:;]{2,60}$/u);
  }
  const labelsOf = (name: string) => of(name).parameters.map(({ label }) => label);
  expect(labelsOf("ABSORPTION")).toEqual([
    "Resistance after 30 s, MΩ",
    "Resistance after 60 s, MΩ",
  ]);
  expect(labelsOf("BOLTTORQUE")[1]).toBe("Property class 4.6 to 12.9");
  expect(labelsOf("WITHSTAND")).toEqual([
    "Rated voltage of the switchgear, kV",
    "Basis",
    "Place",
    "Wave",
    "Part",
  ]);
});

test("what is still missing is named, and nothing computed; a refusal comes with its sentence", () => {
  expect(callOf(of("IRCORRECT"), [{ typed: "1200" }], en)).toMatchObject({
    missing: ["Temperature of the insulation, °C, -10 to 105"],
    result: undefined,
  });
  expect(callOf(of("WITHSTAND"), [{ typed: "13.8" }], en).result?.flat()[0]).toMatchObject({
    code: "#N/A",
  });
});

test.each(
  guide.flatMap((one) => one.examples.map((example) => [example.formula, one, example] as const)),
)("%s comes to what its documentation says", (_formula, one, example) => {
  const given = example.arguments.map((argument) =>
    Array.isArray(argument)
      ? { cells: "'S'!A1:A9", values: argument }
      : { typed: String(argument) },
  );
  expect(callOf(one, given, en).result?.flat()[0]).toEqual(example.result);
});
