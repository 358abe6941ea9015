import { describe, expect, it } from "vitest";
import { contactCorrect } from "../../src/engineering/contactCorrect";
import { spread } from "../../src/engineering/spread";

describe("contactCorrect", () => {
  // Published example (read): a copper winding of 1.21 Ω at 20 °C has 1.472 Ω at 75 °C
  // (1.4715 before rounding).
  it("brings a winding to 75 °C and back", () => {
    const hot = contactCorrect(1.21, 20, "copper", 75);
    expect(hot.ok && hot.value).toBeCloseTo(1.472, 2.9);
    const cold = contactCorrect(1.472, 75);
    expect(cold.ok && cold.value).toBeCloseTo(1.21, 3);
  });

  // α 0.00403 per K of aluminium at 20 °C (read) gives 228.1 °C; 0.00393 of copper (IEC 60028, memory) 234.5 °C.
  it.each([
    ["aluminium", 0.00403],
    ["copper", 0.00393],
  ] as const)("agrees with the temperature coefficient of %s", (metal, alpha) => {
    const found = contactCorrect(100, 70, metal);
    expect(found.ok && found.value).toBeCloseTo(100 / (1 + alpha * 50), 1);
  });

  it.each([
    [0, 20, "range"],
    [-40, 20, "range"],
    [40, 250, "range"],
    [40, -234.5, "range"],
    [Number.NaN, 20, "wrong"],
  ])("refuses %d µΩ at %d °C", (microhm, temperature, kind) => {
    expect(contactCorrect(microhm, temperature)).toMatchObject({ ok: false, kind });
  });

  it("knows two metals", () => {
    expect(contactCorrect(40, 20, "gold" as "copper")).toMatchObject({ kind: "wrong" });
  });
});

describe("spread", () => {
  // A breaker maker's bulletin (read): 50, 60, 76 µΩ is flagged, more than 50 % above the lowest;
  // 130, 180, 150 µΩ is not.
  it.each([
    [[50, 60, 76], 0.52],
    [[130, 180, 150], 0.385],
    [[7, 7, 7], 0],
  ])("%j is %d", (values, expected) => {
    const found = spread(values);
    expect(found.ok && found.value).toBeCloseTo(expected, 3);
  });

  it.each([
    [[], "none"],
    [[50], "none"],
    [[50, 0], "range"],
    [[50, -1], "range"],
    [[50, Number.NaN], "wrong"],
    [[50, Number.POSITIVE_INFINITY], "range"],
  ])("refuses %j", (values, kind) => {
    expect(spread(values)).toMatchObject({ ok: false, kind });
  });
});
