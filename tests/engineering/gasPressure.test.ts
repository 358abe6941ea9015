import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gasDensity, statePressure } from "../../src/engineering/gasDensity";
import { type GasReading, gasPressure } from "../../src/engineering/gasPressure";
import { saturationPressure } from "../../src/engineering/saturationPressure";
import { english } from "../support/inWords";

describe("gasDensity", () => {
  // A breaker maker's filling data (read): effective pressures, the atmosphere rounded to 0.10 MPa there.
  it.each([
    [0.65, 20, 49.59],
    [0.603, 5, 49.59],
    [0.54, 20, 41.66],
    [0.51, 20, 39.55],
  ])("%d MPa gauge at %d °C is %d kg/m³", (gauge, celsius, expected) => {
    expect(gasDensity(gauge + 0.1, celsius + 273.15) / expected).toBeCloseTo(1, 2.4);
  });

  // Density of SF6 at 0.1013 MPa and 20 °C: 6.07 to 6.17 kg/m³ in gas makers' data sheets (memory).
  it("is about six times that of air in the open", () => {
    expect(gasDensity(0.1013, 293.15)).toBeGreaterThan(6.05);
    expect(gasDensity(0.1013, 293.15)).toBeLessThan(6.2);
  });

  it("undoes the state equation", () => {
    const density = fc.double({ min: 0.5, max: 80, noNaN: true });
    fc.assert(
      fc.property(density, fc.double({ min: 250, max: 350, noNaN: true }), (rho, kelvin) => {
        expect(gasDensity(statePressure(rho, kelvin), kelvin) / rho).toBeCloseTo(1, 10);
      }),
    );
  });
});

describe("saturationPressure", () => {
  // Reference equation of Guder and Wagner, as a published table gives it (read): °C, MPa absolute.
  it.each([
    [-40, 0.341],
    [-30, 0.492],
    [-25, 0.585],
    [-20, 0.689],
    [-10, 0.94],
    [0, 1.252],
    [10, 1.634],
    [20, 2.098],
  ])("at %d °C lies on the safe side of %d MPa, by no more than 4 %%", (celsius, expected) => {
    const share = saturationPressure(celsius + 273.15) / expected;
    expect(share).toBeLessThan(1);
    expect(share).toBeGreaterThan(0.96);
  });
});

describe("gasPressure", () => {
  // The same maker's filling example (read): at 5 °C and an atmosphere of 93.2 kPa the gauge is to
  // show 0.603 + (0.1013 − 0.0932) = 0.6111 MPa for 0.65 MPa at 20 °C.
  it("meets the maker's filling example", () => {
    const found = gasPressure({ pressure: 0.6111, temperature: 5, barometer: 93.2 });
    expect(found.ok && found.value).toBeCloseTo(0.65, 2.7);
  });

  it("is unchanged at its own temperature, gauge and absolute", () => {
    for (const reference of ["gauge", "absolute"] as const) {
      const found = gasPressure({ pressure: 0.55, temperature: 20, reference });
      expect(found.ok && found.value).toBeCloseTo(0.55, 12);
    }
  });

  it.each<[GasReading, string]>([
    [{ pressure: 6.5, temperature: 20 }, "Absolute gas pressure must be from 0.01 to 1.5 MPa"],
    [{ pressure: -0.2, temperature: 20 }, "Absolute gas pressure must be from"],
    [{ pressure: 0.5, temperature: 120 }, "Gas temperature must be from -50 to 80 °C"],
    [{ pressure: 0.5, temperature: 20, to: -60 }, "Temperature to bring it to must be from"],
    [{ pressure: 0.5, temperature: 20, barometer: 1013 }, "Barometer must be from 50 to 110 kPa"],
    [{ pressure: 0.65, temperature: 20, to: -40 }, "SF6 liquefies"],
  ])("refuses %o", (reading, reason) => {
    const found = gasPressure(reading);
    expect(found).toMatchObject({ ok: false, kind: "range" });
    expect(!found.ok && found.say(english)).toContain(reason);
  });

  it("comes back from another temperature, and never gives a number that is none", () => {
    const any = fc.oneof(fc.double(), fc.double({ min: -50, max: 80, noNaN: true }));
    fc.assert(
      fc.property(fc.double({ min: -0.2, max: 1.2 }), any, any, (pressure, temperature, to) => {
        const found = gasPressure({ pressure, temperature, to });
        if (!found.ok) return;
        const back = gasPressure({ pressure: found.value, temperature: to, to: temperature });
        expect(back.ok && back.value).toBeCloseTo(pressure, 9);
      }),
    );
  });
});
