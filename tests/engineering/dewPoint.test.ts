import { describe, expect, it } from "vitest";
import { dewMargin, dewPoint } from "../../src/engineering/dewPoint";

describe("dewPoint", () => {
  // Magnus over water, a sensor maker's note (read): 25 °C, 10 % gives −8.77 °C. Saturated air is at
  // its dew point by definition. 20 °C, 50 % gives 9.3 °C in psychrometric tables (memory).
  it.each([
    [25, 10, -8.77, 2],
    [20, 100, 20, 12],
    [20, 50, 9.3, 1],
  ])("%d °C, %d %% is %d °C", (temperature, humidity, expected, digits) => {
    const found = dewPoint(temperature, humidity);
    expect(found.ok && found.value).toBeCloseTo(expected, digits);
  });

  it.each([
    [25, 100.1],
    [25, 0],
    [25, -5],
    [61, 50],
    [-46, 50],
  ])("refuses %d °C, %d %%", (temperature, humidity) => {
    expect(dewPoint(temperature, humidity)).toMatchObject({ ok: false, kind: "range" });
  });
});

describe("dewMargin", () => {
  it("is surface less dew point, negative on a wet surface", () => {
    expect(dewMargin(19, 20, 100)).toMatchObject({ ok: true, value: -1 });
  });
  it("needs a surface temperature that can be", () => {
    expect(dewMargin(200, 20, 50)).toMatchObject({ ok: false, kind: "range" });
  });
});
